using System.Text.Json;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Setup;

/// <summary>One fact in a row's life, and what it changed.</summary>
/// <param name="Changes">Each cell that now reads otherwise: the column, what it said before and what it says since.</param>
public sealed record FactStep(Fact Fact, IReadOnlyList<CellStep> Changes)
{
    /// <summary>Rows that are shown of one life; older ones are in the ledger.</summary>
    private const int Most = 200;

    public string Reason => Fact.Body.TryGetProperty("reason", out JsonElement reason) && reason.ValueKind == JsonValueKind.String ? reason.GetString()! : "";

    /// <summary>The last step first.</summary>
    public static IReadOnlyList<FactStep> OfRow(ShedLedger ledger, ShedState state, string file, int number)
    {
        Guid? last = state.Rows?.Find(file, number)?.Fact ?? Drop(ledger, state, file, number);
        List<Fact> facts = [];
        while (last is { } id && facts.Count < Most && ledger.Find(id) is { } fact)
        {
            facts.Add(fact);
            last = fact.Corrects;
        }

        return [.. facts.Select((fact, at) => new FactStep(fact, Changed(at + 1 < facts.Count ? Cells(facts[at + 1]) : [], Cells(fact), fact.Kind == FactKinds.Dropped(file))))];
    }

    /// <summary>season.json as it was opened and changed, the last step first.</summary>
    public static IReadOnlyList<FactStep> OfSettings(ShedLedger ledger, ShedState state)
    {
        if (state.Rows is not { } rows || ledger.Find(rows.Opened) is not { } opened)
        {
            return [];
        }

        List<Fact> facts = [opened, .. ledger.Read(opened.Seq, FactKinds.SeasonChanged)];
        // As of a past day, what came later is left out: the last that counts is the one that reads as the season does.
        int count = facts.FindLastIndex(fact => Text(fact) == rows.Settings) + 1;
        facts = [.. facts.Take(count)];
        return [.. facts.Select((fact, at) => new FactStep(fact, Changed(at == 0 ? [] : Settings(facts[at - 1]), Settings(fact), false))).Reverse().Take(Most)];
    }

    private static List<CellStep> Changed(Dictionary<string, string> before, Dictionary<string, string> after, bool dropped) =>
        dropped ? [] : [.. before.Keys.Union(after.Keys).Select(column => new CellStep(column, before.GetValueOrDefault(column, ""), after.GetValueOrDefault(column, ""))).Where(step => step.Before != step.After)];

    /// <summary>A dropped row is found by the fact that dropped it: of these there are few.</summary>
    private static Guid? Drop(ShedLedger ledger, ShedState state, string file, int number) => state.Rows is not { } rows || ledger.Find(rows.Opened) is not { } opened ? null
        : ledger.Read(opened.Seq, FactKinds.Dropped(file)).FirstOrDefault(fact => fact.Body.GetProperty("row").GetInt32() == number)?.Id;

    private static Dictionary<string, string> Cells(Fact fact) => fact.Body.TryGetProperty("cells", out JsonElement cells)
        ? cells.EnumerateObject().Where(cell => cell.Value.GetString()!.Length > 0).ToDictionary(cell => cell.Name, cell => cell.Value.GetString()!) : [];

    private static string Text(Fact fact) => fact.Body.GetProperty("text").GetString()!;

    private static Dictionary<string, string> Settings(Fact fact) => SettingsText.Values(Text(fact));
}

/// <summary>A cell before and after a fact.</summary>
public sealed record CellStep(string Column, string Before, string After);
