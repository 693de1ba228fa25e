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
        var random = new Random(1);
        var answers = new List<(double Seconds, double Gap, string Kind)>();
        for (int k = 0; k < count; k++)
        {
            SeasonChange change = Drawn(season, random, k);
            var began = Stopwatch.StartNew();
            if (standing.Suppose([change]).Answer is not { } told) continue;
            answers.Add((began.Elapsed.TotalSeconds, (told.Bound - told.Value) / Math.Abs(told.Value), change.GetType().Name));
        }

        double[] seconds = [.. answers.Select(a => a.Seconds).Order()], gaps = [.. answers.Select(a => a.Gap).Order()];
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{season.Lots.Count} lot rows, {season.Orders.Count} order lines; from scratch {scratch:0.0} s to a gap of {standing.Gap:0.00000}; {answers.Count} changes answered: median {seconds[seconds.Length / 2]:0.00} s (ratio {scratch / seconds[seconds.Length / 2]:0}), worst {seconds[^1]:0.00} s; gap median {gaps[gaps.Length / 2]:0.00000}, worst {gaps[^1]:0.00000}"));
        foreach (var kind in answers.GroupBy(a => a.Kind))
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {kind.Key}: {kind.Count()}, median {kind.Select(a => a.Seconds).Order().ElementAt(kind.Count() / 2):0.00} s"));
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
}
