using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;

namespace Cloveshed.Core.Tests.Shift;

/// <summary>A schedule that holds, and one for each rule that is that schedule with one thing wrong.</summary>
public class ShiftCheckTests
{
    private static readonly ShiftRun
        First = HandWeek.Run("R1", HandWeek.PackOne, 165), Second = HandWeek.Run("R2", HandWeek.PackOne, 100, variety: "Sorrel", product: HandWeek.Jumbo, units: 50),
        Organic = HandWeek.Run("R3", HandWeek.PackOne, 60, variety: "Sorrel", organic: true), Crack = HandWeek.Run("R4", HandWeek.Cracker, 60, variety: "Sorrel", notBefore: "R2"),
        Far = HandWeek.Run("R5", HandWeek.PackTwo, 120, place: "Far room");

    private static readonly ShiftQuestion Question = HandWeek.Of(First, Second, Organic, Crack, Far);

    private static readonly PlacedRun[] Sound =
    [
        // The line is clean at 06:15 and the yard is 5 minutes away. R1 stops from 09:00 to 09:15.
        HandWeek.At(First, 0, 6, 20, 180),
        // Change of variety to Sorrel: 20 minutes.
        HandWeek.At(Second, 0, 9, 40, 100),
        // Clean-out of 60 minutes: 11:20 to 12:00 and 12:30 to 12:50.
        HandWeek.At(Organic, 0, 12, 50, 60),
        HandWeek.At(Crack, 0, 10, 40, 60), HandWeek.At(Far, 0, 7, 0, 120),
    ];

    public static TheoryData<string, ShiftRule, double, double> Mutations => new()
    {
        { "missing", ShiftRule.EachOnce, 0, 1 }, { "twice", ShiftRule.EachOnce, 2, 1 }, { "unknown", ShiftRule.EachOnce, 1, 0 }, { "other line", ShiftRule.OwnLine, 0, 0 },
        { "before the shift", ShiftRule.InShift, 350, 375 }, { "in the break", ShiftRule.NotInBreak, 545, 555 }, { "in maintenance", ShiftRule.NotInMaintenance, 1440 + 400, 1440 + 495 },
        { "before cleaning", ShiftRule.Cleaned, 365, 375 }, { "too short", ShiftRule.Length, 90, 100 }, { "too long", ShiftRule.Length, 110, 100 },
        { "overlap", ShiftRule.OneAtATime, (9 * 60) + 30, (9 * 60) + 35 }, { "set-up", ShiftRule.SetUp, 15, 20 }, { "clean-out", ShiftRule.CleanOut, 45, 60 }, { "bins", ShiftRule.Bins, 40, 45 },
        { "sorted begins", ShiftRule.SortedFirst, (9 * 60) + 35, (9 * 60) + 40 }, { "sorted ends", ShiftRule.SortedFirst, (11 * 60) + 15, (11 * 60) + 20 }, { "heads", ShiftRule.Heads, 30, 25 },
        { "late told less", ShiftRule.Costs, 0, 40 }, { "overrun told less", ShiftRule.Costs, 0, 600 }, { "changeover told less", ShiftRule.Costs, 0, 185 },
    };

    [Fact]
    public void A_schedule_that_keeps_every_rule_has_no_breach() => Assert.Empty(ShiftCheck.Breaches(Question, new ShiftSchedule(Sound)));

    [Theory, MemberData(nameof(Mutations))]
    public void Each_rule_is_seen_to_fail_with_what_was_found_and_what_is_allowed(string name, ShiftRule rule, double found, double allowed)
    {
        (ShiftQuestion question, PlacedRun[] placed, ShiftCosts? told) = Mutated(name);

        IReadOnlyList<ShiftBreach> breaches = ShiftCheck.Breaches(question, new ShiftSchedule(placed), told);

        Assert.Contains(breaches, breach => breach.Rule == rule && Math.Abs(breach.Found - found) < 1e-9 && Math.Abs(breach.Allowed - allowed) < 1e-9);
        Assert.All(breaches, breach => Assert.True(breach.Rule == ShiftRule.OwnLine || breach.By > 0));
    }

