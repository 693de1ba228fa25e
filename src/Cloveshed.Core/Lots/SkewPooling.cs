namespace Cloveshed.Core.Lots;

/// <summary>
/// How much more skewed than its variety a lot's ln g is, pulled toward not at all by B = A/(A + V): V = 6/n is the error of a sample's own
/// skewness (of normal values; R. A. Fisher), A the mean of (difference^2 - V) over the lots sampled. Lots of one variety differ by how many
/// plants stayed small and by how the largest end; the mean and the spread do not tell it.
/// </summary>
internal sealed class SkewPooling
{
    private const int FewestLots = 6, FewestBulbs = 25;

    // The expansion that a shape is skewed by folds over beyond this.
    private const double Most = 1;

    private readonly (double Skew, double Variance)[] skews;

    public SkewPooling(LotEvidence[] lots, BulbShape[] shapes)
    {
        (double Away, double V)?[] seen =
        [
            .. lots.Select(l => l.Weighed >= FewestBulbs ? (BulbShape.SkewnessOf(l.Logs) - shapes[l.Group].Skewness, 6.0 / l.Weighed) : ((double, double)?)null),
        ];
        (double Away, double V)[] told = [.. seen.OfType<(double, double)>()];
        // Fewer lots cannot tell; then shapes are taken to be alike.
        double between = told.Length < FewestLots ? 0 : Math.Max(0, told.Average(t => t.Away * t.Away - t.V));
        skews = [.. seen.Select(s => s is { } t && between > 0
            ? (Math.Clamp(t.Away * between / (t.V + between), -Most, Most), t.V * between / (t.V + between))
            : (0.0, between))];
    }

    /// <summary>The lot's skewness beside its variety's, and the variance of that.</summary>
    public (double Skew, double Variance) Of(int lot) => skews[lot];
}
