using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Sections;

/// <summary>Orders that are short with why, those that are late, and all of them by product.</summary>
public static class OrdersSection
{
    /// <summary>Dearest first, on the page; all of them are in the fold.</summary>
    private const int ShortsShown = 20;

    public static MarkupText Write(Season season, IReadOnlyList<OrderOutcome> orders, Reader reader)
    {
        MarkupText section = Section.Begin("orders", reader.Say(Say.OrdersTitle), "shorts");
        OrderOutcome[] missing = [.. orders.Where(o => o.Short > 0).OrderByDescending(o => o.ShortMoney + o.ShortCost)];
        OrderOutcome[] late = [.. orders.Where(o => o.Late > 0).OrderByDescending(o => o.LateUnitWeeks)];
        section.Lead(missing.Length == 0 ? reader.Say(Say.OrdersNoneShort)
            : reader.Say(Say.OrdersLead, missing.Length, reader.Money(missing.Sum(o => o.ShortMoney)), reader.Money(missing.Sum(o => o.ShortCost))));
        if (missing.Length > 0)
        {
            DataTable Shorts(IEnumerable<OrderOutcome> shown, bool total) => new(reader.Say(Say.ShortCaption),
                [.. Order(reader), new(reader.Say(Say.OrderedHead), true), new(reader.Say(Say.ShortHead), true), new(reader.Say(Say.MoneyHead), true), new(reader.Say(Say.WhyHead), Wide: true)],
                [.. shown.Select(o => (IReadOnlyList<Cell>)[.. Order(o, reader), reader.Number(o.Line.Units, 0), reader.Number(o.Short, 0), reader.Money(o.ShortMoney),
                    reader.Planner(o.Why ?? "")])],
                !total ? null : [reader.Say(Say.Total), "", "", "", "", reader.Number(missing.Sum(o => o.Line.Units), 0), reader.Number(missing.Sum(o => o.Short), 0), reader.Money(missing.Sum(o => o.ShortMoney)), ""], Stacking.Tablet);
            section.Add(Shorts(missing.Take(ShortsShown), missing.Length <= ShortsShown).Write("shorts"));
            if (missing.Length > ShortsShown)
            {
                section.Fold(reader.Say(Say.ShortsFold, missing.Length), Shorts(missing, true).Write("shorts-all"));
            }
        }
        if (late.Length > 0)
        {
            section.Fold(reader.Say(Say.LateFold, late.Length), new DataTable(reader.Say(Say.LateCaption),
                [.. Order(reader), new(reader.Say(Say.OrderedHead), true), new(reader.Say(Say.LateHead), true), new(reader.Say(Say.WeeksLateHead), true)],
                [.. late.Select(o => (IReadOnlyList<Cell>)[.. Order(o, reader), reader.Number(o.Line.Units, 0), reader.Number(o.Late, 0), reader.Number(o.LateUnitWeeks / o.Late, 1)])], Stacks: Stacking.Phone).Write("late"));
        }
        section.Fold(reader.Say(Say.OrdersByProductFold), ByProduct(orders, reader).Write("by-product"));
        return section.End();
    }

    private static Column[] Order(Reader reader) =>
        [new(reader.Say(Say.OrderHead)), new(reader.Say(Say.CustomerHead)), new(reader.Say(Say.ProductHead)), new(reader.Say(Say.DueHead)), new(reader.Say(Say.FirmHead))];

    private static Cell[] Order(OrderOutcome o, Reader reader) =>
        [$"{o.Line.Order} / {o.Line.Number}", o.Line.Customer, o.Line.Product.Text, reader.Day(o.Line.Due), reader.Say(o.Line.Firm ? Say.FirmWord : Say.ForecastWord)];

    /// <summary>Units and money of all orders by product.</summary>
    public static DataTable ByProduct(IReadOnlyList<OrderOutcome> orders, Reader reader) => new(
        reader.Say(Say.ByProductCaption),
        [new(reader.Say(Say.ProductHead)), new(reader.Say(Say.OrderedHead), true), new(reader.Say(Say.OnTimeHead), true), new(reader.Say(Say.LateHead), true),
            new(reader.Say(Say.ShortHead), true), new(reader.Say(Say.FilledHead), true), new(reader.Say(Say.OrderedMoneyHead), true), new(reader.Say(Say.ShortMoneyHead), true)],
        [.. orders.GroupBy(o => o.Line.Product).Select(g => (IReadOnlyList<Cell>)[g.Key.Text, reader.Number(g.Sum(o => o.Line.Units), 0), reader.Number(g.Sum(o => o.OnTime), 0),
            reader.Number(g.Sum(o => o.Late), 0), reader.Number(g.Sum(o => o.Short), 0), reader.Percent((double)g.Sum(o => o.OnTime + o.Late) / Math.Max(1, g.Sum(o => o.Line.Units))),
            reader.Money(g.Sum(o => o.Line.Units * o.Line.Price)), reader.Money(g.Sum(o => o.ShortMoney))])],
        [reader.Say(Say.Total), reader.Number(orders.Sum(o => o.Line.Units), 0), reader.Number(orders.Sum(o => o.OnTime), 0), reader.Number(orders.Sum(o => o.Late), 0),
            reader.Number(orders.Sum(o => o.Short), 0), reader.Percent((double)orders.Sum(o => o.OnTime + o.Late) / Math.Max(1, orders.Sum(o => o.Line.Units))),
            reader.Money(orders.Sum(o => o.Line.Units * o.Line.Price)), reader.Money(orders.Sum(o => o.ShortMoney))]);
}
