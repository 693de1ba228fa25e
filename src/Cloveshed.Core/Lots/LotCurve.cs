using Cloveshed.Core.Seasons;
using MathNet.Numerics;

namespace Cloveshed.Core.Lots;

/// <summary>
/// A lot's bulb weights as known: its variety's shape at the lot's own mean and spread of ln g, which counts for some bulbs,
/// joined with its own sampled bulbs, each for one (the posterior mean of a Dirichlet process; T. S. Ferguson, Ann. Statist. 1
/// (1973) 209). With no sampled bulbs and a normal shape it is the lognormal law itself, in closed form.
/// </summary>
/// <param name="Mu">Mean of ln g.</param>
/// <param name="SigmaSquared">Variance of ln g.</param>
/// <param name="ShapeBulbs">How many bulbs the shape counts for.</param>
/// <param name="Logs">ln g of the lot's own bulbs.</param>
public sealed record LotCurve(double Mu, double SigmaSquared, BulbShape Shape, double ShapeBulbs, double[] Logs)
{
    /// <summary>What a sizer saw: ln g and the bulbs that each counts for; none where no sizer saw any.</summary>
    public IReadOnlyList<(double Ln, double Bulbs)> Sized { get; init; } = [];

    private double OwnBulbs => Logs.Length + Sized.Sum(s => s.Bulbs);

    // Beyond this many residual sds a bulb is surely on one side of a limit (error under 1e-9).
    private const double Surely = 6;

    private bool IsLaw => Shape.IsNormal && Logs.Length == 0 && Sized.Count == 0;

    /// <summary>Mean mass and cv of the whole curve.</summary>
    public SizeCurve Moments
    {
        get
        {
            if (IsLaw)
                return SizeCurve.OfLogs(Mu, SigmaSquared);
            double one = 0, two = 0, each = ShapeBulbs / Shape.Z.Length;
            foreach (double ln in ShapeLogs(Math.Sqrt(SigmaSquared)))
            {
                double g = Math.Exp(ln);
                one += each * g;
                two += each * g * g;
            }

            foreach ((double ln, double bulbs) in Own)
            {
                double g = Math.Exp(ln);
                one += bulbs * g;
                two += bulbs * g * g;
            }

            double count = ShapeBulbs + OwnBulbs, mean = one / count;
            return new SizeCurve(mean, Math.Sqrt(Math.Max(0, two / count / (mean * mean) - 1)));
        }
    }

    /// <summary>Shares by mass of each class, under a mass law whose ln g is shifted up by `shift` at any diameter.</summary>
    public double[] Shares(MassLaw law, double shift, IReadOnlyList<SizeClass> sizes)
    {
        MassLaw shifted = law with { A = law.A + shift };
        if (!IsLaw)
            return Sums(shifted, sizes, Math.Sqrt(SigmaSquared)).Shares;
        SizeCurve curve = SizeCurve.OfLogs(Mu, SigmaSquared);
        return [.. sizes.Select(s => curve.MassShare(shifted, s.MinMm, s.MaxMm))];
    }

    /// <summary>
    /// Variance of each class's share: of drawing the lot's bulbs and of the shape (Dirichlet), of the lot's mean and mass law,
    /// of its spread and of its skewness.
    /// </summary>
    /// <param name="meanVariance">Of the mean of ln g.</param>
    /// <param name="shiftVariance">Of the shift of the mass law.</param>
    /// <param name="freedom">Degrees of freedom of the variance of ln g.</param>
    /// <param name="skewVariance">Of the skewness of ln g.</param>
    public double[] Variances(
        MassLaw law, double shift, IReadOnlyList<SizeClass> sizes, double meanVariance, double shiftVariance, double freedom, double skewVariance)
    {
        // A mean of ln g that is 1% higher moves every share as a mass law 1% lower does: mass by mass nothing else changes.
        const double Step = 0.01, SkewStep = 0.1;
        MassLaw shifted = law with { A = law.A + shift };
        double sigma = Math.Sqrt(SigmaSquared);
        ClassSums here = Sums(shifted, sizes, sigma);
        double[] lower = Sums(shifted with { A = shifted.A - Step }, sizes, sigma).Shares;
        double[] wider = Sums(shifted, sizes, sigma * (1 + Step)).Shares;
        double[] skewed = skewVariance > 0 ? (this with { Shape = Shape.Skewed(SkewStep) }).Sums(shifted, sizes, sigma).Shares : here.Shares;
        // What moves the shape moves only its part of the curve; the sampled bulbs stand where they stand.
        double part = ShapeBulbs / (ShapeBulbs + OwnBulbs);
        double sdVariance = 1 / (2 * freedom);
        var variances = new double[sizes.Count];
        for (int c = 0; c < variances.Length; c++)
        {
            double byMean = (lower[c] - here.Shares[c]) / Step, bySpread = (wider[c] - here.Shares[c]) / Step, bySkew = (skewed[c] - here.Shares[c]) / SkewStep;
            variances[c] = here.Dirichlet(c, ShapeBulbs + OwnBulbs)
                + byMean * byMean * (part * part * meanVariance + shiftVariance) + bySpread * bySpread * sdVariance + bySkew * bySkew * skewVariance;
        }

        return variances;
    }

