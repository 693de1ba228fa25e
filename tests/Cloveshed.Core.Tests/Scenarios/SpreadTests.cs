using Cloveshed.Core.Scenarios;
using MathNet.Numerics.Distributions;
using MathNet.Numerics.Statistics;

namespace Cloveshed.Core.Tests.Scenarios;

/// <summary>Quantiles, the worst tenth and paired differences against closed forms, another library's words and a published example.</summary>
public class SpreadTests
{
    [Fact]
    public void Quantiles_of_a_ladder_are_where_straight_lines_between_its_rungs_say()
    {
        // Definition 7 of Hyndman and Fan (1996): the quantile of 1..n is 1 + (n - 1) p.
        Spread spread = Spread.Of([.. Enumerable.Range(1, 101).Select(i => (double)i)]);
        Assert.Equal((11, 51, 91), (spread.P10, spread.P50, spread.P90));
        Assert.Equal(51, spread.Mean);
        // The worst tenth of 101 is ten values and a tenth of the eleventh.
        Assert.Equal((55 + 0.1 * 11) / 10.1, spread.WorstTenth, 12);
    }

    [Fact]
    public void Quantiles_agree_with_the_median_and_with_the_library_s_other_way_in()
    {
        double[] values = [.. Enumerable.Range(0, 57).Select(i => Math.Sin(i * 12.9898) * 43758.5453 % 1)];
        Spread spread = Spread.Of(values);
        Assert.Equal(values.Median(), spread.P50, 12);
        Assert.Equal(values.QuantileCustom(0.1, QuantileDefinition.Excel), spread.P10, 12);
        Assert.Equal(values.QuantileCustom(0.9, QuantileDefinition.Excel), spread.P90, 12);
    }

    [Fact]
    public void The_worst_part_of_a_normal_is_its_density_over_the_part()
    {
        // Conditional value at risk of a standard normal: -phi(z) / part (Rockafellar and Uryasev, J. Risk 2 (2000) 21, section 4, from memory).
        double[] sorted = [.. Enumerable.Range(0, 200_000).Select(i => Normal.InvCDF(0, 1, (i + 0.5) / 200_000))];
        Assert.Equal(-Normal.PDF(0, 1, Normal.InvCDF(0, 1, 0.1)) / 0.1, Spread.WorstMean(sorted, 0.1), 4);
        Assert.Equal(0, Spread.WorstMean(sorted, 1), 10);
    }

    [Fact]
    public void The_worst_part_of_a_uniform_is_half_the_part() =>
        Assert.Equal(0.05, Spread.WorstMean([.. Enumerable.Range(0, 1000).Select(i => (i + 0.5) / 1000)], 0.1), 12);

    [Fact]
    public void A_part_of_nothing_or_of_more_than_all_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Spread.WorstMean([1], 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => Spread.WorstMean([1], 1.1));
        Assert.Throws<ArgumentException>(() => Spread.Of([]));
    }

    [Fact]
    public void Student_s_sleepers_differ_as_he_found()
    {
        // Hours of sleep gained by ten patients with two drugs (Student, Biometrika 6 (1908) 1): mean difference 1.58 h; interval of the paired t test as
        // statistics texts print it, 0.70 to 2.46.
        double[] first = [0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0.0, 2.0], second = [1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4];
        PairedDifference difference = PairedDifference.Of(second, first);
        Assert.Equal(1.58, difference.Mean, 10);
        Assert.Equal(0.7001142, difference.Low95, 6);
        Assert.Equal(2.4598858, difference.High95, 6);
        Assert.Equal(0.9, difference.ShareBetter);
    }

    [Fact]
    public void One_pair_is_no_difference() => Assert.Throws<ArgumentException>(() => PairedDifference.Of([1], [2]));
}
