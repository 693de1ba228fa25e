using System.Globalization;

namespace Cloveshed.Pictures.Look;

/// <summary>A colour in OKLCH as CSS writes it: lightness in percent, chroma, hue in degrees.</summary>
public readonly record struct Oklch(double Lightness, double Chroma, double Hue)
{
    public string ToCss() => string.Create(CultureInfo.InvariantCulture, $"oklch({Lightness}% {Chroma} {Hue})");
}

/// <summary>A named colour of the look: its value on light and on dark ground.</summary>
public sealed record Token(string Name, Oklch Light, Oklch Dark);
