using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots;

/// <summary>
/// What is assumed of a lot where neither a cell, nor a sample, nor another lot tells. Each number is our default unless
/// a source is named; none replaces a sample.
/// </summary>
/// <param name="MeanG">Bulb, g. 50: a published 14,000 lb/acre (Oregon seed growers) over about 127,000 plants, and the
/// 50.4 g of a "jumbo" bulb in the BC Ministry of Agriculture table; Taskopru garlic at 32.81 g is a smaller type.</param>
/// <param name="Cv">Bulb mass within a lot. No published value: a spread from 1.5 to 2.75 in. in one field.</param>
/// <param name="CrackShare">Sound but fails grade. No published pack-out was found.</param>
/// <param name="WasteShare">Neither grade nor cracker. No published value.</param>
/// <param name="ClovesPerBulb">Within the 10 to 16 of 5.0 to 6.5 cm types (NHRDF, India) and 8 to 12 of softneck (Ontario factsheet 09-011W).</param>
/// <param name="CloveCv">Clove mass within a lot: no published value.</param>
/// <param name="CloveG">Mass of a clove of <paramref name="CloveWidthMm"/>: 1.813 g (J. Food Sci. Technol. 51:3083).</param>
/// <param name="CloveWidthMm">10.4 mm, the same clove.</param>
/// <param name="CloveSlope">b of ln g = a + b ln mm: between 3 (same shape) and the shallower line through published means; our default.</param>
/// <param name="CloveScatter">Residual sd of ln g: our default.</param>
/// <param name="CrackKeptShare">Cloves per mass of bulbs cracked where yields.csv has no crack row: skins and plate about 16 to 20% by mass (review, weak).</param>
/// <param name="BetweenLotSd">Sd of a lot's mean of ln g among lots alike in variety, field and season: where a fit of it leans to.</param>
/// <param name="BetweenVarietySd">Sd between varieties, likewise.</param>
/// <param name="BetweenFieldSd">Sd between fields, likewise.</param>
/// <param name="BetweenSeasonSd">Sd between seasons, likewise.</param>
/// <param name="BetweenBinSd">Sd of ln g between bins of one lot, for what a sizer saw of some of them.</param>
/// <param name="SpreadStrength">Bulbs that the variety's spread of weights counts for, where it cannot be fitted.</param>
/// <param name="ShapeStrength">Bulbs that the variety's shape counts for beside a lot's own.</param>
/// <param name="NormalStrength">Bulbs that the normal shape counts for beside a variety's own.</param>
/// <param name="LawShiftSd">Sd of a lot's ln g around its variety's mass law, where too few lots have diameters.</param>
/// <param name="DefectStrength">Bulbs that the variety's defect shares count for, where it cannot be fitted.</param>
/// <param name="GivenMeanSd">How far a mean_g cell may be from the truth (sd of ln g), where no sample tells.</param>
/// <param name="GivenCvStrength">Bulbs that a cv cell counts for in the bands, where no sample tells.</param>
/// <param name="GivenShareStrength">Bulbs that a fresh_share or crack_share cell counts for, likewise.</param>
public sealed record LotDefaults(
    double MeanG, double Cv, double CrackShare, double WasteShare, double ClovesPerBulb, double CloveCv,
    double CloveG, double CloveWidthMm, double CloveSlope, double CloveScatter, double CrackKeptShare,
    double BetweenLotSd, double BetweenVarietySd, double BetweenFieldSd, double BetweenSeasonSd, double BetweenBinSd, double SpreadStrength, double ShapeStrength, double NormalStrength,
    double LawShiftSd, double DefectStrength,
    double GivenMeanSd, double GivenCvStrength, double GivenShareStrength)
{
    /// <summary>The shipped defaults.</summary>
    public static LotDefaults Default { get; } = new(
        MeanG: 50, Cv: 0.35, CrackShare: 0.15, WasteShare: 0.05, ClovesPerBulb: 12, CloveCv: 0.45,
        CloveG: 1.813, CloveWidthMm: 10.4, CloveSlope: 2.5, CloveScatter: 0.15, CrackKeptShare: 0.82,
        BetweenLotSd: 0.12, BetweenVarietySd: 0.2, BetweenFieldSd: 0.08, BetweenSeasonSd: 0.08, BetweenBinSd: SizerSeen.UsualBetweenBinSd, SpreadStrength: 20, ShapeStrength: 200, NormalStrength: 100,
        LawShiftSd: 0.03, DefectStrength: 50,
        GivenMeanSd: 0.05, GivenCvStrength: 50, GivenShareStrength: 100);

    /// <summary>What makes grade: the rest.</summary>
    public double FreshShare => 1 - CrackShare - WasteShare;

    /// <summary>The clove law through the typical clove.</summary>
    public MassLaw CloveLaw => new(Math.Log(CloveG) - CloveSlope * Math.Log(CloveWidthMm), CloveSlope, CloveScatter);

    /// <summary>Where the fit of the spread between lots leans to.</summary>
    public HistorySpread BetweenLots => new(BetweenVarietySd, BetweenFieldSd, BetweenSeasonSd, BetweenLotSd);

    /// <summary>Every number here, by the name that <see cref="DefaultTaken"/> uses.</summary>
    public static IReadOnlyList<Dial<LotDefaults>> Dials { get; } =
    [
        new("bulb_mean_g", d => d.MeanG, (d, v) => d with { MeanG = v }, "our default, no published value: 14,000 lb/acre over about 127,000 plants"),
        new("bulb_cv", d => d.Cv, (d, v) => d with { Cv = v }, "our default, no published value"),
        new("crack_share", d => d.CrackShare, (d, v) => d with { CrackShare = v }, "our default, no published value"),
        new("waste_share", d => d.WasteShare, (d, v) => d with { WasteShare = v }, "our default, no published value"),
        new("cloves_per_bulb", d => d.ClovesPerBulb, (d, v) => d with { ClovesPerBulb = v }, "within published ranges: NHRDF 10 to 16, Ontario factsheet 09-011W 8 to 12"),
        new("clove_cv", d => d.CloveCv, (d, v) => d with { CloveCv = v }, "our default, no published value"),
        new("clove_g", d => d.CloveG, (d, v) => d with { CloveG = v }, "J. Food Sci. Technol. 51:3083, a clove of 1.813 g"),
        new("clove_width_mm", d => d.CloveWidthMm, (d, v) => d with { CloveWidthMm = v }, "J. Food Sci. Technol. 51:3083, 10.4 mm wide"),
        new("clove_slope", d => d.CloveSlope, (d, v) => d with { CloveSlope = v }, "our default, no published value"),
        new("clove_scatter", d => d.CloveScatter, (d, v) => d with { CloveScatter = v }, "our default, no published value"),
        new("crack_kept_share", d => d.CrackKeptShare, (d, v) => d with { CrackKeptShare = v }, "our default; skins and plate 16 to 20% in a review"),
        new("between_lot_sd", d => d.BetweenLotSd, (d, v) => d with { BetweenLotSd = v }, "our default, no published value"),
        new("between_variety_sd", d => d.BetweenVarietySd, (d, v) => d with { BetweenVarietySd = v }, "our default, no published value"),
        new("between_field_sd", d => d.BetweenFieldSd, (d, v) => d with { BetweenFieldSd = v }, "our default, no published value"),
        new("between_season_sd", d => d.BetweenSeasonSd, (d, v) => d with { BetweenSeasonSd = v }, "our default, no published value"),
        new("between_bin_sd", d => d.BetweenBinSd, (d, v) => d with { BetweenBinSd = v }, "our default, no published value"),
        new("spread_strength", d => d.SpreadStrength, (d, v) => d with { SpreadStrength = v }, "our default, no published value"),
        new("shape_strength", d => d.ShapeStrength, (d, v) => d with { ShapeStrength = v }, "our default, no published value"),
        new("normal_strength", d => d.NormalStrength, (d, v) => d with { NormalStrength = v }, "our default, no published value"),
        new("law_shift_sd", d => d.LawShiftSd, (d, v) => d with { LawShiftSd = v }, "our default, no published value"),
        new("defect_strength", d => d.DefectStrength, (d, v) => d with { DefectStrength = v }, "our default, no published value"),
        new("given_mean_sd", d => d.GivenMeanSd, (d, v) => d with { GivenMeanSd = v }, "our default, no published value; for bands, and what the cell counts for in other lots"),
        new("given_cv_strength", d => d.GivenCvStrength, (d, v) => d with { GivenCvStrength = v }, "our default, no published value; for bands, and what the cell counts for in other lots"),
        new("given_share_strength", d => d.GivenShareStrength, (d, v) => d with { GivenShareStrength = v }, "our default, no published value; for bands, and what the cell counts for in other lots"),
    ];

    /// <summary>The names of all numbers here.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Dials.Select(d => d.Name)];

    /// <summary>These defaults with one number multiplied.</summary>
    public LotDefaults With(string name, double factor) => Dial.Named(Dials, name).Turned(this, factor);

    /// <summary>The note that one of these numbers was taken for a number of rows.</summary>
    public DefaultTaken Taken(string name, int count)
    {
        Dial<LotDefaults> dial = Dial.Named(Dials, name);
        return new DefaultTaken(name, dial.Read(this).ToString("0.####", System.Globalization.CultureInfo.InvariantCulture), dial.Why, count);
    }
}
