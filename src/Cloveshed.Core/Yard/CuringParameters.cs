using Cloveshed.Core.Lots;

namespace Cloveshed.Core.Yard;

/// <summary>
/// Every coefficient of the curing law. No thin-layer coefficients, no sorption isotherm and no measured curing loss of whole
/// bulbs were found in print, so most are our defaults, chosen to reproduce what is in print (docs/formulas/curing.md); marked
/// sacks correct NeckRate, GreenShare and CloveLoss. Moistures are kg of water per kg of dry matter unless "wet" is in the name.
/// </summary>
/// <param name="NeckRate">Per hour, in the reference air of 40.6 °C and 20% humidity: fresh necks are cured there in 6 days (105 °F dry air, "as little as 6 days", SARE ONE19-351).</param>
/// <param name="GreenShare">Share of a dug, topped bulb's weight in its skins, neck and roots; ours: with GreenWet and FleshWet the bulb has 70.3% water.</param>
/// <param name="NeckPart">Share of those that dries with the neck; ours.</param>
/// <param name="SkinHaste">Times as fast as the neck the skins dry; ours.</param>
/// <param name="GreenWet">Their water when dug, share of their weight; ours, see GreenShare.</param>
/// <param name="FleshWet">Water in the cloves, share of their weight: dry matter of mature cloves is over 35% (UC Davis; USDA AH-66).</param>
/// <param name="CuredWet">Water in skins and neck when cured, share of their weight: skins lose their stiffness above 20% (CIGR Journal 2012), and rustle under it.</param>
/// <param name="DampAt50">Moisture of skins at rest in air of 50% humidity (Oswin's form); ours.</param>
/// <param name="DampPower">Its power of RH/(100-RH); ours.</param>
/// <param name="RainPerMm">Moisture that a millimetre of rain adds to dry skins; ours.</param>
/// <param name="RainNeckShare">Share of that which the neck takes up; ours.</param>
/// <param name="StillAir">Share of the rate left in still air; ours.</param>
/// <param name="FullWindMs">Wind from which more does not matter, m/s (0.5 to 1 m/s made no difference in slices: Madamba, Driscoll and Buckle, J. Food Eng. 29, 1996).</param>
/// <param name="CloveLoss">Times the weekly loss of kept bulbs that the cloves lose; ours.</param>
/// <param name="RateSd">How far the rate of a yard may be off, sd of its logarithm, before sacks are weighed; ours.</param>
/// <param name="GreenSd">The same for GreenShare; ours.</param>
/// <param name="CloveSd">The same for CloveLoss; ours.</param>
/// <param name="TimeSd">What sacks do not take away: lot to lot, sd of the logarithm; ours.</param>
public sealed record CuringParameters(
    double NeckRate, double GreenShare, double NeckPart, double SkinHaste, double GreenWet, double FleshWet, double CuredWet,
    double DampAt50, double DampPower, double RainPerMm, double RainNeckShare, double StillAir, double FullWindMs, double CloveLoss,
    double RateSd, double GreenSd, double CloveSd, double TimeSd)
{
    /// <summary>The reference air of <see cref="NeckRate"/>: 105 °F, and dry.</summary>
    public const double ReferenceC = 40.6, ReferenceRh = 20;

    /// <summary>The shipped coefficients.</summary>
    public static CuringParameters Default { get; } = new(
        NeckRate: 0.0236, GreenShare: 0.265, NeckPart: 0.4, SkinHaste: 2.5, GreenWet: 0.85, FleshWet: 0.65, CuredWet: 0.20,
        DampAt50: 0.11, DampPower: 0.42, RainPerMm: 0.15, RainNeckShare: 0.5, StillAir: 0.5, FullWindMs: 0.5, CloveLoss: 1,
        RateSd: 0.35, GreenSd: 0.2, CloveSd: 0.5, TimeSd: 0.1);

    private const string Ours = "our default, no published value";

    /// <summary>Every number here, by name.</summary>
    public static IReadOnlyList<Dial<CuringParameters>> Dials { get; } =
    [
        new("neck_rate", p => p.NeckRate, (p, v) => p with { NeckRate = v }, "set so that fresh necks cure in 6 days at 105 °F (SARE ONE19-351)"),
        new("green_share", p => p.GreenShare, (p, v) => p with { GreenShare = v }, "our default; gives a dug bulb 70.3% water"),
        new("neck_part", p => p.NeckPart, (p, v) => p with { NeckPart = v }, Ours),
        new("skin_haste", p => p.SkinHaste, (p, v) => p with { SkinHaste = v }, Ours),
        new("green_wet", p => p.GreenWet, (p, v) => p with { GreenWet = v }, "our default; gives a dug bulb 70.3% water"),
        new("flesh_wet", p => p.FleshWet, (p, v) => p with { FleshWet = v }, "over 35% dry matter at maturity (UC Davis; USDA AH-66)"),
        new("cured_wet", p => p.CuredWet, (p, v) => p with { CuredWet = v }, "stiffness of skins falls above 20% (CIGR Journal 2012)"),
        new("damp_at_50", p => p.DampAt50, (p, v) => p with { DampAt50 = v }, Ours),
        new("damp_power", p => p.DampPower, (p, v) => p with { DampPower = v }, Ours),
        new("rain_per_mm", p => p.RainPerMm, (p, v) => p with { RainPerMm = v }, Ours),
        new("rain_neck_share", p => p.RainNeckShare, (p, v) => p with { RainNeckShare = v }, Ours),
        new("still_air", p => p.StillAir, (p, v) => p with { StillAir = v }, Ours),
        new("full_wind_ms", p => p.FullWindMs, (p, v) => p with { FullWindMs = v }, "0.5 to 1 m/s made no difference in slices (Madamba et al. 1996)"),
        new("clove_loss", p => p.CloveLoss, (p, v) => p with { CloveLoss = v }, Ours),
        new("rate_sd", p => p.RateSd, (p, v) => p with { RateSd = v }, Ours),
        new("green_sd", p => p.GreenSd, (p, v) => p with { GreenSd = v }, Ours),
        new("clove_sd", p => p.CloveSd, (p, v) => p with { CloveSd = v }, Ours),
        new("time_sd", p => p.TimeSd, (p, v) => p with { TimeSd = v }, Ours),
    ];

    /// <summary>These coefficients with one number multiplied.</summary>
    public CuringParameters With(string name, double factor) => Dial.Named(Dials, name).Turned(this, factor);
}
