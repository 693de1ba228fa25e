using MathNet.Numerics.LinearAlgebra;

namespace Cloveshed.Core.Keep.Clocks;

/// <summary>What somebody saw of a lot: bulbs looked at, of which so many had sprouted and so many decayed; and its weight, if it was weighed.</summary>
/// <param name="ByTheLaw">The lot's clocks at that time by the law alone.</param>
/// <param name="WeightRatio">Weight over weight at the start, as weighed; null where it was not.</param>
public sealed record Inspection(LotClocks ByTheLaw, int Looked, int Sprouted, int Decayed, double? WeightRatio = null);

/// <summary>How far a lot's clocks may be off from the law before anyone looks: standard deviations of the logarithms of their speeds.</summary>
/// <param name="ScaleSd">Error of ln of a weight ratio; our default of 1%.</param>
public sealed record ClockPrior(double Weight, double Sprout, double Decay, double ScaleSd = 0.01)
{
    /// <summary>Our defaults, no published value; the published lives scatter by 0.18 about the law, lots within a source by more.</summary>
    public static ClockPrior Default { get; } = new(0.25, 0.3, 0.35);
}

/// <summary>
/// What is believed of a lot's clocks: logarithms of their speeds over the law's (weight, sprouting, decay in this order), most
/// likely values and covariance.
/// </summary>
public sealed record ClockBelief(double[] LnSpeeds, double[,] Covariance)
{
    /// <summary>The prior alone.</summary>
    public static ClockBelief Of(ClockPrior prior) => new([0, 0, 0], new double[,]
    {
        { prior.Weight * prior.Weight, 0, 0 }, { 0, prior.Sprout * prior.Sprout, 0 }, { 0, 0, prior.Decay * prior.Decay },
    });

    /// <summary>Standard deviation of the logarithm of one clock's speed.</summary>
    public double Sd(int clock) => Math.Sqrt(Covariance[clock, clock]);
}

/// <summary>Inspections of one lot and the prior that they meet.</summary>
public sealed record InspectionQuestion(IReadOnlyList<Inspection> Inspections, KeepingParameters P, LotCondition Condition, ClockPrior Prior);

/// <summary>
/// Maximum likelihood with a prior: counts of sound, sprouted and decayed bulbs are multinomial by the law with each clock at its own
/// speed, weights are lognormal about it, ln speeds are normal about 0. The spread is that of the curvature at the top (Laplace).
/// Bulbs of an inspection are taken as drawn one by one from the whole lot: look into several bins.
/// </summary>
public static class InspectionUpdate
{
    private const double Step = 1e-4;

    /// <summary>Pure.</summary>
    public static ClockBelief Of(InspectionQuestion question)
    {
        foreach (Inspection i in question.Inspections)
        {
            if (i.Looked < 0 || i.Sprouted < 0 || i.Decayed < 0 || (long)i.Sprouted + i.Decayed > i.Looked)
                throw new ArgumentException($"{i.Sprouted} sprouted and {i.Decayed} decayed are not of {i.Looked} bulbs.", nameof(question));
            if (i.WeightRatio is { } ratio && !(ratio is > 0 and < 10))
                throw new ArgumentException($"A weight ratio of {ratio} cannot be.", nameof(question));
        }

        double[] x = [0, 0, 0];
        double now = Surprise(question, x);
        for (int round = 0; round < 200; round++)
        {
            (Vector<double> slope, Matrix<double> bend) = Derivatives(question, x);
            double lift = 0;
            Vector<double> step;
            while (true)
            {
                Matrix<double> lifted = bend + lift * Matrix<double>.Build.DenseIdentity(3);
                if (IsPositive(lifted))
                {
                    step = -lifted.Solve(slope);
                    break;
                }

                lift = Math.Max(1, lift * 4);
            }

            double part = 1;
            double[] tried = x;
            double there = now;
            while (part > 1e-6)
            {
                tried = [.. x.Zip(step, (at, by) => at + part * by)];
                there = Surprise(question, tried);
                if (there < now)
                    break;
                part /= 2;
            }

            if (!(there < now))
                break;
            bool still = now - there < 1e-12 * Math.Abs(now);
            (x, now) = (tried, there);
            if (still)
                break;
        }

        Matrix<double> covariance = Derivatives(question, x).Bend.Inverse();
        return new ClockBelief(x, covariance.ToArray());
    }

    /// <summary>Minus the logarithm of likelihood times prior.</summary>
    private static double Surprise(InspectionQuestion question, double[] x)
    {
        ClockPrior prior = question.Prior;
        double sum = Square(x[0] / prior.Weight) + Square(x[1] / prior.Sprout) + Square(x[2] / prior.Decay);
        foreach (Inspection i in question.Inspections)
        {
            BulbShares shares = BulbLosses.Of(question.P, question.Condition, i.ByTheLaw.Sprout * Math.Exp(x[1]), i.ByTheLaw.Decay * Math.Exp(x[2]));
            sum -= Counted(i.Sprouted, shares.Sprouted) + Counted(i.Decayed, shares.Decayed) + Counted(i.Looked - i.Sprouted - i.Decayed, shares.Sound);
            if (i.WeightRatio is { } ratio)
                sum += Square((Math.Log(ratio) - Math.Log(i.ByTheLaw.WeightRatio) * Math.Exp(x[0])) / prior.ScaleSd);
        }

        return sum;
    }

    private static (Vector<double> Slope, Matrix<double> Bend) Derivatives(InspectionQuestion question, double[] x)
    {
        double At(params ReadOnlySpan<(int Clock, double By)> moves)
        {
            double[] moved = [.. x];
            foreach ((int clock, double by) in moves)
                moved[clock] += by;
            return Surprise(question, moved);
        }

        double here = At();
        var slope = Vector<double>.Build.Dense(3);
        var bend = Matrix<double>.Build.Dense(3, 3);
        for (int i = 0; i < 3; i++)
        {
            double up = At((i, Step)), down = At((i, -Step));
            slope[i] = (up - down) / (2 * Step);
            bend[i, i] = (up - 2 * here + down) / (Step * Step);
            for (int j = 0; j < i; j++)
                bend[i, j] = bend[j, i] = (At((i, Step), (j, Step)) - At((i, Step), (j, -Step)) - At((i, -Step), (j, Step)) + At((i, -Step), (j, -Step))) / (4 * Step * Step);
        }

        return (slope, bend);
    }

    private static bool IsPositive(Matrix<double> m) =>
        m[0, 0] > 0 && m[0, 0] * m[1, 1] - m[0, 1] * m[1, 0] > 0 && m.Determinant() > 0;

    private static double Counted(int count, double share) => count == 0 ? 0 : count * Math.Log(Math.Max(share, 1e-12));

    // Half the square: the exponent of a normal.
    private static double Square(double z) => z * z / 2;
}
