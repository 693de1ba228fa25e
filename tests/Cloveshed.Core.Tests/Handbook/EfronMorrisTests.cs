using Cloveshed.Core.Lots;

namespace Cloveshed.Core.Tests.Handbook;

/// <summary>
/// The worked example of B. Efron and C. Morris, "Data analysis using Stein's estimator", J. Amer. Stat. Assoc. 70 (1975) 311:
/// eighteen batters' first 45 at-bats and the rest of their season (data as in the open data set EfronMorris of R's pscl).
/// </summary>
public class EfronMorrisTests
{
    private static readonly int[] Hits = [18, 17, 16, 15, 14, 14, 13, 12, 11, 11, 10, 10, 10, 10, 10, 9, 8, 7];

    private static readonly double[] Rest =
        [.346, .298, .276, .222, .273, .270, .263, .210, .269, .230, .264, .256, .303, .264, .226, .285, .316, .200];

    private static double Scale(double y) => Math.Sqrt(45) * Math.Asin(2 * y - 1);

    private static double Squares(IEnumerable<double> a, IEnumerable<double> b) => a.Zip(b, (x, y) => (x - y) * (x - y)).Sum();

    [Fact]
    public void Shrinkage_is_theirs_and_cuts_the_squared_error_from_17_57_to_5_00()
    {
        double[] y = [.. Hits.Select(h => Scale(h / 45.0))];
        double[] truth = [.. Rest.Select(Scale)];
        Shrinkage s = Shrinkage.Of(y, [.. y.Select(_ => 1.0)], new int[18], 1, defaultBetween: 99);

        Assert.True(s.Fitted);
        Assert.Equal(-3.31656, s.GroupMeans[0], 0.00001);
        double kept = (s.Means[0] - s.GroupMeans[0]) / (y[0] - s.GroupMeans[0]);
        Assert.Equal(0.20897, kept, 0.00001);
        Assert.Equal(17.57, Squares(y, truth), 0.01);
        Assert.Equal(5.00, Squares(s.Means, truth), 0.01);
    }

    [Fact]
    public void Shares_pulled_by_the_moment_estimate_cut_the_error_from_0753_to_0218()
    {
        // Beta-binomial moments on the same data: strength 368, error .0218 (recomputed from the data; the paper shrinks on the other scale).
        DefectSample[] seen = [.. Hits.Select(h => new DefectSample(45, h / 45.0, 1 - h / 45.0, 0))];
        DefectPooling pooled = DefectPooling.Of(seen, new int[18], 1, default, defaultStrength: 99);

        Assert.Equal(368, pooled.Strength, 0.5);
        Assert.Equal(.0753, Squares(seen.Select(s => s.Fresh), Rest), 0.0001);
        Assert.Equal(.0218, Squares(seen.Select(s => pooled.Joined(0, s).Fresh), Rest), 0.0001);
    }
}
