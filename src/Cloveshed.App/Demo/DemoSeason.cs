using System.Reflection;

namespace Cloveshed.App.Demo;

/// <summary>The demo season as it travels in the program, and how it comes into a folder.</summary>
internal static class DemoSeason
{
    private const string Prefix = "demo-season/";

    /// <summary>Its files by name.</summary>
    public static IReadOnlyList<(string Name, byte[] Bytes)> Files { get; } =
        [.. Assembly.GetExecutingAssembly().GetManifestResourceNames().Where(name => name.StartsWith(Prefix, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal).Select(name => (name[Prefix.Length..], Bytes(name)))];

    /// <summary>
    /// Puts the files into a folder. One that is there already with other contents may be somebody's trial: then nothing is
    /// written, and its name comes back.
    /// </summary>
    public static string? PutInto(string folder)
    {
        foreach ((string name, byte[] bytes) in Files)
        {
            string path = Path.Combine(folder, name);
            if (File.Exists(path) && !File.ReadAllBytes(path).AsSpan().SequenceEqual(bytes))
            {
                return name;
            }
        }

        Directory.CreateDirectory(folder);
        foreach ((string name, byte[] bytes) in Files)
        {
            string path = Path.Combine(folder, name);
            if (!File.Exists(path))
            {
                File.WriteAllBytes(path, bytes);
            }
        }

        return null;
    }

    private static byte[] Bytes(string resource)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource)!;
        byte[] bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }
}
