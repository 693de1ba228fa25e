using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Core.Tests.Keep;

/// <summary>Looks at a lot along the places where it stood, and the clock that a plan takes of them.</summary>
public class LotSightTests
{
    private static readonly KeepingParameters P = KeepingParameters.Default;
    private static readonly KeepingTraits Medium = new(KeepClass.Medium, false, true);
    private static readonly Climate Cold = new(-0.5, 65, KeepingLaw.AirO2, KeepingLaw.AirCo2), Warm = new(20, 60, KeepingLaw.AirO2, KeepingLaw.AirCo2);
    private static readonly PlaceId Yard = new("Yard"), Room = new("Room");
    private static readonly LocalDate Dug = new(2026, 7, 1);
    private static readonly LocalDateTime Start = Dug.AtMidnight();

    private static readonly HistoryQuestion History = new(
        Medium, Dug, [new(Yard, Start, Start.PlusWeeks(4)), new(Room, Start.PlusWeeks(4), Start.PlusYears(2))], new Dictionary<PlaceId, IReadOnlyList<ClimateReading>>(),
        (place, _) => place == Yard ? Warm : Cold, P);

    private static LotSeen Seen(LocalDateTime until, params LotLook[] looks) => LotSight.Of(new LotSeenQuestion(History, looks, LotCondition.Good, ClockPrior.Default, until));

    [Fact]
    public void Without_looks_the_clocks_are_the_laws_along_the_stays()
    {
        LotSeen seen = Seen(Start.PlusWeeks(10));
        Assert.Equal(4 * KeepingLaw.LifeUsed(P, Medium, Warm) + 6 * KeepingLaw.LifeUsed(P, Medium, Cold), seen.Believed.Life, 1e-9);
        Assert.Equal((0, 0), (seen.Looks, seen.Bulbs));
        Assert.Equal(0, Seen(Start.PlusDays(-3)).Believed.Life);
    }

    [Fact]
    public void Counts_as_the_law_has_them_leave_the_speeds_and_narrow_the_band()
    {
        LotClocks then = Seen(Start.PlusWeeks(16)).ByTheLaw;
        BulbShares shares = BulbLosses.Of(P, LotCondition.Good, then.Sprout * 3, then.Decay * 3);
        LotSeen fast = Seen(Start.PlusWeeks(20), new LotLook(Start.PlusWeeks(16), 2000, (int)(2000 * shares.Sprouted), (int)(2000 * shares.Decayed)));
        Assert.InRange(Math.Exp(fast.Belief.LnSpeeds[1]) + Math.Exp(fast.Belief.LnSpeeds[2]), 3, 6.5);
        Assert.True(fast.Belief.Sd(1) < ClockPrior.Default.Sprout && fast.Believed.Life > 2 * Seen(Start.PlusWeeks(20)).Believed.Life);
    }

    /// <summary>Weighed on two days after it was cured, a lot is held against the law between the two, not against harvest.</summary>
    [Fact]
    public void A_weight_is_held_against_its_own_first_day()
    {
        LocalDateTime first = Start.PlusWeeks(4).PlusHours(12), second = Start.PlusWeeks(16);
        double law = Seen(second).ByTheLaw.WeightRatio / Seen(first).ByTheLaw.WeightRatio;
        LotSeen same = Seen(second, new LotLook(second, 0, 0, 0, law, first.Date)), twice = Seen(second, new LotLook(second, 0, 0, 0, law * law, first.Date));
        Assert.Equal(0, same.Belief.LnSpeeds[0], 1e-3);
        Assert.InRange(Math.Exp(twice.Belief.LnSpeeds[0]), 1.3, 2);
    }

    [Fact]
    public void A_plans_clock_of_a_lot_as_the_law_has_it_is_the_law_and_injuries_only_hasten_it()
    {
        LotSeen seen = Seen(Start.PlusWeeks(10));
        SeenClock law = SeenClock.Of(seen, LotCondition.Good, null), hurt = SeenClock.Of(seen, new LotCondition(1, 0.2), null);
        WeekOfKeeping expected = KeepingLaw.Week(P, Medium, Warm, 9), week = law.Week(P, Medium, Warm, 9);
        Assert.Equal(expected.WeightLoss, week.WeightLoss, 1e-12);
        Assert.Equal(expected.LifeUsed, week.LifeUsed, 1e-12);
        Assert.Equal(seen.Believed.Life, law.LifeAtStart, 1e-12);
        Assert.True(hurt.LifeAtStart > law.LifeAtStart && hurt.Week(P, Medium, Warm, 9).LifeUsed > week.LifeUsed);
        // Whatever was seen, a week takes no less than the contract's 0.05% and no more than a fifth.
        Assert.InRange(new SeenClock(1e-3, 1, 1, 0, 1, null).Week(P, Medium, Cold, 9).WeightLoss, 0.0005, 0.0006);
        Assert.Equal(0.2, new SeenClock(1e4, 1, 1, 0, 1, null).Week(P, Medium, Warm, 9).WeightLoss, 1e-12);
    }
}
