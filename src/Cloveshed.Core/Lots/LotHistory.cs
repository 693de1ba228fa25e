using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Cloveshed.Core.Lots;

/// <summary>A past lot's mean of ln g with its error variance, and what it was.</summary>
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
/// What past lots say of the next one: mean + variety + field + season + lot, each effect normal, crossed; effects predicted together (best
/// linear unbiased prediction, C. R. Henderson, Biometrics 31 (1975) 423), the sds by restricted likelihood (H. D. Patterson and R. Thompson,
/// Biometrika 58 (1971) 545) with a prior on each ln sd, so that one past lot, a new variety, or one season alone are answered by the
/// defaults and not by a fit of nothing.
/// </summary>
public sealed class LotHistory
{
    // Sd of ln sd under the prior: a factor of two either way within about one and a half.
    private const double PriorLogSd = 0.5;
    private const int Rounds = 4, Looks = 14;

    private readonly PastLot[] lots;
    private readonly Vector<double> residual, ones;
    private readonly Cholesky<double> factor;
    private readonly double mean, meanVariance;

    private LotHistory(PastLot[] lots, HistorySpread spread)
    {
        (this.lots, Spread) = (lots, spread);
        factor = Covariance(lots, spread).Cholesky();
        ones = factor.Solve(Vector<double>.Build.Dense(lots.Length, 1));
        var y = Vector<double>.Build.Dense(lots.Length, i => lots[i].MeanLog);
        meanVariance = 1 / ones.Sum();
        mean = meanVariance * ones.DotProduct(y);
        residual = factor.Solve(y - mean);
    }

    /// <summary>Sds as fitted.</summary>
    public HistorySpread Spread { get; }

    /// <summary>From one past lot or more.</summary>
    public static LotHistory Of(IReadOnlyList<PastLot> past) => Of(past, HistorySpread.Usual);

    /// <summary>Leaning to other sds.</summary>
    public static LotHistory Of(IReadOnlyList<PastLot> past, HistorySpread usual)
    {
        if (past.Count == 0)
            throw new ArgumentException("One past lot at least: without any, the defaults are all there is.", nameof(past));
        PastLot[] lots = [.. past];
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

        return new(lots, Sds(at));

        double Fit(int k, double ln)
        {
            double[] tried = [.. at];
            tried[k] = ln;
            return Restricted(lots, Sds(tried)) - tried.Zip(prior, (x, p) => (x - p) * (x - p)).Sum() / (2 * PriorLogSd * PriorLogSd);
        }

        static HistorySpread Sds(double[] ln) => new(Math.Exp(ln[0]), Math.Exp(ln[1]), Math.Exp(ln[2]), Math.Exp(ln[3]));
    }

    /// <summary>The next lot, known by what it is alone. What was never seen (a variety, a field, a season) adds its own spread.</summary>
    public MeanBelief Next(string variety, string field, int season)
    {
        var shared = Vector<double>.Build.Dense(lots.Length, i => Shared(Spread, lots[i].Variety == variety, lots[i].Field == field, lots[i].Season == season));
        Vector<double> weights = factor.Solve(shared);
        double own = Shared(Spread, true, true, true) + Spread.Lot * Spread.Lot, unexplained = 1 - weights.Sum();
        return new(mean + shared.DotProduct(residual), own - shared.DotProduct(weights) + unexplained * unexplained * meanVariance);
    }

    // ln restricted likelihood, up to a constant.
    private static double Restricted(PastLot[] lots, HistorySpread spread)
    {
        Cholesky<double> factor = Covariance(lots, spread).Cholesky();
        Vector<double> ones = factor.Solve(Vector<double>.Build.Dense(lots.Length, 1)), y = Vector<double>.Build.Dense(lots.Length, i => lots[i].MeanLog);
        double information = ones.Sum(), mean = ones.DotProduct(y) / information;
        Vector<double> away = y - mean;
        return -0.5 * (factor.DeterminantLn + Math.Log(information) + away.DotProduct(factor.Solve(away)));
    }

    private static Matrix<double> Covariance(PastLot[] lots, HistorySpread spread) =>
        Matrix<double>.Build.Dense(lots.Length, lots.Length, (i, j) =>
            Shared(spread, lots[i].Variety == lots[j].Variety, lots[i].Field == lots[j].Field, lots[i].Season == lots[j].Season)
            + (i == j ? spread.Lot * spread.Lot + lots[i].Variance : 0));

    private static double Shared(HistorySpread s, bool variety, bool field, bool season) =>
        (variety ? s.Variety * s.Variety : 0) + (field ? s.Field * s.Field : 0) + (season ? s.Season * s.Season : 0);
}
