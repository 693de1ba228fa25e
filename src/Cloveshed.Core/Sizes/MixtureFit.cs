using MathNet.Numerics;

namespace Cloveshed.Core.Sizes;

/// <summary>A mixture as fitted: its parts, log likelihood, Bayesian information criterion (smaller is better) and rounds of EM.</summary>
public sealed record FittedMixture(LognormalMixture Curve, double LogLikelihood, double Bic, int Rounds);

/// <summary>
/// Fits 1 to 3 lognormals by EM (A. P. Dempster, N. M. Laird and D. B. Rubin, J. R. Statist. Soc. B 39 (1977) 1), also to bins
/// and to what lies within a seen range, whose unseen bulbs are then missing data with closed-form expectations (G. J. McLachlan
/// and P. N. Jones, Biometrics 44 (1988) 571, from memory). The number of lognormals is the one of least BIC (G. Schwarz,
/// Ann. Statist. 6 (1978) 461).
/// </summary>
public static class MixtureFit
{
    /// <summary>The most kinds of bulbs that a fit looks for.</summary>
    public const int MostParts = 3;

    /// <summary>No kind of bulbs is as alike as this (sd of ln g); keeps a fit from falling onto a single weight.</summary>
    public const double LeastSigma = 0.03;

    private const int MostRounds = 400;
    private const double Enough = 1e-9;

    /// <summary>The best of 1 to 3 lognormals by BIC; one of few bulbs.</summary>
    public static FittedMixture Usual(WeightCells cells) => Chosen(All(cells), cells);

    /// <summary>The one of these fits that an answer rests on.</summary>
    internal static FittedMixture Chosen(IReadOnlyList<FittedMixture> fits, WeightCells cells) =>
        cells.Bulbs < CurveDraws.FewBulbs ? fits[0] with { Curve = CurveDraws.OfFew(cells) } : fits.MinBy(f => f.Bic)!;

    /// <summary>The fits of 1, 2 and 3 lognormals, as many as the bulbs allow.</summary>
    public static IReadOnlyList<FittedMixture> All(WeightCells cells)
    {
        double bulbs = cells.Bulbs;
        var fits = new List<FittedMixture>();
        for (int parts = 1; parts <= MostParts && (parts == 1 || bulbs >= 10 * parts); parts++)
            fits.Add(Of(cells, parts));
        return fits;
    }

    /// <summary>The fit of so many lognormals, best of several starts.</summary>
    public static FittedMixture Of(WeightCells cells, int parts)
    {
        FittedMixture? best = null;
        foreach (LognormalPart[] start in Starts(cells, parts))
        {
            FittedMixture fit = From(cells, start, MostRounds, Enough);
            if (best is null || fit.LogLikelihood > best.LogLikelihood)
                best = fit;
        }

        return best!;
    }

    /// <summary>EM from a given start, until the log likelihood grows by less than this per bulb, or for so many rounds.</summary>
    public static FittedMixture From(WeightCells cells, IReadOnlyList<LognormalPart> start, int mostRounds, double enough)
    {
        LognormalPart[] parts = [.. start];
        double bulbs = cells.Bulbs, last = double.NegativeInfinity;
        int round = 0;
        var sums = new MixtureSums(parts.Length);
        for (; round < mostRounds; round++)
        {
            double likelihood = sums.Take(cells, parts);
            if (likelihood - last < enough * bulbs)
            {
                last = Math.Max(last, likelihood);
                break;
            }

            last = likelihood;
            sums.Into(parts);
        }

        Array.Sort(parts, (x, y) => x.Mu.CompareTo(y.Mu));
        return new(new(parts), last, -2 * last + (3 * parts.Length - 1) * Math.Log(Math.Max(2, bulbs)), round);
    }

    // Equal thirds or halves; a small kind below; a small kind above: the likelihood has several hills.
    private static IEnumerable<LognormalPart[]> Starts(WeightCells cells, int parts)
    {
        double[][] cuts = parts switch
        {
            1 => [[]],
            2 => [[0.5], [0.15], [0.85]],
            _ => [[0.33, 0.67], [0.1, 0.5], [0.15, 0.85]],
        };
        (double Ln, double Count)[] sorted = [.. cells.Low.Zip(cells.High, Middle).Zip(cells.Count).OrderBy(p => p.First)];
        double all = cells.Bulbs;
        foreach (double[] at in cuts)
        {
            var groups = new Moments[parts];
            double before = 0;
            foreach ((double ln, double count) in sorted)
            {
                double place = (before + count / 2) / all;
                groups[at.Count(c => place >= c)].Add(ln, count);
                before += count;
            }

            if (groups.All(g => g.Count > 0))
                yield return [.. groups.Select(g => new LognormalPart(g.Count / all, g.Mean, Math.Max(2 * LeastSigma, Math.Sqrt(g.SquaresAboutMean / g.Count))))];
            else
                yield return [.. Enumerable.Range(0, parts).Select(k => new LognormalPart(1.0 / parts, sorted[0].Ln + 0.2 * k, 0.2))];
        }
    }

