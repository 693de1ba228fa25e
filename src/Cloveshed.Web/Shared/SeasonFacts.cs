using Cloveshed.Ledger;

namespace Cloveshed.Web.Shared;

/// <summary>Facts of the ledger that change what a plan is made from, told apart from plans, jobs, readings and notes.</summary>
public static class SeasonFacts
{
    /// <summary>Rows that put a week in order; no plan is made from them.</summary>
    private static readonly string[] OfWeeks =
        [.. new[] { "setups.csv", "shifts.csv" }.SelectMany(file => new[] { FactKinds.Entered(file), FactKinds.Changed(file), FactKinds.Dropped(file) })];

    /// <summary>Whether a plan that was made before it could be another one now.</summary>
    public static bool ChangesPlan(string kind) =>
        !kind.StartsWith("plan.", StringComparison.Ordinal) && kind is not (FactKinds.Note or FactKinds.SizerSet or FactKinds.DrumSet or FactKinds.WeekOrdered or FactKinds.WeekAsked or FactKinds.WeekFound or FactKinds.RunDone) && !OfWeeks.Contains(kind) && !FactKinds.OfRooms.Contains(kind)
        && (!FactKinds.OfYard.Contains(kind) || kind is FactKinds.LotInspected or FactKinds.YardRecordWithdrawn);

    /// <summary>The file and cells of a fact about a row; null for others. A dropped row has no cells.</summary>
    public static (string File, IReadOnlyDictionary<string, string> Cells)? Row(Fact fact)
    {
        if (!fact.Body.TryGetProperty("file", out var file) || fact.Kind == FactKinds.SeasonOpened)
        {
            return null;
        }

        Dictionary<string, string> cells = [];
        if (fact.Body.TryGetProperty("cells", out var given))
        {
            foreach (var cell in given.EnumerateObject())
            {
                cells[cell.Name] = cell.Value.GetString() ?? "";
            }
        }

        return (file.GetString() ?? "", cells);
    }

    /// <summary>Why, in the words of whoever said it; null where nothing was said.</summary>
    public static string? Why(Fact fact) => fact.Body.TryGetProperty("reason", out var why) && why.GetString() is { Length: > 0 } words ? words : null;
}
