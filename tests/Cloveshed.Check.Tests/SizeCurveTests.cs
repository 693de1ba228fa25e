using Cloveshed.Check.Rules;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Tests;

/// <summary>
/// shares.csv against the size curve of lots.csv. The class limits below are set so that they fall on round standard scores; the shares between
/// them are then differences of the normal distribution function as tabled in Abramowitz and Stegun, Handbook of Mathematical
/// Functions, table 26.1 (values from memory).
/// </summary>
public class SizeCurveTests
{
    private const double MeanG = 60;
    private const double Cv = 0.3;

    // P(z) of table 26.1.
    private const double Half = 0.5;
    private const double One = 0.8413447461;
    private const double OneAndHalf = 0.9331927987;
    private const double Two = 0.9772498681;

    private static readonly MassLaw Law = new(-6.5, 2.7, 0.12);

    [Theory]
    [InlineData(0, Half)]
    [InlineData(1, One)]
    [InlineData(1.5, OneAndHalf)]
    [InlineData(2, Two)]
    [InlineData(-1, 1 - One)]
    [InlineData(-2, 1 - Two)]
    public void The_normal_distribution_is_that_of_the_table(double z, double p) => Assert.Equal(p, SizeCurve.StandardNormal(z), 9);

    [Fact]
    public void Shares_between_round_standard_scores_are_those_of_the_table()
    {
        Window[] windows = [new("S", At(-2), At(-1)), new("M", At(-1), At(1)), new("L", At(1), At(1.5)), new("XL", At(1.5), null)];
        double[] shares = SizeCurve.Shares(MeanG, Cv, Law, windows)!;
        Assert.Equal([Two - One, (2 * One) - 1, OneAndHalf - One, 1 - OneAndHalf], shares, (a, b) => Math.Abs(a - b) < 1e-9);
    }

    /// <summary>
    /// From the definition instead of the closed form: bulbs counted by the lognormal of mean_g and cv, each weighed, its diameter spread
    /// about the law; the share is grams in the window over all grams. Integrated on a grid.
    /// </summary>
    [Fact]
    public void Shares_are_grams_in_the_window_over_all_grams()
    {
        const double low = 45;
        const double high = 55;
        double sigma = Math.Sqrt(Math.Log(1 + (Cv * Cv)));
        double mu = Math.Log(MeanG) - (sigma * sigma / 2);
        double within = 0;
        double all = 0;
        for (double z = -8; z <= 8; z += 0.01)
        {
            double grams = Math.Exp(mu + (sigma * z)) * Math.Exp(-z * z / 2);
            for (double e = -6; e <= 6; e += 0.02)
            {
                double weighed = grams * Math.Exp(-e * e / 2);
                double mm = Math.Exp((mu + (sigma * z) - Law.A + (Law.S * e)) / Law.B);
                all += weighed;
                within += mm >= low && mm < high ? weighed : 0;
            }
        }

        double share = Assert.Single(SizeCurve.Shares(MeanG, Cv, Law, [new("M", low, high)])!);
        Assert.Equal(within / all, share, 3);
    }

    [Theory]
    [InlineData(0, 0.3, 2.7)]
    [InlineData(-60, 0.3, 2.7)]
    [InlineData(60, -0.1, 2.7)]
    [InlineData(60, 0.3, 0)]
    public void What_is_no_size_curve_is_not_recomputed(double mean, double cv, double b) =>
        Assert.Null(SizeCurve.Shares(mean, cv, new MassLaw(-6.5, b, 0.12), [new("M", 45, 55)]));

    [Fact]
    public void Bulbs_all_alike_fall_into_one_class()
    {
        var law = new MassLaw(Math.Log(60) - (2 * Math.Log(50)), 2, 0);
        Assert.Equal([0, 1, 0], SizeCurve.Shares(60, 0, law, [new("M", 40, 49), new("L", 49, 52), new("XL", 52, null)])!);
    }

    [Fact]
    public void Honest_shares_of_bulbs_and_cloves_hold() => Assert.Equal([], Curved(unboundedLast: true).Check().Breaches);

    [Fact]
    public void Above_a_bounded_last_class_is_under() => Assert.Equal([], Curved(unboundedLast: false).Check().Breaches);

