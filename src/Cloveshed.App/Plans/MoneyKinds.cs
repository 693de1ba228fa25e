using Cloveshed.Pictures.Reading;

namespace Cloveshed.App.Plans;

/// <summary>Kinds of revenue and cost are keys in summary.json; the known ones have words in both languages.</summary>
internal static class MoneyKinds
{
    private static readonly Dictionary<string, Say> Words = new(StringComparer.OrdinalIgnoreCase)
    {
        ["orders"] = Say.RevenueOrders, ["market"] = Say.RevenueMarket, ["as is"] = Say.RevenueAsIs, ["end"] = Say.RevenueEnd,
        ["making"] = Say.CostMaking, ["line"] = Say.CostLine, ["overtime"] = Say.CostOvertime, ["storage"] = Say.CostStorage,
        ["place"] = Say.CostPlace, ["moves"] = Say.CostMoves, ["late"] = Say.CostLate, ["short"] = Say.CostShort, ["seed short"] = Say.CostSeedShort,
    };

    public static string Name(string kind, Reader reader) => Words.TryGetValue(kind.Replace('_', ' '), out Say word) ? reader.Say(word) : kind;
}
