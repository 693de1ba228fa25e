using Cloveshed.DemoSeason.Draws;

namespace Cloveshed.Seasons.Tests.Demo;

public sealed class DrawTests
{
    [Fact]
    public void Bits_are_those_of_SplitMix64()
    {
        // Rosetta Code, "Pseudo-random numbers/Splitmix64": the first five integers of seed 1234567.
        Draw draw = new(1234567);
        Assert.Equal(
            [6457827717110365317UL, 3203168211198807973UL, 9817491932198370423UL, 4593380528125082431UL, 16408922859458223821UL],
            [draw.Bits(), draw.Bits(), draw.Bits(), draw.Bits(), draw.Bits()]);
    }

    [Fact]
    public void Shares_of_seed_987654321_fall_as_published()
    {
        // Same page: 100,000 draws of seed 987654321, times five and floored, count 20027, 19892, 20073, 19978, 20030.
        Draw draw = new(987654321);
        int[] counts = new int[5];
        for (int i = 0; i < 100_000; i++)
        {
            counts[(int)(draw.Share() * 5)]++;
        }

        Assert.Equal([20027, 19892, 20073, 19978, 20030], counts);
    }

    [Fact]
    public void Logarithm_and_exponential_agree_with_the_platforms_to_fourteen_digits()
    {
        Draw draw = new(1);
        for (int i = 0; i < 200_000; i++)
        {
            double x = draw.Between(-30, 30);
            Assert.InRange(Steady.Exp(x) / Math.Exp(x), 1 - 1e-14, 1 + 1e-14);
            double y = Math.Exp(x);
            Assert.InRange(Steady.Ln(y) - Math.Log(y), -1e-14 * (1 + Math.Abs(x)), 1e-14 * (1 + Math.Abs(x)));
        }

        Assert.Equal(0, Steady.Ln(1));
        Assert.Equal(1, Steady.Exp(0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Steady.Ln(0));
    }

    [Fact]
    public void Normal_draws_have_the_moments_and_tails_of_a_normal()
    {
        Draw draw = new(2);
        const int n = 400_000;
        double[] z = [.. Enumerable.Range(0, n).Select(_ => draw.Normal(0, 1))];
        // Five standard errors of each figure; the tails are those of the standard normal table (1.96: 5 %, 2.576: 1 %).
        Assert.InRange(z.Average(), -5 / Math.Sqrt(n), 5 / Math.Sqrt(n));
        Assert.InRange(z.Average(v => v * v), 1 - (5 * Math.Sqrt(2.0 / n)), 1 + (5 * Math.Sqrt(2.0 / n)));
        Assert.InRange(z.Average(v => v * v * v * v), 3 - (5 * Math.Sqrt(96.0 / n)), 3 + (5 * Math.Sqrt(96.0 / n)));
        Assert.InRange(z.Count(v => Math.Abs(v) > 1.96) / (double)n, 0.048, 0.052);
        Assert.InRange(z.Count(v => Math.Abs(v) > 2.576) / (double)n, 0.0092, 0.0108);
    }

    [Fact]
    public void Whole_numbers_reach_both_ends_and_weights_are_kept()
    {
        Draw draw = new(3);
        int[] seen = [.. Enumerable.Range(0, 5000).Select(_ => draw.Whole(-1, 1))];
        Assert.Equal([-1, 0, 1], seen.Distinct().Order());
        int[] weighed = [.. Enumerable.Range(0, 40_000).Select(_ => draw.Weighted([1, 0, 3]))];
        Assert.Equal(0, weighed.Count(i => i == 1));
        Assert.InRange(weighed.Count(i => i == 2) / 40_000.0, 0.74, 0.76);
    }
}
