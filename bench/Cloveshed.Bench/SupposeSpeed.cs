using System.Diagnostics;
using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Bench;

/// <summary>Changes put to a standing plan, one after another: time to an answer with its bound, beside the time that the model takes from scratch.</summary>
internal static class SupposeSpeed
{
    public static void Run(string folder, string plan, int count)
    {
        Season season = SeasonReader.Read(folder).Season ?? throw new ArgumentException($"{folder} does not hold a sound season.");
        var rooms = AnswerReader.Read(plan, season).Answer?.Rooms ?? throw new ArgumentException($"{plan} does not hold a plan of it.");
        var clock = Stopwatch.StartNew();
        using StandingPlan standing = StandingPlan.Prepare(
            new StandingRequest(season, Beliefs.Default, RunWishes.None, rooms, 1e6, SearchDepth.Fine, 2, () => clock.Elapsed.TotalSeconds, GapWanted: 1e-4), new HighsSolver());
        double scratch = clock.Elapsed.TotalSeconds;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{season.Lots.Count} lot rows, {season.Orders.Count} order lines; from scratch {scratch:0.0} s to a gap of {standing.Gap:0.00000}"));
        var random = new Random(1);
        Told("limits and orders", Enumerable.Range(0, count).Select(k => Drawn(season, random, k)), standing);
        Told("lots, runs and orders that come in", Enumerable.Range(0, count / 2).Select(k => OfLots(season, random, k)), standing);
        var asked = new List<Took>();
        foreach (PromiseQuestion question in Enumerable.Range(0, count).Select(_ => Asked(season, random)))
        {
            var began = Took.Begin();
            if (standing.Ask(question) is { } answer) asked.Add(began.Until(answer.Verdict.ToString()));
        }
        Console.WriteLine($"promises: {Took.Spread(asked)}");
    }

    /// <summary>Wall clock and processor time of something, seconds, and what it was.</summary>
    private sealed record Took(double Seconds, double Processor, string What)
    {
        internal static Took Begin() => new(Stopwatch.GetTimestamp() / (double)Stopwatch.Frequency, Environment.CpuUsage.TotalTime.TotalSeconds, "");

        internal Took Until(string what)
        {
            Took now = Begin();
            return new Took(now.Seconds - Seconds, now.Processor - Processor, what);
        }

        internal static string Spread(IReadOnlyCollection<Took> all)
        {
            double[] seconds = [.. all.Select(one => one.Seconds).Order()], processor = [.. all.Select(one => one.Processor).Order()];
            return all.Count == 0 ? "none" : string.Create(CultureInfo.InvariantCulture, $"{all.Count}, median {seconds[all.Count / 2]:0.00} s, worst {seconds[^1]:0.00} s; of the processor {processor[all.Count / 2]:0.00} and {processor[^1]:0.00} s");
        }
    }

    private static void Told(string kind, IEnumerable<SeasonChange> changes, StandingPlan standing)
    {
        List<Took> first = [], whole = [];
        List<double> gaps = [], runs = [];
        foreach (SeasonChange change in changes)
        {
            Took began = Took.Begin(), known = began;
            if (standing.Suppose([change], first: _ => known = began.Until(change.GetType().Name)).Answer is not { } told) continue;
            first.Add(known);
            whole.Add(began.Until(change.GetType().Name));
            gaps.Add((told.Bound - told.Value) / Math.Abs(told.Value));
            runs.Add(told.Runs.Count);
        }
        if (first.Count == 0) return;
        gaps.Sort();
        runs.Sort();
        Console.WriteLine($"{kind}, value and bound: {Took.Spread(first)}");
        Console.WriteLine($"{kind}, with what moves: {Took.Spread(whole)}");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  gap median {gaps[gaps.Count / 2]:0.00000}, worst {gaps[^1]:0.00000}; runs that move median {runs[runs.Count / 2]}, most {runs[^1]}"));
        foreach (var one in first.Zip(whole).GroupBy(a => a.First.What))
            Console.WriteLine($"  {one.Key}: {Took.Spread([.. one.Select(a => a.First)])}; with what moves {Took.Spread([.. one.Select(a => a.Second)])}");
    }

    private static SeasonChange Drawn(Season season, Random random, int turn)
    {
        OrderLine line = season.Orders[random.Next(season.Orders.Count)];
        int first = season.Settings.AsOfWeek, week = first + random.Next(season.Settings.Weeks - first);
        return (turn % 4) switch
        {
            0 => new SeasonChange.OrderCancelled(line.Order, null),
            1 => new SeasonChange.OrderResized(line.Order, line.Number, Math.Max(1, (int)(line.Units * (0.5 + 1.5 * random.NextDouble())))),
            2 => new SeasonChange.OrderMoved(line.Order, line.Number, season.Settings.Monday(Math.Min(season.Settings.Weeks - 1, Math.Max(first, season.Settings.WeekOf(line.Due)) + random.Next(4)))),
            _ => new SeasonChange.LineStopped(season.Lines[random.Next(season.Lines.Count)].Id, season.Settings.Monday(week), season.Settings.Monday(week)),
        };
    }

    private static SeasonChange OfLots(Season season, Random random, int turn)
    {
        LotRow[] lots = [.. season.Lots.Where(row => row.Net > 0 && season.Settings.StartWeekOf(row) < season.Settings.Weeks)], here = [.. lots.Where(row => season.Settings.StartWeekOf(row) == season.Settings.AsOfWeek && !row.Hold)];
        LotRow lot = lots[random.Next(lots.Length)], run = here.Length > 0 ? here[random.Next(here.Length)] : lot;
        OrderLine line = season.Orders[random.Next(season.Orders.Count)];
        return (turn % 5) switch
        {
            0 => new SeasonChange.LotWeighsLess(lot.Lot, 0.05 + 0.3 * random.NextDouble()),
            1 => new SeasonChange.LotKeepsLess(lot.Lot, 1 + random.Next(4)),
            2 => new SeasonChange.LotDugLater(lot.Lot, 1 + random.Next(3)),
            3 => SeasonChange.OrderAdded.Of(line.Product, line.Units, line.Price, line.Due),
            _ => new SeasonChange.RunDone(run.Lot, season.Lines[random.Next(season.Lines.Count)].Id, 0.2 * run.Net, random.Next(2) == 0),
        };
    }

    private static PromiseQuestion Asked(Season season, Random random)
    {
        OrderLine like = season.Orders[random.Next(season.Orders.Count)];
        int first = season.Settings.AsOfWeek, week = first + random.Next(season.Settings.Weeks - first);
        return new PromiseQuestion([new PromiseLine(like.Product, Math.Max(1, (int)(like.Units * (0.5 + 1.5 * random.NextDouble()))), like.Price, false)], season.Settings.Monday(first), season.Settings.Monday(week));
    }
}
