using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;
using Cloveshed.Core.Tests.Shift;
using Cloveshed.Solver.Shift;

namespace Cloveshed.Solver.Tests.Shift;

/// <summary>
/// The scheduler against every order of small weeks, and against a published round trip. An order of all runs, each put as early as it can
/// be, is enough: see <see cref="ShiftTiming"/>, whose claim is tested here as well.
/// </summary>
public class CpShiftSchedulerTests
{
    private static readonly ShiftSearch Search = new(60, Seed: 1, Threads: 1, Effort: 20);

    /// <summary>Rounding of the model: parts of units and of money, beside six hundredths of money.</summary>
    private const double Rounding = 2e-3;

    public static TheoryData<int> Weeks => [.. Enumerable.Range(1, 8)];

    [Theory, MemberData(nameof(Weeks))]
    public void It_finds_the_best_of_all_orders_and_its_bounds_do_not_pass_them(int seed)
    {
        ShiftQuestion question = Drawn(seed);
        ShiftTiming timing = new(question);
        ShiftCosts[] all = [.. Orders([.. question.Runs]).Select(order => timing.InOrder(order)).Where(schedule => ShiftCheck.Breaches(question, schedule).Count == 0)
            .Select(schedule => ShiftCosts.Of(question, timing, schedule))];
        double first = all.Min(costs => costs.First), change = all.Where(costs => costs.First <= first + 0.01).Min(costs => costs.Changeover);

        ShiftAnswer answer = new CpShiftScheduler().Schedule(question, Search);

        Assert.Equal(ShiftStatus.Proven, answer.Status);
        Assert.Empty(ShiftCheck.Breaches(question, answer.Schedule, answer.Costs));
        Near(first, answer.Costs.First);
        Assert.InRange(answer.FirstBound, 0, answer.Costs.First + 1e-6);
        Near(answer.Costs.First, answer.FirstBound);
        Near(change, answer.Costs.Changeover);
        Assert.InRange(answer.ChangeoverBound, 0, answer.Costs.Changeover + 1e-3);
        Assert.True(answer.Costs.First <= answer.Greedy.First + 0.01);
    }

    /// <summary>
    /// TSPLIB's br17 (17 places, asymmetric; G. Reinelt, ORSA Journal on Computing 3, 1991): the shortest round trip is 39. Here places are
    /// varieties on one line; the first comes again at the end, so that the trip is the week's changeover.
    /// </summary>
    [Fact]
    public void The_published_shortest_round_trip_is_the_least_changeover()
    {
        const int Places = 17;
        int[][] way = [.. Br17.Split('\n').Select(row => row.Split(' ').Select(int.Parse).ToArray())];
        string Name(int place) => $"V{place % Places}";
        ShiftRun[] runs = [.. Enumerable.Range(0, Places + 1).Select(at => HandWeek.Run($"R{at:00}", HandWeek.PackOne, 10, Name(at)) with
        {
            NotBefore = at == 0 ? [] : at == Places ? [.. Enumerable.Range(0, Places).Select(other => $"R{other:00}")] : ["R00"],
        })];
        ShiftQuestion question = HandWeek.Of(runs) with
        {
            Setups = [.. from one in Enumerable.Range(0, Places) from other in Enumerable.Range(0, Places) where one != other select new SetupRow(SetupKind.Variety, null, Name(one), Name(other), way[one][other], 0, null)],
        };

        ShiftAnswer answer = new CpShiftScheduler().Schedule(question, Search with { Effort = 60 });

        Assert.Empty(ShiftCheck.Breaches(question, answer.Schedule, answer.Costs));
        Assert.Equal(39, answer.Costs.Changeover, 6);
        Assert.Equal(39, answer.ChangeoverBound, 3);
    }

    [Fact]
    public void A_week_that_does_not_fit_is_run_over_at_its_price_and_not_refused()
    {
        ShiftRun[] runs = [.. Enumerable.Range(0, 4).Select(at => HandWeek.Run($"R{at}", HandWeek.PackOne, 700))];
        ShiftQuestion question = HandWeek.Of(runs);

        ShiftAnswer answer = new CpShiftScheduler().Schedule(question, Search);

        // 5 days of 450 minutes; 5 minutes for bins before the first run and before each other: 2,250 - 20 are left of 2,800, at 10 a minute.
        Assert.Equal((2800 - 2250 + 20, 5700.0), (answer.Costs.OverrunMinutes, answer.Costs.Overrun));
        Assert.Empty(ShiftCheck.Breaches(question, answer.Schedule, answer.Costs));
    }

    [Fact]
    public void A_line_that_never_has_its_people_runs_after_the_week()
    {
        ShiftRun run = HandWeek.Run("R1", HandWeek.PackOne, 60);
        ShiftQuestion question = HandWeek.Of(run) with { Shifts = [.. HandWeek.Shifts.Select(row => row.Kind == ShiftKind.Work ? row with { Heads = 11 } : row)] };
        Assert.Equal(60, new CpShiftScheduler().Schedule(question, Search).Costs.OverrunMinutes);
    }

    [Fact]
    public void The_same_seed_gives_the_same_week()
    {
        ShiftQuestion question = Drawn(3);
        Assert.Equal(new CpShiftScheduler().Schedule(question, Search).Schedule.Runs, new CpShiftScheduler().Schedule(question, Search).Schedule.Runs);
    }

