using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>A scenario written as a season: what its files would have said, had everything been known. To check a replay against, and to plan with hindsight.</summary>
public static class TrueSeason
{
    /// <summary>
    /// Sizes are in the files as mean and spread where only the mean was unsure (<see cref="SizeSpread.Classes"/> 0) and both cells were
    /// given; else they are left open, as no file can say them.
    /// </summary>
    public static Season Of(PlanningInstance instance, Scenario scenario)
    {
        Season season = instance.Season;
        var lots = instance.Lots.Index().ToDictionary(l => l.Item.Id, l => l.Index);
        var rows = instance.Rows.Index().ToDictionary(r => (instance.Lots[r.Item.Lot].Id, instance.Places[r.Item.Place].Id), r => r.Index);
        var orders = instance.OrderLines.Index().ToDictionary(o => (o.Item.Line.Order, o.Item.Line.Number), o => scenario.OrderUnits[o.Index]);
        var market = instance.Market.Index().ToDictionary(m => (instance.Products[m.Item.Product].Id, m.Item.Week), m => scenario.MarketUnits[m.Index]);
        return season with
        {
            Lots = [.. season.Lots.Where(r => rows.TryGetValue((r.Lot, r.Place), out int row) && scenario.StartWeek[row] < instance.Weeks).Select(r =>
            {
                int row = rows[(r.Lot, r.Place)], lot = lots[r.Lot];
                double factor = scenario.NetFactor[lot];
                return r with
                {
                    Net = r.Net * factor, Bins = r.Bins * scenario.BinsFactor[row], NetLow = null, NetHigh = null, Harvested = r.Harvested.PlusWeeks(scenario.StartWeek[row] - instance.Rows[row].Start),
                    FreshShare = scenario.Fresh[row], CrackShare = scenario.Crack[row],
                    MeanG = Told(instance.Lots[lot], scenario, lot) ? r.MeanG * Math.Exp(scenario.MeanShift[lot]) : null, Cv = Told(instance.Lots[lot], scenario, lot) ? r.Cv : null,
                };
            })],
            Samples = [],
            Orders = [.. season.Orders.Select(o => o with { Units = orders[(o.Order, o.Number)] }).Where(o => o.Units > 0)],
            Market = [.. season.Market.Select(m => market.TryGetValue((m.Product, m.Week), out int units) ? m with { P50 = units, P10 = null, P90 = null } : m)],
            LineWeeks =
            [
                .. from i in Enumerable.Range(0, instance.Lines.Length)
                   from t in Enumerable.Range(0, instance.Weeks)
                   let line = season.Lines[i]
                   let written = season.LineWeeks.FirstOrDefault(w => w.Line == line.Id && w.Week == t)
                   where scenario.HoursLost[i][t] > 0 || written is not null
                   let hours = written?.Hours ?? line.HoursPerWeek
                   select new LineWeek(line.Id, t, hours * (1 - scenario.HoursLost[i][t]), written?.OvertimeOf(line) ?? line.OvertimeHours),
            ],
        };
    }

    /// <summary>The law with each lot's true clock.</summary>
    public static Beliefs Beliefs(PlanningInstance instance, Scenario scenario, Beliefs believed) => believed with
    {
        Clocks = instance.Rows.ToDictionary(
            r => (instance.Lots[r.Lot].Id, instance.Places[r.Place].Id),
            r => new SeenClock(scenario.LossPower[r.Lot], scenario.LifeFactor[r.Lot], scenario.LifeFactor[r.Lot], r.LifeAtStart, 1, null)),
    };

    private static bool Told(InstanceLot lot, Scenario scenario, int l) =>
        lot.Known.Sources is { Mean: Lots.KnownBy.Given, Spread: Lots.KnownBy.Given } && double.IsFinite(scenario.MeanShift[l]);
}
