using System.Text.Json;

namespace Cloveshed.Ledger;

/// <summary>The facts that are about one lot: those that name it, and those that correct one of these.</summary>
public static class LotTrail
{
    /// <summary>Of facts in their order, those about the lot, in the same order.</summary>
    public static IEnumerable<Fact> Of(IEnumerable<Fact> facts, string lot)
    {
        HashSet<Guid> about = [];
        foreach (Fact fact in facts)
            if (Names(fact.Body, lot) || (fact.Corrects is { } corrected && about.Contains(corrected)))
            {
                about.Add(fact.Id);
                yield return fact;
            }
    }

    private static bool Names(JsonElement body, string lot) =>
        Is(body, lot) || (body.TryGetProperty("cells", out JsonElement cells) && cells.ValueKind == JsonValueKind.Object && Is(cells, lot));

    private static bool Is(JsonElement holder, string lot) => holder.TryGetProperty("lot", out JsonElement named) && named.ValueKind == JsonValueKind.String && named.ValueEquals(lot);
}
