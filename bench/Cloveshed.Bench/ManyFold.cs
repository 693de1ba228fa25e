using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Bench;

/// <summary>
/// A season so many times over: as many times the lots, samples and orders, under names of their own, in places, on lines and
/// with people that hold as many times more. Its plan is the plan so many times over: what pages read, not what a check would pass.
/// </summary>
internal static class ManyFold
{
    public static Season Of(Season season, int times) => season with
    {
        Places = [.. season.Places.Select(place => place with { CapacityBins = place.CapacityBins * times })],
        Lots = [.. Copies(season.Lots, times, (row, copy) => row with { Lot = Named(row.Lot, copy) })],
        Samples = [.. Copies(season.Samples, times, (bulb, copy) => bulb with { Lot = Named(bulb.Lot, copy) })],
        Lines = [.. season.Lines.Select(line => line with { RatePerHour = line.RatePerHour * times, Heads = line.Heads })],
        Orders = [.. Copies(season.Orders, times, (line, copy) => line with { Order = Named(line.Order, copy) })],
        Market = [.. season.Market.Select(week => week with { P10 = week.P10 * times, P50 = week.P50 * times, P90 = week.P90 * times })],
        Stock = [.. season.Stock.Select(row => row with { Units = row.Units * times })],
        SeedNeeds = [.. season.SeedNeeds.Select(need => need with { Net = need.Net * times })],
    };

    public static PlanAnswer Of(PlanAnswer plan, int times) => plan with
    {
        Summary = plan.Summary with { Value = plan.Summary.Value * times, Bound = plan.Summary.Bound * times, Revenue = plan.Summary.Revenue * times, Sizes = [.. Copies(plan.Summary.Sizes, times, (row, copy) => row with { Lot = Named(row.Lot, copy) })] },
        Paths = [.. Copies(plan.Paths, times, (row, copy) => row with { Path = Named(row.Path, copy), Lot = Named(row.Lot, copy) })],
        Shares = [.. Copies(plan.Shares, times, (row, copy) => row with { Lot = Named(row.Lot, copy) })],
        Runs = [.. Copies(plan.Runs, times, (row, copy) => row with { Run = Named(row.Run, copy), Lot = Named(row.Lot, copy), Path = row.Path is { } path ? Named(path, copy) : null })],
        Sorted = [.. Copies(plan.Sorted, times, (row, copy) => row with { Run = Named(row.Run, copy), Lot = Named(row.Lot, copy) })],
        Made = [.. Copies(plan.Made, times, (row, copy) => row with { Run = Named(row.Run, copy), Lot = Named(row.Lot, copy) })],
        Fills = [.. Copies(plan.Fills, times, (row, copy) => row with { Order = Named(row.Order, copy) })],
        Sales = [.. plan.Sales.Select(row => row with { Units = row.Units * times })],
        AsIs = [.. Copies(plan.AsIs, times, (row, copy) => row with { Lot = Named(row.Lot, copy), Path = Named(row.Path, copy) })],
        Shorts = [.. Copies(plan.Shorts, times, (row, copy) => row with { Order = Named(row.Order, copy) })],
        Keeps = [.. Copies(plan.Keeps, times, (row, copy) => row with { Lot = Named(row.Lot, copy), Path = Named(row.Path, copy) })],
        Moves = [.. Copies(plan.Moves, times, (row, copy) => row with { Lot = Named(row.Lot, copy) })],
        Seed = [.. Copies(plan.Seed, times, (row, copy) => row with { Run = Named(row.Run, copy), Lot = Named(row.Lot, copy) })],
        Worths = [.. plan.Worths.SelectMany(row => row.Kind == "lot" ? Enumerable.Range(0, times).Select(copy => row with { Name = Named(row.Name, copy) }) : [row])],
    };

    private static IEnumerable<T> Copies<T>(IReadOnlyList<T> rows, int times, Func<T, int, T> copy) => Enumerable.Range(0, times).SelectMany(at => rows.Select(row => copy(row, at)));

    private static LotId Named(LotId lot, int copy) => new(Named(lot.Text, copy));

    private static OrderId Named(OrderId order, int copy) => new(Named(order.Text, copy));

    /// <summary>The first copy keeps its name, so that one page is asked for by the same address at every size.</summary>
    private static string Named(string name, int copy) => copy == 0 ? name : FormattableString.Invariant($"{name}-{copy}");
}
