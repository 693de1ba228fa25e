using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Pictures.Sections;

/// <summary>What becomes of one order line: units shipped up to the week of its due date, after it, and not at all.</summary>
public sealed record OrderOutcome(OrderLine Line, int OnTime, int Late, double LateUnitWeeks, int Short, string? Why)
{
    public decimal OnTimeMoney => OnTime * Line.Price;

    public decimal LateMoney => Late * Line.Price;

    public decimal ShortMoney => Short * Line.Price;

    /// <summary>What the shortfall costs beyond the lost sale; season-files.md charges it on firm lines only.</summary>
    public decimal ShortCost => Line.Firm ? Short * Line.ShortCost : 0;

    public static IReadOnlyList<OrderOutcome> All(Season season, PlanAnswer answer)
    {
        ILookup<(string, string), FillRow> fills = answer.Fills.ToLookup(f => (f.Order.Text, f.Line));
        ILookup<(string, string), ShortRow> shorts = answer.Shorts.ToLookup(s => (s.Order.Text, s.Line));
        return [.. season.Orders.Select(o => From(o, season.Settings.WeekOf(o.Due), [.. fills[(o.Order.Text, o.Number)]],
            shorts[(o.Order.Text, o.Number)].Select(s => s.Why).FirstOrDefault()))];
    }

    private static OrderOutcome From(OrderLine line, int dueWeek, IReadOnlyList<FillRow> fills, string? why)
    {
        int onTime = fills.Where(f => f.Week <= dueWeek).Sum(f => f.Units);
        int late = fills.Where(f => f.Week > dueWeek).Sum(f => f.Units);
        // Late cost is per unit and week late: a unit two weeks late counts twice.
        double lateUnitWeeks = fills.Where(f => f.Week > dueWeek).Sum(f => (double)f.Units * (f.Week - dueWeek));
        return new OrderOutcome(line, onTime, late, lateUnitWeeks, Math.Max(0, line.Units - onTime - late), why);
    }
}
