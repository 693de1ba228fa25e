using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Sections;
using NodaTime;

namespace Cloveshed.Web.Plan.Compare;

/// <summary>A kind of money in two plans; costs are negative, so that differences add up to that of the value.</summary>
public sealed record MoneyChange(string Kind, double Before, double After)
{
    public double Difference => After - Before;
}

/// <summary>Units of a product that go to orders in two plans, of those ordered when the second was made.</summary>
public sealed record FillChange(ProductId Product, long Ordered, long Before, long After);

/// <summary>Pounds of a size class or clove grade that go to orders in two plans, of those ordered when each was made; masses in the season's unit.</summary>
public sealed record SizeFill(string Size, double OrderedBefore, double Before, double OrderedAfter, double After);

/// <summary>An order line that fares otherwise; null where a plan's season does not have it.</summary>
public sealed record OrderChange(OrderLine Line, OrderOutcome? Before, OrderOutcome? After)
{
    /// <summary>Units on time that are gained or lost.</summary>
    public int OnTime => (After?.OnTime ?? 0) - (Before?.OnTime ?? 0);
}

/// <summary>A room whose weeks differ: the Mondays of sealing and opening, null where it is not sealed or stays closed.</summary>
public sealed record RoomChange(PlaceId Place, LocalDate? SealedBefore, LocalDate? OpenedBefore, LocalDate? SealedAfter, LocalDate? OpenedAfter);

