namespace Cloveshed.Core.Tests.Rules;

/// <summary>The source tree that this build was made from, as the rules read it.</summary>
internal static class Repository
{
    private static readonly HashSet<string> Made = new(StringComparer.Ordinal) { "bin", "obj", "out", "node_modules", ".git", ".vs", ".idea", "TestResults" };

    /// <summary>The folder that holds Cloveshed.slnx, found upwards from the running tests.</summary>
    public static string Root { get; } = FindRoot();

    /// <summary>All files as written by people: nothing that a build made. Paths are relative, with forward slashes.</summary>
    public static IReadOnlyList<string> Files { get; } = [.. Walk(Root).Order(StringComparer.Ordinal)];

    /// <summary>Source files that people wrote, outside data/ and outside libraries that are served as they came.</summary>
    public static IEnumerable<string> Sources =>
        Files.Where(file => Path.GetExtension(file) is ".cs" or ".razor" or ".css" or ".js" or ".mjs" or ".ts" or ".sql" or ".sh"
            && !file.StartsWith("data/", StringComparison.Ordinal) && !file.Contains("/vendor/", StringComparison.Ordinal));

    public static IEnumerable<string> Projects => Files.Where(file => file.EndsWith(".csproj", StringComparison.Ordinal));

    public static string Text(string file) => File.ReadAllText(Path.Combine(Root, file));

    public static string[] Lines(string file) => File.ReadAllLines(Path.Combine(Root, file));

    private static IEnumerable<string> Walk(string folder)
    {
        foreach (string file in Directory.EnumerateFiles(folder))
        {
            yield return Path.GetRelativePath(Root, file).Replace('\\', '/');
        }

        foreach (string inner in Directory.EnumerateDirectories(folder).Where(inner => !Made.Contains(Path.GetFileName(inner))))
        {
            foreach (string file in Walk(inner))
            {
                yield return file;
            }
        }
    }

    private static string FindRoot()
    {
        for (DirectoryInfo? folder = new(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Cloveshed.slnx")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The rules read the source tree: run them from a build inside it.");
    }
}
