namespace Cloveshed.Core.Lots;

/// <summary>A lot that was seen: its mean of ln g with its error variance, and what it was. Season is the year of its harvest.</summary>
public sealed record PastLot(string Variety, string Field, int Season, double MeanLog, double Variance);

/// <summary>A normal belief of a lot's mean of ln g.</summary>
public readonly record struct MeanBelief(double Mean, double Variance)
{
    /// <summary>Joined with the lot's own sample (its mean and error variance): weights are the inverse variances.</summary>
    public MeanBelief With(double mean, double variance)
    {
        double kept = Variance / (Variance + variance);
        return new(Mean + kept * (mean - Mean), Variance * (1 - kept));
    }

    /// <summary>80% band.</summary>
    public Band Band80 => new(Mean - Z80 * Math.Sqrt(Variance), Mean + Z80 * Math.Sqrt(Variance));

    private const double Z80 = 1.2815515655446004;
}

/// <summary>Sds of ln g between varieties, between fields, between seasons, and between lots alike in all three.</summary>
public readonly record struct HistorySpread(double Variety, double Field, double Season, double Lot)
{
    /// <summary>Our defaults, no published value; each is also where a fit leans to when it has little to go by.</summary>
    public static HistorySpread Usual { get; } = new(0.2, 0.08, 0.08, 0.12);
}

/// <summary>
/// What lots that were seen say of each other and of the next one: mean + variety + field + season + lot, each effect normal, crossed; effects
/// predicted together (best linear unbiased prediction, C. R. Henderson, Biometrics 31 (1975) 423), the sds by restricted likelihood (H. D.
/// Patterson and R. Thompson, Biometrika 58 (1971) 545) with a prior on each ln sd, so that one past lot, a new variety, or one season alone
/// are answered by the defaults and not by a fit of nothing.
/// </summary>
public sealed class LotHistory
{
    // Sd of ln sd under the prior: a factor of two either way within about one and a half.
    private const double PriorLogSd = 0.5;
    private const int Rounds = 4, Looks = 14;

    private readonly IReadOnlyList<PastLot> lots;
    private readonly LotEffects effects;

    private LotHistory(IReadOnlyList<PastLot> lots, LotEffects effects) => (this.lots, this.effects) = (lots, effects);

    /// <summary>Sds as fitted.</summary>
    public HistorySpread Spread => effects.Spread;

    /// <summary>From one past lot or more.</summary>
    public static LotHistory Of(IReadOnlyList<PastLot> past) => Of(past, HistorySpread.Usual);

    /// <summary>Leaning to other sds.</summary>
    public static LotHistory Of(IReadOnlyList<PastLot> past, HistorySpread usual)
    {
        if (past.Count == 0)
            throw new ArgumentException("One past lot at least: without any, the defaults are all there is.", nameof(past));
        var levels = new LotLevels(past);
        double[] prior = [Math.Log(usual.Variety), Math.Log(usual.Field), Math.Log(usual.Season), Math.Log(usual.Lot)], at = [.. prior];
        double ratio = (Math.Sqrt(5) - 1) / 2;
        for (int round = 0; round < Rounds; round++)
        {
            for (int k = 0; k < at.Length; k++)
            {
                double low = prior[k] - 3, high = prior[k] + 3;
                for (int look = 0; look < Looks; look++)
                {
                    double a = high - ratio * (high - low), b = low + ratio * (high - low);
                    if (Fit(k, a) > Fit(k, b))
                        high = b;
                    else
                        low = a;
                }

                at[k] = (low + high) / 2;
            }
        }

        return new(past, new LotEffects(levels, Sds(at)));

        double Fit(int k, double ln)
        {
            double[] tried = [.. at];
            tried[k] = ln;
            return new LotEffects(levels, Sds(tried)).RestrictedLikelihood
                - tried.Zip(prior, (x, p) => (x - p) * (x - p)).Sum() / (2 * PriorLogSd * PriorLogSd);
        }

        static HistorySpread Sds(double[] ln) => new(Math.Exp(ln[0]), Math.Exp(ln[1]), Math.Exp(ln[2]), Math.Exp(ln[3]));
    }

    /// <summary>Variance of a sum of lots' kinds, each times its weight; kinds that share a variety, a field or a season are off together.</summary>
    public double SumVariance(IEnumerable<(string Variety, string Field, int Season, double Weight)> kinds) => effects.SumVariance(kinds);

    /// <summary>How much of its kind's error comes through to a lot that was seen: the surer its own sample, the less.</summary>
    public double KindInSeen(int lot)
    {
        double real = Spread.Lot * Spread.Lot;
        return lots[lot].Variance / (real + lots[lot].Variance);
    }

    /// <summary>The next lot, known by what it is alone. What was never seen (a variety, a field, a season) adds its own spread.</summary>
    public MeanBelief Next(string variety, string field, int season)
    {
        MeanBelief kind = effects.Of(variety, field, season);
        return kind with { Variance = kind.Variance + Spread.Lot * Spread.Lot };
    }

    /// <summary>One of the lots that were seen (its index): its own sample, pulled toward its kind as far as the sample is unsure.</summary>
    public MeanBelief Seen(int lot)
    {
        PastLot own = lots[lot];
        MeanBelief kind = effects.Of(own.Variety, own.Field, own.Season);
        double real = Spread.Lot * Spread.Lot, trust = real / (real + own.Variance);
        // Given its kind's mean the lot is known to within trust x error; of the kind's own error the rest comes through.
        return new(kind.Mean + trust * (own.MeanLog - kind.Mean), trust * own.Variance + (1 - trust) * (1 - trust) * kind.Variance);
    }
}
