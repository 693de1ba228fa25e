using NodaTime;

namespace Cloveshed.Core.Keep.Clocks;

/// <summary>A look at a lot: bulbs counted at a moment, and its weight against an earlier day's, where it was weighed.</summary>
/// <param name="WeightRatio">Over the weight at <paramref name="WeighedSince"/>; null where it was not weighed.</param>
public sealed record LotLook(LocalDateTime At, int Looked, int Sprouted, int Decayed, double? WeightRatio = null, LocalDate? WeighedSince = null);

/// <summary>A lot where it stood, and the looks at it.</summary>
/// <param name="History">Its stays reach to <paramref name="Until"/> or beyond.</param>
/// <param name="Looks">In the order of time; one before harvest, or after the stays end, counts at their end.</param>
public sealed record LotSeenQuestion(HistoryQuestion History, IReadOnlyList<LotLook> Looks, LotCondition Condition, ClockPrior Prior, LocalDateTime Until);

/// <summary>What is believed of a lot's clocks, and where they stand.</summary>
/// <param name="ByTheLaw">Clocks at Until by the law alone, each at speed 1.</param>
/// <param name="Bulbs">Looked at in all.</param>
public sealed record LotSeen(LotClocks ByTheLaw, ClockBelief Belief, int Looks, int Bulbs, double HoursRead, double HoursAssumed)
{
    /// <summary>Clocks at Until by what is believed: each at its most likely speed.</summary>
    public LotClocks Believed => new(
        Math.Pow(ByTheLaw.WeightRatio, Math.Exp(Belief.LnSpeeds[0])), ByTheLaw.Sprout * Math.Exp(Belief.LnSpeeds[1]), ByTheLaw.Decay * Math.Exp(Belief.LnSpeeds[2]));
}

/// <summary>From where a lot stood and what was seen of it to its clocks.</summary>
public static class LotSight
{
    /// <summary>Pure. History by the hour to each look, then maximum likelihood with the prior.</summary>
    public static LotSeen Of(LotSeenQuestion question)
    {
        HistoryAnswer now = To(question.History, question.Until);
        Inspection[] inspections = [.. question.Looks.SelectMany(look => Inspections(question.History, look))];
        ClockBelief belief = inspections.Length == 0
            ? ClockBelief.Of(question.Prior) : InspectionUpdate.Of(new InspectionQuestion(inspections, question.History.P, question.Condition, question.Prior));
        return new LotSeen(now.Clocks, belief, question.Looks.Count, question.Looks.Sum(look => look.Looked), now.HoursRead, now.HoursAssumed);
    }

    /// <summary>A look against the clocks by the law at its moment: its counts, and its weights if it was weighed.</summary>
    public static IReadOnlyList<Inspection> Inspections(HistoryQuestion history, LotLook look)
    {
        LotClocks then = To(history, look.At).Clocks;
        List<Inspection> inspections = [];
        if (look.Looked > 0)
            inspections.Add(new Inspection(then, look.Looked, look.Sprouted, look.Decayed));
        if (look.WeightRatio is { } ratio)
        {
            // The law's loss between the two weighings, which need not begin at harvest.
            double since = look.WeighedSince is { } day ? To(history, day.AtMidnight().PlusHours(12)).Clocks.WeightRatio : 1;
            inspections.Add(new Inspection(then with { WeightRatio = then.WeightRatio / since }, 0, 0, 0, ratio));
        }

        return inspections;
    }

    private static HistoryAnswer To(HistoryQuestion history, LocalDateTime end) => LotHistory.Of(history with
    {
        Stays = [.. history.Stays.Where(stay => stay.From < end).Select(stay => stay with { To = LocalDateTime.Min(stay.To, end) })],
    });
}

/// <summary>
/// How fast a lot's clocks run for a plan, over the law's, and the life that it has used when its path starts. Injured bulbs run faster
/// (<see cref="BulbLosses.InjuredHaste"/>): a plan, which has one clock for a lot, takes their mean.
/// </summary>
/// <param name="Looks">Inspections that it rests on; 0: only readings of its places.</param>
/// <param name="LastLook">Day of the last one.</param>
public sealed record SeenClock(double Weight, double Sprout, double Decay, double LifeAtStart, int Looks, LocalDate? LastLook)
{
    /// <summary>Of what was seen, as of the day on which the path starts.</summary>
    public static SeenClock Of(LotSeen seen, LotCondition condition, LocalDate? last)
    {
        double haste = 1 + (BulbLosses.InjuredHaste - 1) * condition.InjuredShare, ahead = (1 - condition.CuringQuality) * BulbLosses.UncuredHeadStart;
        double[] speed = [.. seen.Belief.LnSpeeds.Select(Math.Exp)];
        return new SeenClock(speed[0], speed[1], speed[2] * haste, seen.Believed.Sprout + ahead + seen.Believed.Decay * haste, seen.Looks, last);
    }

    /// <summary>One week of the lot in a climate, as <see cref="KeepingLaw.Week"/> is of the law.</summary>
    public WeekOfKeeping Week(KeepingParameters p, KeepingTraits traits, Climate climate, int weeksSinceHarvest)
    {
        (double sprout, double decay) = KeepingLaw.LifeUsedByClock(p, traits, climate);
        double loss = 1 - Math.Pow(1 - KeepingLaw.WeightLoss(p, traits, climate, weeksSinceHarvest), Weight);
        return new WeekOfKeeping(KeepingLaw.WithinContract(loss), sprout * Sprout + decay * Decay);
    }
}