    [Fact]
    public void A_week_without_runs_and_one_that_is_stopped_have_an_answer_too()
    {
        Assert.Empty(new CpShiftScheduler().Schedule(HandWeek.Of(), Search).Schedule.Runs);
        using CancellationTokenSource stopped = new();
        stopped.Cancel();
        ShiftQuestion question = Drawn(4);
        ShiftAnswer answer = new CpShiftScheduler().Schedule(question, Search with { Cancel = stopped.Token });
        Assert.Equal(ShiftStatus.Cancelled, answer.Status);
        Assert.Empty(ShiftCheck.Breaches(question, answer.Schedule, answer.Costs));
    }

    /// <summary>No schedule, however it was made, is ahead of the same order put as early as it can be.</summary>
    [Theory, MemberData(nameof(Weeks))]
    public void Put_forward_no_run_ends_later(int seed)
    {
        ShiftQuestion question = Drawn(seed);
        ShiftTiming timing = new(question);
        Random random = new(seed);
        ShiftSchedule one = timing.InOrder(question.Runs.OrderBy(run => run.NotBefore.Count).ThenBy(_ => random.Next()));
        // The same, each line begun a day later, where that still holds.
        ShiftSchedule late = new([.. one.Runs.Select(run => run with { Start = run.Start + 1440, End = run.End + 1440 })]);
        ShiftSchedule from = ShiftCheck.Breaches(question, late).Count == 0 ? late : one;
        Dictionary<string, int> ends = timing.Forward(from).Runs.ToDictionary(run => run.Run, run => run.End);
        Assert.All(from.Runs, run => Assert.True(ends[run.Run] <= run.End));
    }

    private static void Near(double expected, double found) => Assert.True(Math.Abs(expected - found) <= 0.06 + (Rounding * Math.Abs(expected)), $"expected {expected}, found {found}");

    /// <summary>Five runs of three lines, some short of people, some with sorted-out bulbs, with docks on three days.</summary>
    private static ShiftQuestion Drawn(int seed)
    {
        Random random = new(seed);
        LineId[] lines = [HandWeek.PackOne, HandWeek.PackTwo, HandWeek.PackOne, HandWeek.Cracker, HandWeek.Cracker];
        ShiftRun[] runs = [.. lines.Select((line, at) => HandWeek.Run(
            $"R{at}", line, random.Next(60, 1100), random.Next(2) == 0 ? "Pale" : "Sorrel", random.Next(3) == 0, random.Next(2) == 0 ? "JU" : "GI", random.Next(3) == 0 ? "Far room" : "Yard",
            random.Next(2) == 0 ? HandWeek.Jumbo : HandWeek.Giant, random.Next(20, 200), at == 4 && random.Next(2) == 0 ? ["R0"] : []))];
        int heads = random.Next(3) switch { 0 => 30, 1 => 22, _ => 18 };
        DockNeed[] needs = [.. new[] { HandWeek.Jumbo, HandWeek.Giant }.SelectMany(product =>
            Enumerable.Range(0, 3).Select(day => HandWeek.Need(product, (day * 1440) + 840, random.Next(10, 80) * (day + 1), random.Next(1, 9) / 7.0)))];
        return HandWeek.Of(runs) with
        {
            Needs = needs, Shifts = [.. HandWeek.Shifts.Select(row => row.Kind == ShiftKind.Work ? row with { Heads = heads } : row)],
        };
    }

    private static IEnumerable<ShiftRun[]> Orders(ShiftRun[] runs) =>
        runs.Length <= 1 ? [runs] : runs.SelectMany(first => Orders([.. runs.Where(run => run != first)]).Select(rest => (ShiftRun[])[first, .. rest]));

    private const string Br17 = """
        9999 3 5 48 48 8 8 5 5 3 3 0 3 5 8 8 5
        3 9999 3 48 48 8 8 5 5 0 0 3 0 3 8 8 5
        5 3 9999 72 72 48 48 24 24 3 3 5 3 0 48 48 24
        48 48 74 9999 0 6 6 12 12 48 48 48 48 74 6 6 12
        48 48 74 0 9999 6 6 12 12 48 48 48 48 74 6 6 12
        8 8 50 6 6 9999 0 8 8 8 8 8 8 50 0 0 8
        8 8 50 6 6 0 9999 8 8 8 8 8 8 50 0 0 8
        5 5 26 12 12 8 8 9999 0 5 5 5 5 26 8 8 0
        5 5 26 12 12 8 8 0 9999 5 5 5 5 26 8 8 0
        3 0 3 48 48 8 8 5 5 9999 0 3 0 3 8 8 5
        3 0 3 48 48 8 8 5 5 0 9999 3 0 3 8 8 5
        0 3 5 48 48 8 8 5 5 3 3 9999 3 5 8 8 5
        3 0 3 48 48 8 8 5 5 0 0 3 9999 3 8 8 5
        5 3 0 72 72 48 48 24 24 3 3 5 3 9999 48 48 24
        8 8 50 6 6 0 0 8 8 8 8 8 8 50 9999 0 8
        8 8 50 6 6 0 0 8 8 8 8 8 8 50 0 9999 8
        5 5 26 12 12 8 8 0 0 5 5 5 5 26 8 8 9999
        """;
}
