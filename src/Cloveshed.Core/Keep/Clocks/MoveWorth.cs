using Cloveshed.Core.Quantities;
using NodaTime;

namespace Cloveshed.Core.Keep.Clocks;

/// <summary>A place for a lot to stand in, and what that costs.</summary>
/// <param name="CostPerWeek">For the whole lot there.</param>
public sealed record StandingChoice(IReadOnlyList<FutureStay> Future, Money CostPerWeek);

/// <summary>Stay, or move?</summary>
/// <param name="Weight">Of the lot today.</param>
/// <param name="PricePerKg">Of sound bulbs, when it is run.</param>
/// <param name="RunOn">When it would be run either way.</param>
/// <param name="MoveCost">Paid once.</param>
public sealed record MoveQuestion(
    RunByQuestion Lot, Mass Weight, Money PricePerKg, StandingChoice Stay, StandingChoice Move, Money MoveCost, LocalDate RunOn);

/// <summary>What a move buys.</summary>
/// <param name="DaysGained">Later run-by day; negative when the move is for the worse.</param>
/// <param name="SoundStaying">Sound weight on the day of the run, whole grams.</param>
/// <param name="Worth">(sound weight more) x price - (cost more of standing) - move; rounded to the currency's minor unit.</param>
/// <param name="BreakEvenOn">First day, up to a year on, from which running later makes the move worth its cost; null if never.</param>
public sealed record MoveAnswer(RunByAnswer Staying, RunByAnswer Moving, int DaysGained, Mass SoundStaying, Mass SoundMoving, Money Worth, LocalDate? BreakEvenOn);

/// <summary>What moving a lot to another place would buy, in days and in money.</summary>
public static class MoveWorth
{
    /// <summary>Pure. Clocks run at their most likely speeds.</summary>
    public static MoveAnswer Of(MoveQuestion question)
    {
        RunByAnswer staying = RunBy.Of(question.Lot with { Future = question.Stay.Future }), moving = RunBy.Of(question.Lot with { Future = question.Move.Future });
        int days = Period.DaysBetween(question.Lot.Today, question.RunOn);
        ArgumentOutOfRangeException.ThrowIfNegative(days, nameof(question));
        const int Year = 365;
        (double[] stay, double[] move) = (Sound(question.Lot, question.Stay.Future, Math.Max(days, Year)), Sound(question.Lot, question.Move.Future, Math.Max(days, Year)));
        Mass Kept(double[] sound, int day) => Mass.FromKilograms((double)question.Weight.ToKilograms() * sound[day]);
        Money Worth(int day) =>
            question.PricePerKg * (Kept(move, day) - Kept(stay, day)).ToKilograms()
            - question.Move.CostPerWeek * (day / 7m) + question.Stay.CostPerWeek * (day / 7m) - question.MoveCost;
        int? breakEven = Enumerable.Range(0, Year + 1).Select(day => (int?)day).FirstOrDefault(day => Worth(day!.Value).Amount >= 0);
        return new MoveAnswer(
            staying, moving, Period.DaysBetween(staying.By, moving.By), Kept(stay, days), Kept(move, days), Worth(days).Rounded(),
            breakEven is { } first ? question.Lot.Today.PlusDays(first) : null);
    }

    /// <summary>Sound weight by day over the weight of the whole lot today.</summary>
    private static double[] Sound(RunByQuestion lot, IReadOnlyList<FutureStay> future, int days)
    {
        double[] sound = new double[days + 1];
        double[] speed = [.. lot.Belief.LnSpeeds.Select(Math.Exp)];
        double lnWeight = 0, sprout = lot.Now.Sprout * speed[1], decay = lot.Now.Decay * speed[2];
        int stay = 0, until = future[0].Days;
        for (int day = 0; day <= days; day++)
        {
            sound[day] = Math.Exp(lnWeight) * BulbLosses.Of(lot.P, lot.Condition, sprout, decay).Sound;
            while (day >= until && stay + 1 < future.Count)
                until += future[++stay].Days;
            Climate climate = future[stay].Climate;
            (double s, double d) = KeepingLaw.LifeUsedByClock(lot.P, lot.Traits, climate);
            // A lot in storage is past its first weeks: its field water is gone.
            lnWeight += speed[0] * Math.Log(1 - KeepingLaw.WeightLoss(lot.P, lot.Traits with { Cured = true }, climate, 0)) / 7;
            sprout += s / 7 * speed[1];
            decay += d / 7 * speed[2];
        }

        return sound;
    }
}
