using Cloveshed.Pictures.Look;

namespace Cloveshed.Pictures.Tests.Look;

public class TokenTests
{
    /// <summary>Examples of CSS Color Module Level 4 for oklch() (from memory): the colours named beside the functions in its text.</summary>
    [Theory]
    [InlineData(40.101, 0.12332, 21.555, 0x7D, 0x23, 0x29)]
    [InlineData(59.686, 0.15619, 49.7694, 0xC6, 0x5D, 0x06)]
    [InlineData(0, 0, 0, 0, 0, 0)]
    [InlineData(100, 0, 0, 255, 255, 255)]
    public void Oklch_becomes_the_published_srgb(double l, double c, double h, int r, int g, int b)
    {
        (double R, double G, double B) linear = ColourScience.Linear(new Oklch(l, c, h));
        Assert.Equal((r, g, b), (ColourScience.Byte(linear.R), ColourScience.Byte(linear.G), ColourScience.Byte(linear.B)));
    }

    /// <summary>Black on white is 21 to 1 by the definition; #767676 is the lightest grey with 4.5 on white, #777777 misses it (widely published, from memory).</summary>
    [Theory]
    [InlineData(0x00, 21, 21)]
    [InlineData(0x76, 4.5, 4.55)]
    [InlineData(0x77, 4.4, 4.4999)]
    public void The_contrast_formula_gives_the_published_ratios(int grey, double least, double most)
    {
        double v = ColourScience.LinearOf(grey);
        Assert.InRange(ColourScience.Contrast((v, v, v), (1, 1, 1)), least - 1e-9, most + 1e-9);
    }

    [Fact]
    public void The_colour_blind_matrices_keep_white_white() =>
        Assert.All(ColourScience.ColourBlindness, kind => Assert.All(kind.Matrix, row => Assert.Equal(1, row.Sum(), 5)));

    public static TheoryData<string, string, bool> TextOnGround()
    {
        var data = new TheoryData<string, string, bool>();
        foreach (string text in new[] { "ink", "soft-ink", "streak" })
        {
            foreach (string ground in new[] { "paper", "sheet" })
            {
                data.Add(text, ground, false);
                data.Add(text, ground, true);
            }
        }
        return data;
    }

    /// <summary>WCAG 2.2, success criterion 1.4.3: text needs 4.5 to 1.</summary>
    [Theory, MemberData(nameof(TextOnGround))]
    public void Text_can_be_read_on_its_ground(string text, string ground, bool dark) =>
        Assert.True(Contrast(text, ground, dark) >= 4.5, $"{text} on {ground}: {Contrast(text, ground, dark):0.00}");

    public static TheoryData<string, bool> Shapes()
    {
        var data = new TheoryData<string, bool>();
        foreach (string shape in new[] { "open-edge", "cold-edge", "sealed-edge", "packing", "cracking", "seed", "warning", "streak", "soft-ink" })
        {
            data.Add(shape, false);
            data.Add(shape, true);
        }
        return data;
    }

    /// <summary>WCAG 2.2, success criterion 1.4.11: shapes that carry meaning need 3 to 1. Fills of threads have an edge that does.</summary>
    [Theory, MemberData(nameof(Shapes))]
    public void A_shape_stands_out_from_the_paper(string shape, bool dark) =>
        Assert.True(Contrast(shape, "paper", dark) >= 3, $"{shape}: {Contrast(shape, "paper", dark):0.00}");

    /// <summary>The shades behind the price numbers: ink on streak mixed into paper in OKLab, as pictures.css mixes it.</summary>
    [Theory]
    [InlineData(8)]
    [InlineData(18)]
    [InlineData(30)]
    [InlineData(44)]
    public void Prices_can_be_read_on_their_shade(int percent)
    {
        Assert.Contains($"color-mix(in oklab,var(--streak) {percent}%,var(--paper))", Stylesheet.Pictures, StringComparison.Ordinal);
        foreach (bool dark in new[] { false, true })
        {
            (double L, double A, double B) streak = ColourScience.Oklab(Value("streak", dark));
            (double L, double A, double B) paper = ColourScience.Oklab(Value("paper", dark));
            double s = percent / 100.0;
            var shade = ColourScience.LinearOf(s * streak.L + (1 - s) * paper.L, s * streak.A + (1 - s) * paper.A, s * streak.B + (1 - s) * paper.B);
            double contrast = ColourScience.Contrast(shade, ColourScience.Linear(Value("ink", dark)));
            Assert.True(contrast >= 4.5, $"{percent}% {(dark ? "dark" : "light")}: {contrast:0.00}");
        }
    }

    /// <summary>
    /// Pairs that stand side by side in one picture. Each also differs by pattern, shape, place or word; the distance makes it quick.
    /// Kinds of place have patterns (ticks, strokes), kinds of work have lanes and marks of their own shape.
    /// </summary>
    [Theory]
    [InlineData("open", "cold")]
    [InlineData("open", "sealed")]
    [InlineData("cold", "sealed")]
    [InlineData("packing", "cracking")]
    [InlineData("packing", "warning")]
    [InlineData("sealed", "packing")]
    [InlineData("cold", "packing")]
    [InlineData("soft-ink", "warning")]
    [InlineData("packing", "seed")]
    [InlineData("cracking", "seed")]
    [InlineData("cracking", "warning")]
    public void Pairs_side_by_side_stay_apart_for_colour_blind_readers(string one, string other)
    {
        foreach (bool dark in new[] { false, true })
        {
            foreach ((string name, double[][] matrix) in ColourScience.ColourBlindness)
            {
                double apart = ColourScience.Distance(
                    ColourScience.Seen(ColourScience.Linear(Value(one, dark)), matrix), ColourScience.Seen(ColourScience.Linear(Value(other, dark)), matrix));
                Assert.True(apart >= 0.05, $"{one} and {other} for {name} {(dark ? "dark" : "light")}: {apart:0.000}");
            }
        }
    }

    [Fact]
    public void Every_colour_of_the_stylesheets_is_a_token()
    {
        var used = System.Text.RegularExpressions.Regex.Matches(Stylesheet.Pictures, @"var\(--([a-z-]+)").Select(m => m.Groups[1].Value).ToHashSet();
        used.ExceptWith(["whole", "tall", "part", "edge"]);
        Assert.Empty(used.Except(Tokens.All.Select(t => t.Name)));
        Assert.DoesNotMatch("#[0-9a-fA-F]{3,6}[;}]", Stylesheet.Pictures);
    }

    private static double Contrast(string one, string other, bool dark) =>
        ColourScience.Contrast(ColourScience.Linear(Value(one, dark)), ColourScience.Linear(Value(other, dark)));

    private static Oklch Value(string name, bool dark) => Tokens.All.First(t => t.Name == name) is var token && dark ? token.Dark : token.Light;
}
