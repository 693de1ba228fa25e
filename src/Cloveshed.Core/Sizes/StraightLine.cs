using MathNet.Numerics.Distributions;

namespace Cloveshed.Core.Sizes;

/// <summary>
/// y = Intercept + Slope x by least squares over points that each occurred so often, with what its bands need. Sums are taken
/// about the means, so that close-lying x lose no digits.
/// </summary>
/// <param name="Count">Points.</param>
/// <param name="ResidualSd">With n - 2 degrees of freedom; 0 of fewer than three points.</param>
/// <param name="MeanX">Mean of x.</param>
/// <param name="SquaresX">Sum of squares of x about its mean.</param>
/// <param name="RSquared">Share of the squares of y that the line takes.</param>
public sealed record StraightLine(double Intercept, double Slope, double Count, double ResidualSd, double MeanX, double SquaresX, double RSquared)
{
    /// <summary>Standard error of the slope.</summary>
    public double SlopeError => ResidualSd / Math.Sqrt(SquaresX);

    /// <summary>Standard error of the intercept.</summary>
    public double InterceptError => ResidualSd * Math.Sqrt(1 / Count + MeanX * MeanX / SquaresX);

    /// <summary>The line at x.</summary>
    public double At(double x) => Intercept + Slope * x;

    /// <summary>Band that holds one further point at x with this probability (Student's t with n - 2 degrees of freedom).</summary>
    public (double Low, double High) Band(double x, double probability)
    {
        double t = StudentT.InvCDF(0, 1, Math.Max(1, Count - 2), (1 + probability) / 2);
        double half = t * ResidualSd * Math.Sqrt(1 + 1 / Count + (x - MeanX) * (x - MeanX) / SquaresX);
        return (At(x) - half, At(x) + half);
    }

    /// <summary>Fits; null where fewer than two x differ.</summary>
    public static StraightLine? Fit(IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double>? counts = null)
    {
        double n = 0, meanX = 0, meanY = 0;
        for (int i = 0; i < x.Count; i++)
        {
            double w = counts?[i] ?? 1;
            n += w;
            meanX += w * x[i];
            meanY += w * y[i];
        }

        if (n <= 0)
            return null;
        (meanX, meanY) = (meanX / n, meanY / n);
        double xx = 0, xy = 0, yy = 0;
        for (int i = 0; i < x.Count; i++)
        {
            double w = counts?[i] ?? 1, dx = x[i] - meanX, dy = y[i] - meanY;
            xx += w * dx * dx;
            xy += w * dx * dy;
            yy += w * dy * dy;
        }

        if (xx <= 0)
            return null;
        double slope = xy / xx, intercept = meanY - slope * meanX, residual = 0;
        for (int i = 0; i < x.Count; i++)
        {
            double e = y[i] - intercept - slope * x[i];
            residual += (counts?[i] ?? 1) * e * e;
        }

        return new(intercept, slope, n, n > 2 ? Math.Sqrt(residual / (n - 2)) : 0, meanX, xx, yy > 0 ? 1 - residual / yy : 1);
    }
}
