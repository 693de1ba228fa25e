using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Seasons.Tests.Planning;
using CsCheck;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>
/// What every plan keeps, whatever its season: no pound of a row is lost, doubled or made, units of an order are shipped or short,
/// and no place, line, person or week gives more than it has. Read from the answer alone.
/// </summary>
public sealed class PlannedMassTests
{
    [Fact]
    public void A_plan_keeps_every_pound_every_unit_and_every_limit() =>
        Gen.ULong.Sample(seed =>
        {
            Season season = SmallSeasons.Draw(seed, 12, 10, Enum.GetValues<PlaceMix>());
            PlanAnswer plan = Planner.Need().Plan(season, new(3, 1e-3));
            Pounds(season, plan);
            Units(season, plan);
            Limits(season, plan);
        }, iter: 25, threads: 1);

    /// <summary>What leaves a path in a week, as weighed and at the start.</summary>
    private sealed record Gone(int Week, PlaceId? Place, double Mass, double Start);

    private static void Pounds(Season season, PlanAnswer plan)
    {
        int weeks = season.Settings.Weeks;
        var along = plan.Paths.ToLookup(p => p.Path);
        var start = new Dictionary<string, double>();
        foreach (var path in along)
        {
            PathWeek[] states = [.. path.OrderBy(p => p.Week)];
            Gone[] outs =
            [
                .. plan.Runs.Where(r => r.Path == path.Key).Select(r => new Gone(r.Week, r.Place, r.MassIn, r.MassAtStart)),
                .. plan.AsIs.Where(a => a.Path == path.Key).Select(a => new Gone(a.Week, a.Place, a.Mass, a.MassAtStart)),
            ];
            var kept = plan.Keeps.Where(k => k.Path == path.Key).ToDictionary(k => k.Week);
            double all = outs.Sum(o => o.Start) + (kept.TryGetValue(weeks - 1, out KeepRow? last) ? last.MassAtStart : 0);
            start[path.Key] = all;
            // Its states follow each other to the end of the season; it never gains weight, nor any sound share.
            Assert.Equal(Enumerable.Range(states[0].Week, weeks + 1 - states[0].Week), states.Select(s => s.Week));
            Assert.Equal(1, states[0].MassRatio);
            Assert.All(states.Zip(states.Skip(1)), s => Assert.True(s.Second.MassRatio <= s.First.MassRatio * (1 - 0.0005) && s.Second.FreshShare <= s.First.FreshShare && s.Second.CrackShare <= s.First.CrackShare));
            foreach (PathWeek s in states.SkipLast(1))
            {
                foreach (Gone o in outs.Where(o => o.Week == s.Week))
                {
                    Assert.Equal(s.Place, o.Place);
                    Near(o.Start * s.MassRatio, o.Mass, all);
                }
                Near(all - outs.Where(o => o.Week <= s.Week).Sum(o => o.Start), kept.TryGetValue(s.Week, out KeepRow? k) ? k.MassAtStart : 0, all);
                if (k is not null) Assert.Equal(s.Place, k.Place);
            }
        }
        var rowOf = plan.Paths.DistinctBy(p => p.Path).ToLookup(p => (p.Lot, p.FromPlace), p => p.Path);
        foreach (LotRow row in season.Lots.Where(r => OddSeasons.StartWeek(season.Settings, r) < weeks && r.Net > 0))
            Assert.Equal(row.Net, rowOf[(row.Lot, row.Place)].Sum(path => start[path]), 1e-9 * row.Net);
    }

    private static void Units(Season season, PlanAnswer plan)
    {
        var filled = plan.Fills.GroupBy(f => (f.Order, f.Line)).ToDictionary(g => g.Key, g => g.Sum(f => f.Units));
        var shorts = plan.Shorts.ToDictionary(s => (s.Order, s.Line), s => s.Units);
        foreach (OrderLine o in season.Orders)
            Assert.Equal(o.Units, filled.GetValueOrDefault((o.Order, o.Number)) + shorts.GetValueOrDefault((o.Order, o.Number)));
        foreach (var order in season.Orders.GroupBy(o => o.Order).Where(g => g.Any(o => o.Whole)))
            Assert.True(order.All(o => filled.GetValueOrDefault((o.Order, o.Number)) == o.Units && plan.Fills.Where(f => f.Order == o.Order).Select(f => f.Week).Distinct().Count() == 1)
                || order.All(o => filled.GetValueOrDefault((o.Order, o.Number)) == 0));
        // What is shipped of a product by the end of any week was in stock or made by then, and all that is made is shipped.
        foreach (Product p in season.Products)
        {
            double stock = season.Stock.Where(s => s.Product == p.Id).Sum(s => s.Units);
            double Shipped(int week) => plan.Fills.Where(f => f.Product == p.Id && f.Week <= week).Sum(f => (double)f.Units) + plan.Sales.Where(s => s.Product == p.Id && s.Week <= week).Sum(s => (double)s.Units);
            double Made(int week) => plan.Made.Where(m => m.Product == p.Id && m.Week <= week).Sum(m => m.Units);
            for (int t = 0; t < season.Settings.Weeks; t++) Assert.True(Shipped(t) <= stock + Made(t) + 1e-6 * (1 + Shipped(t)));
            Assert.True(Made(season.Settings.Weeks) <= Shipped(season.Settings.Weeks) * (1 + 1e-6) + 1e-6);
        }
    }

    private static void Limits(Season season, PlanAnswer plan)
    {
        foreach (var standing in plan.Keeps.GroupBy(k => (k.Place, k.Week)))
            Within(standing.Sum(k => k.Bins), season.Places.Single(p => p.Id == standing.Key.Place).CapacityBins);
        foreach (var runs in plan.Runs.GroupBy(r => (r.Line, r.Week)))
        {
            Line line = season.Lines.Single(l => l.Id == runs.Key.Line);
            LineWeek? week = season.LineWeeks.SingleOrDefault(w => w.Line == line.Id && w.Week == runs.Key.Week);
            double hours = week?.Hours ?? line.HoursPerWeek, overtime = week is null ? line.OvertimeHours : week.OvertimeHours ?? (week.Hours == 0 ? 0 : line.OvertimeHours);
            Within(runs.Sum(r => r.Hours), hours);
            Within(runs.Sum(r => r.OvertimeHours), overtime);
            double setUps = line.SetupHours * runs.Select(r => r.FromSorted ? "" : r.Lot.Text).Distinct().Count();
            Near(setUps + runs.Sum(r => r.MassIn) / line.RatePerHour, runs.Sum(r => r.Hours + r.OvertimeHours), hours + overtime);
        }
        foreach (PeopleWeek people in season.People)
            Within(plan.Runs.Where(r => r.Week == people.Week).Sum(r => (r.Hours + r.OvertimeHours) * season.Lines.Single(l => l.Id == r.Line).Heads), people.Hours);
    }

    private static void Near(double expected, double found, double of) => Assert.Equal(expected, found, 1e-7 * (1 + of));

    private static void Within(double found, double most) => Assert.True(found <= most * (1 + 1e-6) + 1e-6, $"{found} of {most}");
}
