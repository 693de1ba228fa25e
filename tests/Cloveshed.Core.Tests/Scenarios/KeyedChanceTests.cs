using Cloveshed.Core.Scenarios;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Cloveshed.Core.Tests.Scenarios;

/// <summary>Chance by key: what is drawn hangs on the key alone, and is distributed as it says.</summary>
public class KeyedChanceTests
{
    private const int Draws = 20_000;

    private static double[] Many(Func<KeyedChance, double> figure) => [.. Enumerable.Range(0, Draws).Select(i => figure(KeyedChance.Of(5, i).For("lot").For("A")))];

    [Fact]
    public void The_same_key_gives_the_same_and_another_gives_another()
    {
        Assert.Equal(KeyedChance.Of(1, 2).For("lot").For("A").Uniform(), KeyedChance.Of(1, 2).For("lot").For("A").Uniform());
        double[] others =
        [
            KeyedChance.Of(1, 2).For("lot").For("A").Uniform(), KeyedChance.Of(1, 2).For("lot").For("B").Uniform(), KeyedChance.Of(1, 3).For("lot").For("A").Uniform(),
            KeyedChance.Of(2, 2).For("lot").For("A").Uniform(), KeyedChance.Of(1, 2).For("A").For("lot").Uniform(), KeyedChance.Of(1, 2).For("lot").For("A").For(1).Uniform(),
        ];
        Assert.Equal(others.Length, others.Distinct().Count());
    }

    [Fact]
    public void Uniforms_and_normals_have_their_moments_and_scenarios_are_not_alike()
    {
        double[] uniform = Many(c => c.Uniform()), normal = Many(c => c.Normal());
        // Five standard errors of the mean and of the variance.
        Assert.Equal(0.5, uniform.Mean(), 5 / Math.Sqrt(12.0 * Draws));
        Assert.Equal(1.0 / 12, uniform.Variance(), 5 * Math.Sqrt((1 / 80.0 - 1 / 144.0) / Draws));
        Assert.Equal(0, normal.Mean(), 5 / Math.Sqrt(Draws));
        Assert.Equal(1, normal.Variance(), 5 * Math.Sqrt(2.0 / Draws));
        Assert.Equal(0, Correlation.Pearson(uniform[..^1], uniform[1..]), 5 / Math.Sqrt(Draws));
        double[] sorted = [.. uniform.Order()];
        // Kolmogorov's statistic, 1.95 at one in a thousand.
        Assert.True(sorted.Select((u, i) => Math.Abs(u - (i + 0.5) / Draws)).Max() * Math.Sqrt(Draws) < 1.95);
    }

    [Fact]
    public void Shares_drawn_have_the_moments_of_a_Dirichlet()
    {
        // Means a, variances a (1 - a) / (A + 1), covariances -a b / (A + 1): N. L. Johnson and S. Kotz, Continuous Multivariate Distributions (1972), ch. 40, from memory.
        double[] shares = [0.5, 0.3, 0.15, 0.05, 0];
        const double Strength = 40;
        double[][] drawn = [.. Enumerable.Range(0, Draws).Select(i => KeyedChance.Of(9, i).Dirichlet(shares, Strength))];
        for (int k = 0; k < shares.Length; k++)
        {
            double variance = shares[k] * (1 - shares[k]) / (Strength + 1);
            Assert.Equal(shares[k], drawn.Select(d => d[k]).Mean(), 5 * Math.Sqrt(variance / Draws) + 1e-12);
            Assert.Equal(variance, drawn.Select(d => d[k]).Variance(), 0.08 * variance + 1e-12);
        }
        Assert.Equal(-0.5 * 0.3 / (Strength + 1), drawn.Select(d => d[0]).Covariance(drawn.Select(d => d[1])), 0.0004);
        Assert.All(drawn, d => Assert.Equal(1, d.Sum(), 12));
        // Each share by itself is a beta: a tenth lies under its quantile.
        double edge = Beta.InvCDF(Strength * 0.3, Strength * 0.7, 0.1);
        Assert.Equal(0.1, drawn.Count(d => d[1] < edge) / (double)Draws, 0.0106);
    }

    [Fact]
    public void Infinite_strength_gives_the_shares() => Assert.Equal([0.2, 0.8], KeyedChance.Of(1, 1).Dirichlet([0.2, 0.8], double.PositiveInfinity));
}