/// <summary>Two plans side by side: what is not the same.</summary>
public sealed record PlanDifference(
    IReadOnlyList<MoneyChange> Money, IReadOnlyList<FillChange> Fills, IReadOnlyList<RunChange> Runs, IReadOnlyList<OrderChange> Orders, IReadOnlyList<RoomChange> Rooms)
{
    /// <summary>Runs that are made in both plans, but not in the same week or over the same line.</summary>
    public IReadOnlyList<RunMove> Moves { get; init; } = [];

    /// <summary>Every size that is ordered, in the order of the charts: bulbs, then cloves.</summary>
    public IReadOnlyList<SizeFill> Sizes { get; init; } = [];

    /// <summary>Less than half of the unit that is shown.</summary>
    private const double Unseen = 0.5;

    /// <summary>Plans of seasons in different units or currencies have no common figures.</summary>
    public static bool Comparable(PlanSight before, PlanSight after) =>
        before.Season.Settings.MassUnit == after.Season.Settings.MassUnit && before.Season.Settings.Currency == after.Season.Settings.Currency;

    public static PlanDifference Of(PlanSight before, PlanSight after)
    {
        IReadOnlyList<RunChange> runs = RunChange.Between(before, after);
        return new PlanDifference(Kinds(before.Answer.Summary, after.Answer.Summary), Filled(before, after), runs, Faring(before, after), Shut(before, after))
        {
            Moves = RunMove.Of(runs), Sizes = BySize(before, after),
        };
    }

    private static List<SizeFill> BySize(PlanSight before, PlanSight after)
    {
        Dictionary<string, (double Ordered, double Filled)> first = Of(before), second = Of(after);
        string[] chart = [.. after.Season.Sizes.Select(size => size.Id.Text), .. after.Season.CloveGrades.Select(grade => grade.Id.Text)];
        return [.. chart.Concat(first.Keys).Concat(second.Keys).Distinct(StringComparer.Ordinal).Select(size => (size, Before: first.GetValueOrDefault(size), After: second.GetValueOrDefault(size)))
            .Where(one => one.Before.Ordered > 0 || one.After.Ordered > 0).Select(one => new SizeFill(one.size, one.Before.Ordered, one.Before.Filled, one.After.Ordered, one.After.Filled))];

        static Dictionary<string, (double Ordered, double Filled)> Of(PlanSight plan)
        {
            Dictionary<ProductId, Product> products = plan.Season.Products.ToDictionary(product => product.Id);
            return plan.Orders.Where(order => products.ContainsKey(order.Line.Product)).GroupBy(order => products[order.Line.Product].From)
                .ToDictionary(lines => lines.Key, lines => (lines.Sum(order => order.Line.Units * products[order.Line.Product].Net), lines.Sum(order => (order.OnTime + order.Late) * products[order.Line.Product].Net)), StringComparer.Ordinal);
        }
    }

    private static List<MoneyChange> Kinds(PlanSummary before, PlanSummary after)
    {
        IEnumerable<MoneyChange> Of(IReadOnlyDictionary<string, double> first, IReadOnlyDictionary<string, double> second, int sign) =>
            first.Keys.Union(second.Keys).Select(kind => new MoneyChange(kind, sign * first.GetValueOrDefault(kind), sign * second.GetValueOrDefault(kind)));
        return [.. Of(before.Revenues, after.Revenues, 1).Concat(Of(before.Costs, after.Costs, -1)).Where(kind => Math.Abs(kind.Before) >= Unseen || Math.Abs(kind.After) >= Unseen)
            .OrderByDescending(kind => Math.Abs(kind.Difference)).ThenBy(kind => kind.Kind, StringComparer.Ordinal)];
    }

    private static List<FillChange> Filled(PlanSight before, PlanSight after)
    {
        Dictionary<ProductId, long> first = Units(before), second = Units(after), ordered = after.Orders.GroupBy(order => order.Line.Product).ToDictionary(lines => lines.Key, lines => lines.Sum(order => (long)order.Line.Units));
        return [.. first.Keys.Union(second.Keys).Select(product => new FillChange(product, ordered.GetValueOrDefault(product), first.GetValueOrDefault(product), second.GetValueOrDefault(product)))
            .Where(fill => fill.Before != fill.After).OrderByDescending(fill => Math.Abs(fill.After - fill.Before)).ThenBy(fill => fill.Product.Text, StringComparer.Ordinal)];

        static Dictionary<ProductId, long> Units(PlanSight plan) =>
            plan.Orders.GroupBy(order => order.Line.Product).ToDictionary(lines => lines.Key, lines => lines.Sum(order => (long)order.OnTime + order.Late));
    }

    private static List<OrderChange> Faring(PlanSight before, PlanSight after)
    {
        Dictionary<(OrderId, string), OrderOutcome> first = before.Orders.ToDictionary(order => (order.Line.Order, order.Line.Number)), second = after.Orders.ToDictionary(order => (order.Line.Order, order.Line.Number));
        return [.. first.Keys.Union(second.Keys).Select(key => (Before: first.GetValueOrDefault(key), After: second.GetValueOrDefault(key)))
            .Where(pair => (pair.Before?.OnTime, pair.Before?.Late, pair.Before?.Short) != (pair.After?.OnTime, pair.After?.Late, pair.After?.Short))
            .Select(pair => new OrderChange((pair.After ?? pair.Before)!.Line, pair.Before, pair.After))
            .OrderByDescending(change => Math.Abs(change.OnTime) * change.Line.Price).ThenBy(change => change.Line.Order.Text, StringComparer.Ordinal).ThenBy(change => change.Line.Number, StringComparer.Ordinal)];
    }

    private static List<RoomChange> Shut(PlanSight before, PlanSight after)
    {
        Dictionary<PlaceId, RoomRow> first = before.Answer.Rooms.ToDictionary(room => room.Place), second = after.Answer.Rooms.ToDictionary(room => room.Place);
        return [.. first.Keys.Union(second.Keys).OrderBy(place => place.Text, StringComparer.Ordinal)
            .Select(place => new RoomChange(place, Day(before, first.GetValueOrDefault(place)?.Sealed), Day(before, first.GetValueOrDefault(place)?.Opened), Day(after, second.GetValueOrDefault(place)?.Sealed), Day(after, second.GetValueOrDefault(place)?.Opened)))
            .Where(room => (room.SealedBefore, room.OpenedBefore) != (room.SealedAfter, room.OpenedAfter))];

        static LocalDate? Day(PlanSight plan, int? week) => week is { } at ? plan.Season.Settings.Monday(at) : null;
    }
}
