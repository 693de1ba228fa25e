using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>
/// One season in the middle of many that were drawn, those in which a plan fares worse counting for more: what lots hold, how they keep, what
/// is ordered and sold, and the hours that stoppages leave. A plan made of it means to stand in the seasons that hurt. Size classes and days
/// of digging stay as written: no file can say a class share of a lot that was sampled, and a mean of whole weeks is mostly none.
/// </summary>
public static class WeightedSeason
{
    /// <summary>[scenario] weights that sum to 1: the worst of so many counts so many times the best, and the others evenly between. Our choice.</summary>
    public static double[] Weights(IReadOnlyList<ReplayOutcome> outcomes)
    {
        int count = outcomes.Count;
        double[] weights = new double[count];
        foreach ((int rank, int i) in Enumerable.Range(0, count).OrderBy(i => outcomes[i].Value).Index()) weights[i] = 2.0 * (count - rank) / (count * (count + 1.0));
        return weights;
    }

    /// <param name="scenarios">At least one, drawn for the instance.</param>
    /// <param name="weights">[scenario] sum 1.</param>
    public static CautiousSeason Of(PlanningInstance instance, IReadOnlyList<Scenario> scenarios, IReadOnlyList<double> weights, Beliefs beliefs)
    {
        if (scenarios.Count == 0 || scenarios.Count != weights.Count) throw new ArgumentException("There is a weight for each scenario, and one at least.", nameof(weights));
        double Mean(Func<Scenario, double> figure) => scenarios.Zip(weights, (s, w) => w * figure(s)).Sum();
        Season season = instance.Season;
        var rows = instance.Rows.Index().ToDictionary(r => (instance.Lots[r.Item.Lot].Id, instance.Places[r.Item.Place].Id), r => r.Index);
        var orders = instance.OrderLines.Index().ToDictionary(o => (o.Item.Line.Order, o.Item.Line.Number), o => o.Index);
        var market = instance.Market.Index().ToDictionary(m => (instance.Products[m.Item.Product].Id, m.Item.Week), m => m.Index);
        Season middle = season with
        {
            Lots = [.. season.Lots.Select(r =>
            {
                if (r.State == LotState.Weighed || !rows.TryGetValue((r.Lot, r.Place), out int row)) return r;
                double factor = Mean(s => s.NetFactor[instance.Rows[row].Lot]);
                return r with { Net = r.Net * factor, Bins = r.Bins * Mean(s => s.BinsFactor[row]), NetLow = r.NetLow * factor, NetHigh = r.NetHigh * factor };
            })],
            Orders = [.. season.Orders.Select(o => orders.TryGetValue((o.Order, o.Number), out int i) ? o with { Units = Math.Max(1, (int)Math.Round(Mean(s => s.OrderUnits[i]))) } : o)],
            Market = [.. season.Market.Select(m => market.TryGetValue((m.Product, m.Week), out int i) ? m with { P50 = Mean(s => s.MarketUnits[i]), P10 = null, P90 = null } : m)],
            LineWeeks =
            [
                .. from i in Enumerable.Range(0, instance.Lines.Length)
                   from t in Enumerable.Range(0, instance.Weeks)
                   let line = season.Lines[i]
                   let written = season.LineWeeks.FirstOrDefault(w => w.Line == line.Id && w.Week == t)
                   let lost = Mean(s => s.HoursLost[i][t])
                   where lost > 0 || written is not null
                   select new LineWeek(line.Id, t, (written?.Hours ?? line.HoursPerWeek) * (1 - lost), written?.OvertimeOf(line) ?? line.OvertimeHours),
            ],
        };
        return new("weighted", middle, beliefs with
        {
            Clocks = instance.Rows.ToDictionary(
                r => (instance.Lots[r.Lot].Id, instance.Places[r.Place].Id),
                r => new SeenClock(Mean(s => s.LossPower[r.Lot]), Mean(s => s.LifeFactor[r.Lot]), Mean(s => s.LifeFactor[r.Lot]), r.LifeAtStart, 1, null)),
        });
    }
}