    private ClassSums Sums(MassLaw law, IReadOnlyList<SizeClass> sizes, double sigma)
    {
        // ln g at which a bulb is on average as wide as each limit; the last is the top class's upper limit.
        var limits = new double[sizes.Count + 1];
        for (int c = 0; c < sizes.Count; c++)
            limits[c] = law.A + law.B * Math.Log(Math.Max(double.Epsilon, sizes[c].MinMm));
        limits[^1] = sizes is [.., { MaxMm: { } max }] ? law.A + law.B * Math.Log(max) : double.PositiveInfinity;
        var sums = new ClassSums(sizes.Count);
        double each = ShapeBulbs / Shape.Z.Length;
        foreach (double ln in ShapeLogs(sigma))
            Add(sums, limits, law.S, ln, each);
        foreach ((double ln, double bulbs) in Own)
            Add(sums, limits, law.S, ln, bulbs);
        sums.Close();
        return sums;
    }

    private static void Add(ClassSums sums, double[] limits, double scatter, double ln, double weight)
    {
        double g = Math.Exp(ln);
        sums.Mass += weight * g;
        sums.MassSquares += weight * g * g;
        double above = AtLeast(limits[0] - ln, scatter);
        for (int c = 0; c + 1 < limits.Length && above > 0; c++)
        {
            double next = AtLeast(limits[c + 1] - ln, scatter), p = above - next;
            above = next;
            if (p <= 0)
                continue;
            sums.Shares[c] += weight * g * p;
            sums.Squares[c] += weight * g * g * p * p;
            sums.Crosses[c] += weight * g * g * p;
        }
    }

    private IEnumerable<(double Ln, double Bulbs)> Own => Logs.Select(ln => (ln, 1.0)).Concat(Sized);

    private double[] ShapeLogs(double sigma) => Array.ConvertAll(Shape.Z, z => Mu + sigma * z);

    // Probability that a bulb is at least as wide as a limit that lies this far above it in ln g.
    internal static double AtLeast(double distance, double scatter) =>
        distance >= Surely * scatter ? distance > 0 || scatter > 0 ? 0 : 1
        : distance <= -Surely * scatter ? 1
        : 0.5 * SpecialFunctions.Erfc(distance / (scatter * Constants.Sqrt2));

    // Sums over bulbs of mass x probability of the class given the mass; Close divides by the sum of mass.
    private sealed class ClassSums(int classes)
    {
        public double[] Shares { get; } = new double[classes];
        public double[] Squares { get; } = new double[classes];
        public double[] Crosses { get; } = new double[classes];
        public double Mass { get; set; }
        public double MassSquares { get; set; }

        public void Close()
        {
            for (int c = 0; c < Shares.Length; c++)
                Shares[c] /= Mass;
        }

        // The delta method's variance of a ratio of sums whose weights are Dirichlet of this many bulbs.
        public double Dirichlet(int c, double bulbs)
        {
            double s = Shares[c];
            double sum = Squares[c] - 2 * s * Crosses[c] + s * s * MassSquares;
            return Math.Max(0, sum) * bulbs / (Mass * Mass) / (bulbs + 1);
        }
    }
}
