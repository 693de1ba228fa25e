using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots;

/// <summary>A lot's measured bulbs for the fit: ln g of its own mean and spread, and how many bulbs lie in each class, those under and over the chart included.</summary>
internal readonly record struct MeasuredLot(MassLaw Law, BulbShape Shape, double Mu, double Sigma, double[] Counts);

/// <summary>
/// How many bulbs a variety's shape counts for beside a lot's own: class counts are Dirichlet-multinomial around the shares that the shape
/// has at the lot's mean and spread, and the strength is the one under which the counts are likeliest. Each lot's mean and spread are
/// integrated out over a flat grid (as restricted likelihood does), else what they take up of the difference would pass for likeness.
/// </summary>
internal static class ShapeStrength
{
    /// <summary>Fewer lots than this tell chance and difference apart no better than the default.</summary>
    public const int FewestLots = 6;

    /// <summary>Bulbs with a diameter that a lot takes to speak here.</summary>
    public const int FewestBulbs = 25;

    private const double Least = 20, Most = 5000, PriorLogSd = 0.5;

    // Points and half width, in standard errors, of the grid for ln g's mean and for ln of its sd.
    private const int MeanPoints = 5, SpreadPoints = 3;
    private const double HalfWidth = 2;

    // Of ln of the strength: far finer than it is known.
    private const double Enough = 0.01;

    /// <summary>The strength; the default where too few lots are measured. Its ln leans to that of the default with an sd of a half, as the sds between lots do.</summary>
    public static double Of(IReadOnlyList<MeasuredLot> lots, IReadOnlyList<SizeClass> sizes, double otherwise)
    {
        if (lots.Count < FewestLots)
            return otherwise;
        double[][][] expected = [.. lots.Select(lot => Grid(lot, sizes))];
        double low = Math.Log(Least), high = Math.Log(Most), ratio = (Math.Sqrt(5) - 1) / 2;
        while (high - low > Enough)
        {
            double a = high - ratio * (high - low), b = low + ratio * (high - low);
            if (Likelihood(a) > Likelihood(b))
                high = b;
            else
                low = a;
        }

        // One sd under the likeliest: a shape trusted too much makes bands too narrow, one trusted too little costs hardly any error.
        double best = (low + high) / 2, enough = Likelihood(best) - 0.5;
        (low, high) = (Math.Log(Least), best);
        while (high - low > Enough)
        {
            double middle = (low + high) / 2;
            if (Likelihood(middle) > enough)
                high = middle;
            else
                low = middle;
        }

        return Math.Exp(high);

        double Likelihood(double ln)
        {
            double away = ln - Math.Log(otherwise), sum = -away * away / (2 * PriorLogSd * PriorLogSd);
            for (int i = 0; i < lots.Count; i++)
                sum += LogOfMean([.. expected[i].Select(shares => ClassCountPooling.LogMarginal(lots[i].Counts, shares, Math.Exp(ln)))]);
            return sum;
        }
    }

    private static double LogOfMean(double[] logs)
    {
        double most = logs.Max();
        return most + Math.Log(logs.Average(l => Math.Exp(l - most)));
    }

    private static double[][] Grid(MeasuredLot lot, IReadOnlyList<SizeClass> sizes)
    {
        double bulbs = lot.Counts.Sum();
        var grid = new List<double[]>(MeanPoints * SpreadPoints);
        for (int m = 0; m < MeanPoints; m++)
        {
            for (int s = 0; s < SpreadPoints; s++)
            {
                double mu = lot.Mu + lot.Sigma / Math.Sqrt(bulbs) * HalfWidth * (2.0 * m / (MeanPoints - 1) - 1);
                double sigma = lot.Sigma * Math.Exp(HalfWidth / Math.Sqrt(2 * bulbs) * (2.0 * s / (SpreadPoints - 1) - 1));
                grid.Add(Shares(lot, mu, sigma, sizes));
            }
        }

        return [.. grid];
    }

    // By count: under, each class, over.
    private static double[] Shares(MeasuredLot lot, double mu, double sigma, IReadOnlyList<SizeClass> sizes)
    {
        var shares = new double[sizes.Count + 2];
        double scatter = Math.Max(0.01, lot.Law.S), each = 1.0 / lot.Shape.Z.Length;
        double[] limits = [.. sizes.Select(s => Ln(s.MinMm)), Ln(sizes[^1].MaxMm ?? double.PositiveInfinity)];
        foreach (double z in lot.Shape.Z)
        {
            double ln = mu + sigma * z, above = 1;
            for (int c = 0; c <= sizes.Count; c++)
            {
                double next = LotCurve.AtLeast(limits[c] - ln, scatter);
                shares[c] += each * (above - next);
                above = next;
            }

            shares[^1] += each * above;
        }

        // A class that the grid's law all but rules out is still thought of: a hundredth of a bulb in a hundred.
        const double Floor = 1e-4;
        for (int c = 0; c < shares.Length; c++)
            shares[c] = (shares[c] + Floor) / (1 + Floor * shares.Length);
        return shares;

        double Ln(double mm) => lot.Law.A + lot.Law.B * Math.Log(Math.Max(double.Epsilon, mm));
    }
}
