using System.Globalization;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;
using Cloveshed.SeasonFiles;
using Cloveshed.Solver.Shift;

namespace Cloveshed.Bench;

/// <summary>
/// Every week of a plan put in order, beside the greedy sequence of the same week. To take, for the week with most runs: a proven or stated
/// gap within the seconds given. The answer to a hand that drags (times and check of an order) is timed too: to take under 100 ms.
/// </summary>
internal static class WeekOrder
{
    public static void Run(string season, string plan, double seconds, int threads)
    {
        Season read = SeasonReader.Read(season).Season ?? throw new InvalidOperationException($"{season} has faults.");
        PlanAnswer answer = AnswerReader.Read(plan, read).Answer ?? throw new InvalidOperationException($"{plan} has faults.");
        Console.WriteLine("| week | runs | late and overrun: greedy | found | gap | changeover: greedy | found | gap | status | s | check ms |");
        Console.WriteLine("| --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- | ---: | ---: |");
        foreach (int week in answer.Runs.Select(run => run.Week).Distinct().Order())
        {
            ShiftQuestion question = ShiftForming.Of(read, answer, week);
            ShiftAnswer found = new CpShiftScheduler().Schedule(question, new ShiftSearch(seconds, Threads: threads));
            if (ShiftCheck.Breaches(question, found.Schedule, found.Costs) is [var breach, ..])
            {
                throw new InvalidOperationException($"Week {week}: {breach}");
            }

            Console.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"| {read.Settings.Monday(week):uuuu-MM-dd} | {question.Runs.Count} | {found.Greedy.First:0.00} | {found.Costs.First:0.00} | {found.FirstGap:0.0%} | {found.Greedy.Changeover:0} | {found.Costs.Changeover:0} | {found.ChangeoverGap:0.0%} | {found.Status} | {found.Seconds:0.0} | {Answered(question, found.Schedule):0.0} |"));
        }
    }

    /// <summary>Milliseconds from a week's question to the times and the check of an order; the best of five, since the first compiles.</summary>
    private static double Answered(ShiftQuestion question, ShiftSchedule schedule)
    {
        double best = double.MaxValue;
        for (int turn = 0; turn < 5; turn++)
        {
            long from = System.Diagnostics.Stopwatch.GetTimestamp();
            ShiftTiming timing = new(question);
            ShiftSchedule again = timing.Forward(schedule);
            ShiftCosts costs = ShiftCosts.Of(question, timing, again);
            _ = ShiftCheck.Breaches(question, again, costs);
            best = Math.Min(best, System.Diagnostics.Stopwatch.GetElapsedTime(from).TotalMilliseconds);
        }

        return best;
    }
}