    private static double Middle(double low, double high) =>
        double.IsNegativeInfinity(low) ? high - 0.1 : double.IsPositiveInfinity(high) ? low + 0.1 : (low + high) / 2;
}

/// <summary>One expectation step: how many bulbs of each part, and their first two moments of ln g.</summary>
internal sealed class MixtureSums(int parts)
{
    private const double RootTwoPi = 2.5066282746310002;

    private readonly double[] bulbs = new double[parts], first = new double[parts], second = new double[parts];
    private readonly double[] share = new double[parts], one = new double[parts], two = new double[parts];

    /// <summary>Sums over all cells under these parts; returns the log likelihood.</summary>
    public double Take(WeightCells cells, LognormalPart[] of)
    {
        Array.Clear(bulbs);
        Array.Clear(first);
        Array.Clear(second);
        double likelihood = 0, all = 0;
        for (int i = 0; i < cells.Count.Length; i++)
        {
            double low = cells.Low[i], high = cells.High[i], count = cells.Count[i];
            double density = low == high ? At(low, of) : Within(low, high, of);
            likelihood += count * Math.Log(Math.Max(density, double.Epsilon));
            all += count;
            Add(count / Math.Max(density, double.Epsilon));
        }

        if (!cells.Truncated)
            return likelihood;
        double seen = Within(cells.SeenFrom, cells.SeenTo, of);
        likelihood -= all * Math.Log(Math.Max(seen, double.Epsilon));
        // Of every bulb seen, this many are not; a curve that is nearly all out of sight would run away.
        double unseen = all / Math.Max(seen, 0.02);
        Within(double.NegativeInfinity, cells.SeenFrom, of);
        Add(unseen);
        Within(cells.SeenTo, double.PositiveInfinity, of);
        Add(unseen);
        return likelihood;
    }

    /// <summary>The maximisation step.</summary>
    public void Into(LognormalPart[] of)
    {
        double all = bulbs.Sum();
        for (int k = 0; k < of.Length; k++)
        {
            if (bulbs[k] <= 1e-9 * all)
            {
                of[k] = of[k] with { Share = 0 };
                continue;
            }

            double mean = first[k] / bulbs[k], variance = second[k] / bulbs[k] - mean * mean;
            of[k] = new(bulbs[k] / all, mean, Math.Sqrt(Math.Max(variance, MixtureFit.LeastSigma * MixtureFit.LeastSigma)));
        }
    }

    private double At(double ln, LognormalPart[] of)
    {
        double all = 0;
        for (int k = 0; k < of.Length; k++)
        {
            double z = (ln - of[k].Mu) / of[k].Sigma, density = of[k].Share * Math.Exp(-0.5 * z * z) / (of[k].Sigma * RootTwoPi);
            share[k] = density;
            one[k] = density * ln;
            two[k] = density * ln * ln;
            all += density;
        }

        return all;
    }

    // Probability and moments of ln g within an interval: for a standard normal, the integrals of 1, z and z^2 times its density.
    private double Within(double low, double high, LognormalPart[] of)
    {
        double all = 0;
        for (int k = 0; k < of.Length; k++)
        {
            (double mu, double sigma) = (of[k].Mu, of[k].Sigma);
            double a = (low - mu) / sigma, b = (high - mu) / sigma;
            double p = a > 0 ? Tail(a) - Tail(b) : Tail(-b) - Tail(-a), fa = Density(a), fb = Density(b);
            double z = fa - fb, zz = p + (double.IsInfinity(a) ? 0 : a * fa) - (double.IsInfinity(b) ? 0 : b * fb);
            share[k] = of[k].Share * p;
            one[k] = of[k].Share * (mu * p + sigma * z);
            two[k] = of[k].Share * (mu * mu * p + 2 * mu * sigma * z + sigma * sigma * zz);
            all += share[k];
        }

        return all;
    }

    private void Add(double weight)
    {
        for (int k = 0; k < parts; k++)
        {
            bulbs[k] += weight * share[k];
            first[k] += weight * one[k];
            second[k] += weight * two[k];
        }
    }

    private static double Tail(double z) => 0.5 * SpecialFunctions.Erfc(z / Constants.Sqrt2);

    private static double Density(double z) => double.IsInfinity(z) ? 0 : Math.Exp(-0.5 * z * z) / RootTwoPi;
}
