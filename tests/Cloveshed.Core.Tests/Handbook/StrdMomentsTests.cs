using Cloveshed.Core.Sizes;

namespace Cloveshed.Core.Tests.Handbook;

/// <summary>
/// NIST/ITL Statistical Reference Datasets (StRD), univariate and linear, https://www.itl.nist.gov/div898/strd/ : a work of the US
/// government, in the public domain. Certified means, sds and line, and the data as the files of that name print them.
/// </summary>
public class StrdMomentsTests
{
    private static readonly double[] Michelso =
    [
        299.85, 299.74, 299.90, 300.07, 299.93, 299.85, 299.95, 299.98, 299.98, 299.88, 300.00, 299.98, 299.93, 299.65, 299.76, 299.81, 300.00, 300.00, 299.96,
        299.96, 299.96, 299.94, 299.96, 299.94, 299.88, 299.80, 299.85, 299.88, 299.90, 299.84, 299.83, 299.79, 299.81, 299.88, 299.88, 299.83, 299.80, 299.79,
        299.76, 299.80, 299.88, 299.88, 299.88, 299.86, 299.72, 299.72, 299.62, 299.86, 299.97, 299.95, 299.88, 299.91, 299.85, 299.87, 299.84, 299.84, 299.85,
        299.84, 299.84, 299.84, 299.89, 299.81, 299.81, 299.82, 299.80, 299.77, 299.76, 299.74, 299.75, 299.76, 299.91, 299.92, 299.89, 299.86, 299.88, 299.72,
        299.84, 299.85, 299.85, 299.78, 299.89, 299.84, 299.78, 299.81, 299.76, 299.81, 299.79, 299.81, 299.82, 299.85, 299.87, 299.87, 299.81, 299.74, 299.81,
        299.94, 299.95, 299.80, 299.81, 299.87,
    ];

    private static readonly double[] Lew =
    [
        -213, -564, -35, -15, 141, 115, -420, -360, 203, -338, -431, 194, -220, -513, 154, -125, -559, 92, -21, -579, -52, 99, -543, -175, 162, -457, -346, 204,
        -300, -474, 164, -107, -572, -8, 83, -541, -224, 180, -420, -374, 201, -236, -531, 83, 27, -564, -112, 131, -507, -254, 199, -311, -495, 143, -46, -579, -90,
        136, -472, -338, 202, -287, -477, 169, -124, -568, 17, 48, -568, -135, 162, -430, -422, 172, -74, -577, -13, 92, -534, -243, 194, -355, -465, 156, -81, -578,
        -64, 139, -449, -384, 193, -198, -538, 110, -44, -577, -6, 66, -552, -164, 161, -460, -344, 205, -281, -504, 134, -28, -576, -118, 156, -437, -381, 200,
        -220, -540, 83, 11, -568, -160, 172, -414, -408, 188, -125, -572, -32, 139, -492, -321, 205, -262, -504, 142, -83, -574, 0, 48, -571, -106, 137, -501, -266,
        190, -391, -406, 194, -186, -553, 83, -13, -577, -49, 103, -515, -280, 201, 300, -506, 131, -45, -578, -80, 138, -462, -361, 201, -211, -554, 32, 74, -533,
        -235, 187, -372, -442, 182, -147, -566, 25, 68, -535, -244, 194, -351, -463, 174, -125, -570, 15, 72, -550, -190, 172, -424, -385, 198, -218, -536, 96,
    ];

    private static readonly double[] Mavro =
    [
        2.00180, 2.00170, 2.00180, 2.00190, 2.00180, 2.00170, 2.00150, 2.00140, 2.00150, 2.00150, 2.00170, 2.00180, 2.00180, 2.00190, 2.00190, 2.00210, 2.00200,
        2.00160, 2.00140, 2.00130, 2.00130, 2.00150, 2.00150, 2.00160, 2.00150, 2.00140, 2.00130, 2.00140, 2.00150, 2.00140, 2.00150, 2.00160, 2.00150, 2.00160,
        2.00190, 2.00200, 2.00200, 2.00210, 2.00220, 2.00230, 2.00240, 2.00250, 2.00270, 2.00260, 2.00260, 2.00260, 2.00270, 2.00260, 2.00250, 2.00240,
    ];

    private static readonly double[] NorrisY = [0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3, 0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3,
        0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2];

    private static readonly double[] NorrisX = [0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4, 0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3,
        0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5];

    /// <summary>1001 numbers: middle, then middle - 0.1 and middle + 0.1 in turn, as NumAcc2 to 4 are laid out.</summary>
    private static double[] NumAcc(double middle) => [middle, .. Enumerable.Range(0, 1000).Select(k => k % 2 == 0 ? middle - 0.1 : middle + 0.1)];

    public static TheoryData<string, double, double, double> Certified => new()
    {
        { "NumAcc1", 10000002, 1, 1e-15 }, { "NumAcc2", 1.2, 0.1, 1e-12 }, { "NumAcc3", 1000000.2, 0.1, 1e-8 }, { "NumAcc4", 10000000.2, 0.1, 1e-7 },
        { "Michelso", 299.8524, 0.0790105478190518, 1e-11 }, { "Lew", -177.435, 277.332168044316, 1e-13 }, { "Mavro", 2.001856, 0.000429123454003053, 1e-11 },
    };

    /// <summary>NumAcc4 keeps nine digits of its sd in double precision at best.</summary>
    [Theory, MemberData(nameof(Certified))]
    public void Mean_and_sd_are_the_certified_ones(string set, double mean, double sd, double relative)
    {
        double[] data = set switch
        {
        "NumAcc1" => [10000001, 10000003, 10000002], "NumAcc2" => NumAcc(1.2), "NumAcc3" => NumAcc(1000000.2), "NumAcc4" => NumAcc(10000000.2),
        "Michelso" => Michelso, "Lew" => Lew, _ => Mavro,
        };
        Moments one = default, two = default;
        foreach (double x in data.Take(data.Length / 3))
        one.Add(x);
        foreach (double x in data.Skip(data.Length / 3))
        two.Add(x);
        one.Join(two);
        Assert.Equal(data.Length, one.Count);
        Assert.Equal(1, one.Mean / mean, 1e-14);
        Assert.Equal(1, one.Sd / sd, relative);
    }

    [Fact]
    public void The_line_of_Norris_is_the_certified_one()
    {
        StraightLine line = StraightLine.Fit(NorrisX, NorrisY)!;
        Assert.Equal(36, line.Count);
        Assert.Equal(1, line.Intercept / -0.262323073774029, 1e-11);
        Assert.Equal(1, line.Slope / 1.00211681802045, 1e-13);
        Assert.Equal(1, line.InterceptError / 0.232818234301152, 1e-11);
        Assert.Equal(1, line.SlopeError / 0.000429796848199937, 1e-11);
        Assert.Equal(1, line.ResidualSd / 0.884796396144373, 1e-11);
        Assert.Equal(0.999993745883712, line.RSquared, 1e-14);
    }
}