    [Fact]
    public void Costs_that_are_told_rightly_hold()
    {
        ShiftQuestion question = Question with { Needs = [HandWeek.Need(HandWeek.Jumbo, (10 * 60) + 0, 50)] };
        ShiftSchedule schedule = new(Sound);
        ShiftCosts costs = ShiftCosts.Of(question, new ShiftTiming(question), schedule);
        // 20 of its 100 minutes are over at 10:00: 40 of 50 units are short. Set-ups: 5 and 20 minutes at 1 a minute; 100 and 60 minutes.
        Assert.Equal((40, 0, 185), (costs.Late, costs.Overrun, costs.Changeover));
        Assert.Equal((80, 1), (costs.SetupMinutes, costs.CleanOuts));
        Assert.Empty(ShiftCheck.Breaches(question, schedule, costs));
    }

    private static (ShiftQuestion, PlacedRun[], ShiftCosts?) Mutated(string name)
    {
        ShiftQuestion fewer = Question with { Shifts = [.. HandWeek.Shifts.Select(row => row.Kind == ShiftKind.Work ? row with { Heads = 25 } : row)] };
        ShiftQuestion dock = Question with { Needs = [HandWeek.Need(HandWeek.Jumbo, 10 * 60, 50)] };
        PlacedRun[] over = Replaced(3, new PlacedRun("R4", HandWeek.Cracker, ShiftQuestion.WeekMinutes, ShiftQuestion.WeekMinutes + 60));
        return name switch
        {
            "missing" => (Question, Sound[..4], null),
            "twice" => (Question, [.. Sound, Sound[4]], null),
            "unknown" => (Question, [.. Sound, new PlacedRun("R9", HandWeek.PackTwo, 5000, 5001)], null),
            "other line" => (Question, Replaced(4, Sound[4] with { Line = HandWeek.PackOne, Start = 4000, End = 4120 }), null),
            "before the shift" => (Question, Replaced(4, Sound[4] with { Start = 350 }), null),
            "in the break" => (Question, Replaced(1, Sound[1] with { Start = 545 }), null),
            "in maintenance" => (Question, Replaced(4, new PlacedRun("R5", HandWeek.PackTwo, 1440 + 400, 1440 + 615)), null),
            "before cleaning" => (Question, Replaced(0, Sound[0] with { Start = 365 }), null),
            "too short" => (Question, Replaced(1, Sound[1] with { End = Sound[1].End - 10 }), null),
            "too long" => (Question, Replaced(1, Sound[1] with { End = Sound[1].End + 10 }), null),
            "overlap" => (Question, [Sound[0] with { End = Sound[0].End + 15 }, Sound[1] with { Start = Sound[1].Start - 10 }, .. Sound[2..]], null),
            "set-up" => (Question, Replaced(1, Sound[1] with { Start = Sound[1].Start - 5, End = Sound[1].End - 5 }), null),
            "clean-out" => (Question, Replaced(2, Sound[2] with { Start = Sound[2].Start - 15, End = Sound[2].End - 15 }), null),
            "bins" => (Question, Replaced(4, Sound[4] with { Start = Sound[4].Start - 5, End = Sound[4].End - 5 }), null),
            "sorted begins" => (Question, Replaced(3, Sound[3] with { Start = Sound[3].Start - 65, End = Sound[3].End - 65 }), null),
            "sorted ends" => (Question, Replaced(3, Sound[3] with { Start = Sound[3].Start - 25, End = Sound[3].End - 25 }), null),
            // Pack 1 and the cracker need 22 and Pack 2 another 8, from 10:40 on.
            "heads" => (fewer, Replaced(4, Sound[4] with { Start = (9 * 60) + 30, End = (11 * 60) + 30 }), null),
            "late told less" => (dock, Sound, ShiftCosts.Of(dock, new ShiftTiming(dock), new ShiftSchedule(Sound)) with { Late = 0 }),
            "overrun told less" => (Question, over, ShiftCosts.Of(Question, new ShiftTiming(Question), new ShiftSchedule(over)) with { Overrun = 0 }),
            "changeover told less" => (Question, Sound, ShiftCosts.Of(Question, new ShiftTiming(Question), new ShiftSchedule(Sound)) with { Changeover = 0 }),
            _ => throw new ArgumentOutOfRangeException(nameof(name), name, null),
        };
    }

    private static PlacedRun[] Replaced(int at, PlacedRun by) => [.. Sound.Select((run, index) => index == at ? by : run)];
}
