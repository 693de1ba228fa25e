using Cloveshed.Core;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>
/// A made-up season of so many lots and orders out of a smaller one: lots are copied under names of their own with weights drawn about theirs, orders are copied or
/// left out, and places, lines, market, stock, seed needs and prices as is hold in proportion, so that the large season is as tight as the small one.
/// </summary>
internal static class LargeSeason
{
    /// <summary>Lots of one field are as unlike as this.</summary>
    private const double Least = 0.7, Most = 1.3;

    /// <summary>The same season cut to so many lots and weeks, with places that hold what stands in them.</summary>
    internal static Season Cut(Season season, int lots, int weeks)
    {
        Season cut = ShortSeason.Of(season, weeks);
        Season grown = Of(cut, lots, Math.Max(6, cut.Orders.Select(line => line.Order).Distinct().Count() * lots / cut.Lots.Select(row => row.Lot).Distinct().Count()));
        return grown with { Places = [.. grown.Places.Select(place => place with { CapacityBins = Math.Max(place.CapacityBins, grown.Lots.Where(row => row.Place == place.Id).Sum(row => row.Bins)) })] };
    }

    internal static Season Of(Season season, int lots, int orders)
    {
        LotId[] names = [.. season.Lots.Select(row => row.Lot).Distinct()];
        OrderId[] asked = [.. season.Orders.Select(line => line.Order).Distinct()];
        ILookup<LotId, LotRow> rows = season.Lots.ToLookup(row => row.Lot);
        ILookup<LotId, SampleBulb> bulbs = season.Samples.ToLookup(bulb => bulb.Lot);
        ILookup<OrderId, OrderLine> lines = season.Orders.ToLookup(line => line.Order);
        List<LotRow> grown = [];
        List<SampleBulb> samples = [];
        for (int at = 0; at < lots; at++)
        {
            (LotId from, int copy) = (names[at % names.Length], at / names.Length);
            LotId name = copy == 0 ? from : new LotId(FormattableString.Invariant($"{from}-{copy}"));
            // Drawn from the lot's number, so that the season is the same on every machine.
            double factor = copy == 0 ? 1 : Least + ((Most - Least) * (((at * 2654435761L) & 0xFFFF) / 65535.0));
            double Grown(double number) => Math.Max(1, Math.Round(number * factor));
            grown.AddRange(rows[from].Select(row => row with { Lot = name, Net = Grown(row.Net), Bins = Grown(row.Bins), NetLow = row.NetLow is { } low ? Grown(low) : null, NetHigh = row.NetHigh is { } high ? Grown(high) : null }));
            samples.AddRange(bulbs[from].Select(bulb => bulb with { Lot = name }));
        }

        double scale = grown.Sum(row => row.Net) / season.Lots.Sum(row => row.Net), perOrder = scale * asked.Length / orders;
        List<OrderLine> demand = [];
        for (int at = 0; at < orders; at++)
        {
            (OrderId from, int copy) = (asked[at % asked.Length], at / asked.Length);
            OrderId name = copy == 0 ? from : new OrderId(FormattableString.Invariant($"{from}-{copy}"));
            demand.AddRange(lines[from].Select(line => line with { Order = name, Units = Math.Max(1, (int)Math.Round(line.Units * perOrder)) }));
        }

        return season with
        {
            Settings = season.Settings with { Name = FormattableString.Invariant($"{season.Settings.Name}, {lots} lots") },
            Lots = grown, Samples = samples, Orders = demand,
            Places = [.. season.Places.Select(place => place with { CapacityBins = Math.Ceiling(place.CapacityBins * scale * Most / 1.1) })],
            Lines = [.. season.Lines.Select(line => line with { RatePerHour = Math.Round(line.RatePerHour * scale) })],
            Market = [.. season.Market.Select(week => week with { P10 = week.P10 * scale, P50 = Math.Round(week.P50 * scale), P90 = week.P90 * scale })],
            Stock = [.. season.Stock.Select(row => row with { Units = Math.Round(row.Units * scale) })],
            SeedNeeds = [.. season.SeedNeeds.Select(need => need with { Net = Math.Round(need.Net * scale) })],
            AsIsPrices = [.. season.AsIsPrices.Select(price => price with { Limit = price.Limit * scale })],
        };
    }
}
