namespace Cloveshed.TestRun;

/// <summary>What to run: the repository's root, where results go, one project or all, how long one may take, and how many run at a time.</summary>
internal sealed record Arguments(string Root, string Results, string? Only, TimeSpan Limit, int Together)
{
    public const string Usage = "usage: testrun --root DIR --results DIR [--only NAME] [--minutes N] [--together N]";

    /// <summary>What took longest when it was last looked at, the longest first: what begins last should be short.</summary>
    private static readonly string[] Longest = ["Cloveshed.Browser.Tests", "Cloveshed.Seasons.Tests", "Cloveshed.Web.Tests", "Cloveshed.Ledger.Tests"];

    public static Arguments? Read(string[] args)
    {
        string? root = null, results = null, only = null;
        int minutes = 20, together = 2;
        for (int i = 0; i + 1 < args.Length; i += 2)
        {
            switch (args[i])
            {
                case "--root": root = args[i + 1]; break;
                case "--results": results = args[i + 1]; break;
                case "--only": only = args[i + 1]; break;
                case "--minutes" when int.TryParse(args[i + 1], out minutes) && minutes > 0: break;
                case "--together" when int.TryParse(args[i + 1], out together) && together > 0: break;
                default: return null;
            }
        }

        return args.Length % 2 != 0 || root is null || results is null
            ? null
            : new Arguments(Path.GetFullPath(root), Path.GetFullPath(results), only, TimeSpan.FromMinutes(minutes), together);
    }

    /// <summary>Folders under tests/ that hold a test project, the longest first and then by name. NAME may leave out "Cloveshed." and ".Tests".</summary>
    public IEnumerable<string> Projects() =>
        Directory.EnumerateFiles(Path.Combine(Root, "tests"), "*.Tests.csproj", SearchOption.AllDirectories)
            .Select(file => Path.GetDirectoryName(file)!)
            .Where(folder => Only is null
                || Path.GetFileName(folder).Equals(Only, StringComparison.OrdinalIgnoreCase)
                || Path.GetFileName(folder).Equals($"Cloveshed.{Only}.Tests", StringComparison.OrdinalIgnoreCase))
            .OrderBy(folder => Array.IndexOf(Longest, Path.GetFileName(folder)) is var place and >= 0 ? place : Longest.Length)
            .ThenBy(folder => folder, StringComparer.Ordinal);
}
