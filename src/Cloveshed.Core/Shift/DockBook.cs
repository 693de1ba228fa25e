using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Core.Shift;

/// <summary>
/// What the dock needs of the week's runs: the plan's shipments of the week by the days on which they are due, over what stands ready.
/// Of a product what was made first goes out first; what stood ready before the week goes before what the week makes.
/// </summary>
internal static class DockBook
{
    private const double DaysOfWeek = 7;

    /// <summary>Units below this are rounding.</summary>
    private const double Nothing = 1e-6;

    /// <summary>By product, then by time. Only docks at which the week's own runs are needed.</summary>
    public static IReadOnlyList<DockNeed> Needs(Season season, PlanAnswer plan, int week)
    {
        Dictionary<(OrderId, string), OrderLine> orders = season.Orders.ToDictionary(line => (line.Order, line.Number));
        int[] docks = Docks(season.Shifts, week);
        List<DockNeed> needs = [];
        foreach (IGrouping<ProductId, (FillRow Fill, OrderLine Order)> product in plan.Fills.Where(fill => fill.Week == week && orders.ContainsKey((fill.Order, fill.Line)))
            .Select(fill => (fill, orders[(fill.Order, fill.Line)])).GroupBy(row => row.fill.Product).OrderBy(group => group.Key.Text, StringComparer.Ordinal))
            needs.AddRange(Of(product.Key, [.. product], Ready(season, plan, product.Key, week), docks, season.Settings.Monday(week)));
        return needs;
    }

    /// <summary>When each day's loads leave; -1 for a day without a dock.</summary>
    public static int[] Docks(IReadOnlyList<ShiftRow> shifts, int week)
    {
        int[] docks = [.. Enumerable.Range(1, 7).Select(day => day * ShiftQuestion.DayMinutes)];
        ShiftRow[] rows = [.. shifts.Where(row => row.Kind == ShiftKind.Dock)];
        if (rows.Length == 0)
            return docks;
        ShiftWindow[] closed = [.. shifts.Where(row => row.Kind == ShiftKind.Closed && row.Line is null).SelectMany(row => LineHours.Times(row, week))];
        ShiftWindow[] open = [.. rows.SelectMany(row => LineHours.Times(row, week)).Where(window => !closed.Any(shut => shut.Start < window.End && window.End <= shut.End))];
        return [.. Enumerable.Range(0, 7).Select(day => open.Where(window => window.Start / ShiftQuestion.DayMinutes == day).Select(window => window.End).DefaultIfEmpty(-1).Max())];
    }

    private static IEnumerable<DockNeed> Of(ProductId product, (FillRow Fill, OrderLine Order)[] fills, double ready, int[] docks, LocalDate monday)
    {
        double units = 0, late = 0;
        List<DockLoad> loads = [];
        for (int day = 0; day < 7; day++)
        {
            foreach ((FillRow fill, OrderLine order) in fills.Where(row => DockDay(docks, Period.DaysBetween(monday, row.Order.Due)) == day))
            {
                units += fill.Units;
                late += fill.Units * (double)order.LateCost;
                loads.Add(new DockLoad(order.Order, order.Number, order.Customer, fill.Units));
            }

            if (docks[day] < 0 || units - ready <= Nothing)
                continue;
            int next = Enumerable.Range(day + 1, 6 - day).FirstOrDefault(other => docks[other] >= 0, 7);
            yield return new DockNeed(product, docks[day], units - ready, late / units / DaysOfWeek * (next - day), [.. loads]);
            loads.Clear();
        }
    }

    /// <summary>The last dock on or before the day on which something is due; the week's first where there is none. Due after the week: none.</summary>
    private static int DockDay(int[] docks, int due) =>
        due > 6 ? -1 : Enumerable.Range(0, 7).Where(day => docks[day] >= 0 && day <= due).DefaultIfEmpty(Math.Max(0, Array.FindIndex(docks, dock => dock >= 0))).Max();

    /// <summary>Units that stand ready when the week begins and may still ship in it.</summary>
    private static double Ready(Season season, PlanAnswer plan, ProductId id, int week)
    {
        if (season.Products.FirstOrDefault(row => row.Id == id) is not { } product)
            return 0;
        int first = season.Settings.AsOfWeek;
        SortedDictionary<int, double> made = [];
        foreach ((int of, double units) in season.Stock.Where(row => row.Product == id).Select(row => (row.Made, row.Units))
            .Concat(plan.Made.Where(row => row.Product == id && row.Week < week).Select(row => (row.Week, row.Units))))
            made[of] = made.GetValueOrDefault(of) + units;
        ILookup<int, double> out_ = plan.Fills.Where(row => row.Product == id).Select(row => (row.Week, Units: (double)row.Units))
            .Concat(plan.Sales.Where(row => row.Product == id).Select(row => (row.Week, Units: (double)row.Units))).ToLookup(row => row.Week, row => row.Units);
        for (int past = first; past < week; past++)
        {
            double left = out_[past].Sum();
            foreach (int of in made.Keys.Where(of => of <= past && of + product.ShelfWeeks >= past).ToArray())
            {
                double taken = Math.Min(left, made[of]);
                made[of] -= taken;
                left -= taken;
            }
        }

        return made.Where(pair => pair.Key + product.ShelfWeeks >= week).Sum(pair => pair.Value);
    }
}