    [Fact]
    public void Above_a_bounded_last_class_is_not_of_that_class() =>
        Assert.Contains(Curved(true).ChangeSeason("sizes.csv", Mm(1.5) + ",\n", $"{Mm(1.5)},{Mm(2)}\n").Check().Breaches, breach => breach.Rule == "shares-curve");

    [Theory]
    [InlineData("L1,bulb class,M,", "L1,bulb class,L,")]
    [InlineData("L1,clove grade,small,", "L1,clove grade,big,")]
    public void A_share_moved_to_another_class_is_a_breach(string from, string to) =>
        Assert.Equal(["shares-curve", "shares-curve"], Moved(from, to).Check().Breaches.Select(breach => breach.Rule));

    [Theory]
    [InlineData("L1,bulb class,M,", "L1,bulb class,L,")]
    [InlineData("L1,clove grade,small,", "L1,clove grade,big,")]
    public void Where_the_lot_leaves_mean_g_open_only_the_sum_is_checked(string from, string to) =>
        Assert.Equal([], Moved(from, to).ChangeSeason("lots.csv", ",60,0.3,", ",,0.3,").Check().Breaches);

    private static Folders Moved(string from, string to)
    {
        Folders folders = Curved(true);
        string[] lines = folders.AnswerText("shares.csv").Split('\n');
        string less = lines.Single(line => line.StartsWith(from, StringComparison.Ordinal));
        string more = lines.Single(line => line.StartsWith(to, StringComparison.Ordinal));
        return folders.Change("shares.csv", less, Plus(less, -0.001)).Change("shares.csv", more, Plus(more, 0.001));
    }

    // By hand for this lot: s1^2 = ln 1.09; ln mm has the mean (ln 60 + s1^2/2 + 6.5)/2.7 and the sd sqrt(s1^2 + 0.12^2)/2.7.
    private static double At(double z)
    {
        double variance = Math.Log(1.09);
        return Math.Exp(((Math.Log(60) + (variance / 2) + 6.5) / 2.7) + (z * Math.Sqrt(variance + 0.0144) / 2.7));
    }

    // Cloves: mean 60 x 0.85 / 10 = 5.1 g, cv 0.4, ln g = -5 + 2.5 ln mm, sd 0.1.
    private static double CloveAt(double z)
    {
        double variance = Math.Log(1.16);
        return Math.Exp(((Math.Log(5.1) + (variance / 2) + 5) / 2.5) + (z * Math.Sqrt(variance + 0.01) / 2.5));
    }

    private static string Mm(double z) => Folders.Figure(At(z));

    private static string Plus(string row, double more)
    {
        int comma = row.LastIndexOf(',');
        return row[..(comma + 1)] + Folders.Figure(double.Parse(row[(comma + 1)..], System.Globalization.CultureInfo.InvariantCulture) + more);
    }

    private static Folders Curved(bool unboundedLast) => new Folders()
        .Season("sizes.csv", $"M,{Mm(-1)},{Mm(1)}", $"L,{Mm(1)},{Mm(1.5)}", $"XL,{Mm(1.5)},{(unboundedLast ? "" : Mm(2))}")
        .Season("clove-grades.csv", $"small,{Folders.Figure(CloveAt(-1))},{Folders.Figure(CloveAt(0))}", $"big,{Folders.Figure(CloveAt(0))},")
        .Season("varieties.csv", "Ridge,-6.5,2.7,0.12,medium,10,0.4,-5,2.5,0.1")
        .Season("places.csv", "yard,open,100,0.5,,,")
        .Season("lots.csv", "L1,yard,Ridge,F1,2026-07-20,10,1000,0.8,0.15,,,,60,0.3,,")
        .Season("yields.csv", "fresh,0.95", "crack,0.85")
        .InYard()
        .Answer(
            "shares.csv", Share("bulb class,M", (2 * One) - 1), Share("bulb class,L", OneAndHalf - One),
            Share("bulb class,XL", unboundedLast ? 1 - OneAndHalf : Two - OneAndHalf),
            Share("bulb class,under", unboundedLast ? 1 - One : 1 - One + 1 - Two),
            Share("clove grade,small", One - Half), Share("clove grade,big", Half), Share("clove grade,ungraded", 1 - One))
        .Answer("as-is.csv", "discarded,@0,L1,p1,yard,1000,1000")
        .Summary(0);

    private static string Share(string name, double share) => $"L1,{name},{Folders.Figure(share)}";
}
