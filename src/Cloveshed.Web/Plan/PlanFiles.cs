namespace Cloveshed.Web.Plan;

/// <summary>The files of an answer that can be taken away: season-files.md names them.</summary>
internal static class PlanFiles
{
    public static IReadOnlyList<string> Names { get; } =
    [
        "paths.csv", "shares.csv", "runs.csv", "sorted.csv", "made.csv", "fills.csv", "sales.csv", "as-is.csv", "shorts.csv", "keeps.csv", "moves.csv", "rooms.csv", "seed.csv",
        "worths.csv", "summary.json",
    ];
}
