using Cloveshed.Core.Fits;

namespace Cloveshed.Core.Tests.Fits;

/// <summary>
/// NIST/ITL Statistical Reference Datasets, Longley (linear, of higher difficulty: its columns nearly depend on each other, condition 4.9e9):
/// certified estimates, standard errors and residual sd, https://www.itl.nist.gov/div898/strd/lls/data/Longley.shtml ; a work of the US
/// government, in the public domain. Data of J. W. Longley, J. Amer. Stat. Assoc. 62 (1967) 819.
/// </summary>
public class LongleyTests
{
    private static readonly double[] Y = [60323, 61122, 60171, 61187, 63221, 63639, 64989, 63761, 66019, 67857, 68169, 66513, 68655, 69564, 69331, 70551];

    private static readonly double[][] X =
    [
        [83.0, 234289, 2356, 1590, 107608, 1947], [88.5, 259426, 2325, 1456, 108632, 1948], [88.2, 258054, 3682, 1616, 109773, 1949], [89.5, 284599, 3351, 1650, 110929, 1950],
        [96.2, 328975, 2099, 3099, 112075, 1951], [98.1, 346999, 1932, 3594, 113270, 1952], [99.0, 365385, 1870, 3547, 115094, 1953], [100.0, 363112, 3578, 3350, 116219, 1954],
        [101.2, 397469, 2904, 3048, 117388, 1955], [104.6, 419180, 2822, 2857, 118734, 1956], [108.4, 442769, 2936, 2798, 120445, 1957], [110.8, 444546, 4681, 2637, 121950, 1958],
        [112.6, 482704, 3813, 2552, 123366, 1959], [114.2, 502601, 3931, 2514, 125368, 1960], [115.7, 518173, 4806, 2572, 127852, 1961], [116.9, 554894, 4007, 2827, 130081, 1962],
    ];

    private static readonly double[] Certified = [-3482258.63459582, 15.0618722713733, -0.0358191792925910, -2.02022980381683, -1.03322686717359, -0.0511041056535807, 1829.15146461355];

    private static readonly double[] Errors = [890420.383607373, 84.9149257747669, 0.0334910077722432, 0.488399681651699, 0.214274163161675, 0.226073200069370, 455.478499142212];

    /// <summary>Slopes by central differences know a column of a million to about ten digits, of which the condition takes most.</summary>
    [Fact]
    public void Columns_that_nearly_depend_on_each_other_keep_five_digits()
    {
        FitAnswer fit = CurveFit.Of(new FitQuestion(b => [.. X.Select((x, i) => b[0] + x.Zip(b.Skip(1), (value, slope) => value * slope).Sum() - Y[i])], new double[7]));
        Assert.Equal(FitEnd.Converged, fit.End);
        Assert.True(fit.Condition > 1e4);
        for (int j = 0; j < Certified.Length; j++)
        {
            Assert.Equal(1, fit.Parameters[j] / Certified[j], 1e-5);
            Assert.Equal(1, fit.StandardErrors[j] / Errors[j], 1e-5);
        }

        Assert.Equal(1, fit.ResidualSd / 304.854073561965, 1e-8);
        double mean = Y.Average();
        Assert.Equal(0.995479004577296, 1 - fit.SumOfSquares / Y.Sum(y => (y - mean) * (y - mean)), 1e-9);
    }
}
