using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Keeping;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Keep;

/// <summary>What is asked of the lots: which, in what order, from where on.</summary>
/// <param name="Place">Lots that stand there now, or do so in the plan.</param>
/// <param name="Find">Part of a lot's, field's or variety's name, whatever its case.</param>
/// <param name="Sort">lot, variety, mass or dug; anything else: first to expire.</param>
/// <param name="From">How many are passed over.</param>
/// <param name="All">On one page.</param>
public sealed record LotsAsked(string? Place, string? Variety, string? Find, string? Sort, int From, bool All = false)
{
    public bool Any => !string.IsNullOrEmpty(Place) || !string.IsNullOrEmpty(Variety) || !string.IsNullOrEmpty(Find);

    /// <param name="all">Null: as now.</param>
    public string Path(int? from = null, string? sort = null, bool? all = null) => Paths.Query(
        "/keep", ("place", Place), ("variety", Variety), ("find", Find), ("sort", sort ?? Sort), ("from", from is > 0 ? Paths.Number(from.Value) : null), ("all", all ?? All ? "yes" : null));
}

/// <summary>The lots that were asked for: one page of bars (or all), and all of them in their order.</summary>
public sealed record LotsFound(KeepingFacts Page, KeepingFacts All)
{
    /// <summary>Bars on a page: two screens' worth; the next ones, or all, are a link away.</summary>
    public const int PageSize = 60;

    /// <summary>The page in pictures of at most so many bars, each with its weeks above: a browser draws those that are in sight.</summary>
    public IEnumerable<KeepingFacts> Pictures => Page.Bars.Chunk(PageSize).Select(bars => Page with { Bars = bars });

    public int Count => All.Bars.Count;

    public double Mass => All.Bars.Sum(bar => bar.Net);

    public static LotsFound Of(Season season, KeepingFacts facts, PlanBook? book, LotsAsked asked)
    {
        ILookup<LotId, LotRow> rows = season.Lots.ToLookup(row => row.Lot);
        HashSet<LotId> planned = string.IsNullOrEmpty(asked.Place) || book is null ? [] : [.. book.Answer.Keeps.Where(keep => keep.Place.Text == asked.Place).Select(keep => keep.Lot)];
        bool Asked(KeepingBar bar) =>
            (string.IsNullOrEmpty(asked.Variety) || bar.Variety.Text == asked.Variety)
            && (string.IsNullOrEmpty(asked.Place) || planned.Contains(bar.Lot) || rows[bar.Lot].Any(row => row.Place.Text == asked.Place))
            && (string.IsNullOrEmpty(asked.Find) || Has(bar.Lot.Text) || Has(bar.Variety.Text) || rows[bar.Lot].Any(row => Has(row.Field)));
        bool Has(string text) => text.Contains(asked.Find!, StringComparison.OrdinalIgnoreCase);
        KeepingBar[] found = [.. InOrder(facts.Bars.Where(Asked), asked.Sort)];
        int from = Math.Clamp(asked.From, 0, Math.Max(0, found.Length - 1)) / PageSize * PageSize;
        return new LotsFound(facts with { Bars = asked.All ? found : [.. found.Skip(from).Take(PageSize)] }, facts with { Bars = found });
    }

    private static IEnumerable<KeepingBar> InOrder(IEnumerable<KeepingBar> bars, string? sort) => sort switch
    {
        "lot" => bars.OrderBy(bar => bar.Lot.Text, StringComparer.Ordinal),
        "variety" => bars.OrderBy(bar => bar.Variety.Text, StringComparer.Ordinal),
        "mass" => bars.OrderByDescending(bar => bar.Net),
        "dug" => bars.OrderBy(bar => bar.Dug),
        _ => bars,
    };
}
