using Cloveshed.DemoSeason.Text;

namespace Cloveshed.DemoSeason.Basin;

/// <summary>
/// A variety of the basin, all of them invented. The bulb law is ln g = MassA + MassB ln mm with residual MassS; the clove law
/// is over the width in mm. MeanG is the usual mean bulb, which the season files do not show.
/// </summary>
public sealed record Variety(
    string Name, double MassA, double MassB, double MassS, string Keeps, double ClovesPerBulb, double CloveCv,
    double CloveA, double CloveB, double CloveS, double MeanG, double Cv, double CrackShare, double WasteShare);

public static class Varieties
{
    // Bulb laws: derived from a log-log fit to the counts per pound of a provincial size table (BC Ministry of Agriculture,
    // "Garlic (organic)", p. 10): m = 0.00153 d^2.646, so a = -6.482; each variety a little apart from it.
    // Clove laws: through 1.8 g at 10.4 mm (J. Food Sci. Technol. 51 (2014) 3083-3093), exponent by common practice, no source.
    public static readonly Variety EarlyPale = new("Early Pale", -6.482, 2.646, 0.10, "medium", 12.0, 0.48, -5.50, 2.60, 0.12, 58, 0.36, 0.13, 0.050);
    public static readonly Variety Streak = new("Streak", -6.355, 2.620, 0.11, "short", 9.5, 0.40, -5.46, 2.60, 0.11, 47, 0.35, 0.16, 0.060);
    public static readonly Variety KilnRed = new("Kiln Red", -6.420, 2.630, 0.09, "medium", 10.5, 0.44, -5.48, 2.60, 0.12, 52, 0.37, 0.14, 0.050);
    public static readonly Variety TallViolet = new("Tall Violet", -6.300, 2.600, 0.12, "medium", 11.0, 0.46, -5.50, 2.61, 0.13, 55, 0.40, 0.20, 0.070);
    public static readonly Variety LatePale = new("Late Pale", -6.520, 2.655, 0.08, "long", 14.0, 0.50, -5.53, 2.61, 0.12, 62, 0.37, 0.12, 0.040);
    public static readonly Variety BarnWhite = new("Barn White", -6.560, 2.660, 0.09, "long", 15.0, 0.52, -5.52, 2.60, 0.13, 54, 0.41, 0.15, 0.045);

    public static readonly IReadOnlyList<Variety> All = [EarlyPale, Streak, KilnRed, TallViolet, LatePale, BarnWhite];

    public static string File()
    {
        Table t = new(
            "variety", "mass_a", "mass_b", "mass_s", "keeps", "cloves_per_bulb", "clove_cv", "clove_a", "clove_b", "clove_s");
        foreach (Variety v in All)
        {
            t.Row(
                v.Name, (decimal)v.MassA, (decimal)v.MassB, (decimal)v.MassS, v.Keeps, (decimal)v.ClovesPerBulb, (decimal)v.CloveCv,
                (decimal)v.CloveA, (decimal)v.CloveB, (decimal)v.CloveS);
        }

        return t.ToString();
    }
}
