using Cloveshed.Pictures.Look;

namespace Cloveshed.Pictures.Tests.Look;

/// <summary>Colour as the standards compute it, written for the tests alone.</summary>
internal static class ColourScience
{
    /// <summary>OKLCH to linear-light sRGB. Matrices: CSS Color Module Level 4, section "Sample code for color conversions" (values from memory).</summary>
    public static (double R, double G, double B) Linear(Oklch colour)
    {
        (double l, double a, double b) = Oklab(colour);
        return LinearOf(l, a, b);
    }

    public static (double L, double A, double B) Oklab(Oklch c)
    {
        double hue = c.Hue * Math.PI / 180;
        return (c.Lightness / 100, c.Chroma * Math.Cos(hue), c.Chroma * Math.Sin(hue));
    }

    public static (double R, double G, double B) LinearOf(double lightness, double a, double b)
    {
        double l = Math.Pow(lightness + 0.3963377774 * a + 0.2158037573 * b, 3);
        double m = Math.Pow(lightness - 0.1055613458 * a - 0.0638541728 * b, 3);
        double s = Math.Pow(lightness - 0.0894841775 * a - 1.2914855480 * b, 3);
        return (
            Math.Clamp(4.0767416621 * l - 3.3077115913 * m + 0.2309699292 * s, 0, 1),
            Math.Clamp(-1.2684380046 * l + 2.6097574011 * m - 0.3413193965 * s, 0, 1),
            Math.Clamp(-0.0041960863 * l - 0.7034186147 * m + 1.7076147010 * s, 0, 1));
    }

    /// <summary>Linear sRGB to OKLab, the inverse of the above (same source).</summary>
    public static (double L, double A, double B) OklabOf((double R, double G, double B) c)
    {
        double l = Math.Cbrt(0.4122214708 * c.R + 0.5363325363 * c.G + 0.0514459929 * c.B);
        double m = Math.Cbrt(0.2119034982 * c.R + 0.6806995451 * c.G + 0.1073969566 * c.B);
        double s = Math.Cbrt(0.0883024619 * c.R + 0.2817188376 * c.G + 0.6299787005 * c.B);
        return (0.2104542553 * l + 0.7936177850 * m - 0.0040720468 * s, 1.9779984951 * l - 2.4285922050 * m + 0.4505937099 * s,
            0.0259040371 * l + 0.7827717662 * m - 0.8086757660 * s);
    }

    public static int Byte(double linear) => (int)Math.Round(255 * (linear <= 0.0031308 ? 12.92 * linear : 1.055 * Math.Pow(linear, 1 / 2.4) - 0.055));

    public static double LinearOf(int value) => value / 255.0 is var v && v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4);

    /// <summary>WCAG 2.2, definitions "relative luminance" and "contrast ratio".</summary>
    public static double Contrast((double R, double G, double B) one, (double R, double G, double B) other)
    {
        double a = 0.2126 * one.R + 0.7152 * one.G + 0.0722 * one.B;
        double b = 0.2126 * other.R + 0.7152 * other.G + 0.0722 * other.B;
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    /// <summary>
    /// How a colour looks to a dichromat: G. M. Machado, M. M. Oliveira and L. A. F. Fernandes, IEEE Trans. Vis. Comput. Graph.
    /// 15 (2009) 1291-1298, severity 1.0, on linear sRGB (matrices from memory; each row must sum to 1).
    /// </summary>
    public static readonly (string Name, double[][] Matrix)[] ColourBlindness =
    [
        ("protan", [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]]),
        ("deutan", [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]]),
        ("tritan", [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]]),
    ];

    public static (double R, double G, double B) Seen((double R, double G, double B) c, double[][] m)
    {
        double Row(int i) => Math.Clamp(m[i][0] * c.R + m[i][1] * c.G + m[i][2] * c.B, 0, 1);
        return (Row(0), Row(1), Row(2));
    }

    /// <summary>Euclidean distance in OKLab. About 0.02 is one just noticeable step (common practice, no source).</summary>
    public static double Distance((double R, double G, double B) one, (double R, double G, double B) other)
    {
        (double L, double A, double B) x = OklabOf(one);
        (double L, double A, double B) y = OklabOf(other);
        return Math.Sqrt(Math.Pow(x.L - y.L, 2) + Math.Pow(x.A - y.A, 2) + Math.Pow(x.B - y.B, 2));
    }
}
