using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Flow;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Sections;

/// <summary>What the figures of the head open into.</summary>
public sealed class HeadFigures(Season season, PlanAnswer answer, IReadOnlyList<OrderOutcome> orders, PoundFlowFacts flow, Reader reader)
{
    public MarkupText Money()
    {
        PlanSummary plan = answer.Summary;
        return new DataTable(reader.Say(Say.FigureMoney), [new(reader.Say(Say.KindHead)), new(reader.Say(Say.MoneyHead), true)],
            [
                .. plan.Revenues.OrderByDescending(r => r.Value).Select(r => (IReadOnlyList<Cell>)[HeadSection.KindName(r.Key, reader), reader.Money(r.Value)]),
                .. plan.Costs.OrderByDescending(r => r.Value).Select(r => (IReadOnlyList<Cell>)[HeadSection.KindName(r.Key, reader), reader.Money(-r.Value)]),
            ],
            [reader.Say(Say.Total), reader.Money(plan.Value)]).Write();
    }

    public MarkupText ByProduct() => OrdersSection.ByProduct(orders, reader).Write();

    /// <summary>Units that miss their week, or miss altogether, by product.</summary>
    public MarkupText Missed(Func<OrderOutcome, int> units, Func<OrderOutcome, decimal> money, Say head) => new DataTable(
        reader.Say(head), [new(reader.Say(Say.ProductHead)), new(reader.Say(Say.OrderLinesHead), true), new(reader.Say(head), true), new(reader.Say(Say.MoneyHead), true)],
        [.. orders.Where(o => units(o) > 0).GroupBy(o => o.Line.Product).OrderByDescending(g => g.Sum(money)).Select(g => (IReadOnlyList<Cell>)[
            g.Key.Text, reader.Number(g.Count(), 0), reader.Number(g.Sum(o => (long)units(o)), 0), reader.Money(g.Sum(money))])],
        [reader.Say(Say.Total), reader.Number(orders.Count(o => units(o) > 0), 0), reader.Number(orders.Sum(o => (long)units(o)), 0), reader.Money(orders.Sum(money))]).Write();

    /// <summary>What stood or is dug, by variety and kind of place, and where it ends.</summary>
    public MarkupText Pounds()
    {
        Dictionary<Core.PlaceId, PlaceKind> kinds = season.Places.ToDictionary(p => p.Id, p => p.Kind);
        var paths = answer.Paths.Select(p => (p.Lot, p.FromPlace)).ToHashSet();
        LotRow[] lots = [.. season.Lots.Where(l => paths.Contains((l.Lot, l.Place)))];
        var sources = new DataTable(reader.Say(Say.SourcesCaption),
            [new(reader.Say(Say.Variety)), new(reader.Say(Say.WhereHead)), new(reader.Say(Say.LotsHead), true), new(reader.Say(Say.MassHead, reader.MassUnitName), true)],
            [.. lots.GroupBy(l => (l.Variety, Kind: kinds[l.Place])).OrderByDescending(g => g.Sum(l => l.Net)).Select(g => (IReadOnlyList<Cell>)[
                g.Key.Variety.Text, reader.Kind(g.Key.Kind), reader.Number(g.Select(l => l.Lot).Distinct().Count(), 0), reader.MassNumber(g.Sum(l => l.Net))])],
            [reader.Say(Say.Total), "", reader.Number(lots.Select(l => l.Lot).Distinct().Count(), 0), reader.MassNumber(lots.Sum(l => l.Net))]);
        return new MarkupText().Open("div", ("class", "beside")).Add(sources.Write()).Add(PoundFlow.Ends(flow, reader).Write()).Close("div");
    }
}
