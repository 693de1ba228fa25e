namespace Cloveshed.Seasons.Tests.Demo;

/// <summary>The committed files of the demo season, read as bytes and as plain rows (none of them quotes a cell).</summary>
internal static class Committed
{
    public static readonly string Data = Path.Combine(Root(), "data");

    public static byte[] Bytes(string path) => File.ReadAllBytes(Path.Combine(Data, path));

    /// <summary>The rows of a CSV file, each cell under its column's name.</summary>
    public static IReadOnlyList<Dictionary<string, string>> Rows(string path)
    {
        string[] lines = File.ReadAllText(Path.Combine(Data, path)).TrimEnd('\n').Split('\n');
        string[] header = lines[0].Split(',');
        return [.. lines.Skip(1).Select(line => header.Zip(line.Split(','), (h, c) => (h, c)).ToDictionary(x => x.h, x => x.c, StringComparer.Ordinal))];
    }

    private static string Root()
    {
        DirectoryInfo? at = new(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "Cloveshed.slnx")))
        {
            at = at.Parent;
        }

        return at?.FullName ?? throw new DirectoryNotFoundException("No folder above the tests holds Cloveshed.slnx.");
    }
}
