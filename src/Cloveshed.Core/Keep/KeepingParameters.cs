using Cloveshed.Core.Lots;

namespace Cloveshed.Core.Keep;

/// <summary>
/// Every coefficient of the keeping law. "Fitted" means least squares on the published storage rows listed in
/// docs/formulas/keeping.md; a test fits them again and compares. The rest are our defaults, no published value.
/// </summary>
/// <param name="LossBase">Share of weight lost a week in saturated air; fitted.</param>
/// <param name="LossPerKpa">Share of weight lost a week per kPa of vapour-pressure deficit; fitted.</param>
/// <param name="UncuredLossFactor">Times the loss in an uncured lot's first weeks; our default, near the 14% that bulbs lose from 70 to 65% moisture.</param>
/// <param name="UncuredLossWeeks">How many weeks those are; our default ("more than 3 weeks to cure means too humid" in a Nova Scotia extension note).</param>
/// <param name="SproutPeak">Life used a week by sprouting at its fastest; fitted, resting on our default for 10 °C.</param>
/// <param name="SproutColdEdgeC">°C at which cold has halved sprouting; fitted.</param>
/// <param name="SproutColdWidthC">°C over which it falls by e below that edge; our default.</param>
/// <param name="SproutWarmEdgeC">°C at which warmth has halved sprouting: fastest at 5 to 18 °C (UC Davis; USDA AH-66); our default.</param>
/// <param name="SproutWarmWidthC">°C over which it falls by e above that edge; our default.</param>
/// <param name="InhibitorShare">Sprouting left by an inhibitor applied in the field; fitted.</param>
/// <param name="Co2Sprout">Sprouting falls by e^-this per 10% CO2; our default (direction: Cantwell et al., Acta Hort.).</param>
/// <param name="Co2Decay">Decay likewise; our default.</param>
/// <param name="LowO2">Share of sprouting and decay that oxygen's absence alone takes away; our default ("little benefit", same trial).</param>
/// <param name="DecayAtZero">Life used a week by decay at 0 °C, 70% RH or less; fitted.</param>
/// <param name="DecayQ10">Times per 10 °C: 2.0, within the typical 2.0 to 2.5 at 10-20 °C and 1.5 to 2.0 at 20-30 °C (Saltveit, USDA AH-66); the value is ours.</param>
/// <param name="DecayPerTenRh">Decay grows by e^this per 10 points of humidity over 70%; our default (70% as the limit: WFLO 2018).</param>
/// <param name="UncuredDecayFactor">Times decay in an uncured lot; our default (direction: WFLO 2018).</param>
/// <param name="ShortLife">Life of a variety that keeps short, over one that keeps medium; fitted.</param>
/// <param name="LongGain">What one that keeps long adds to it: 0.21 is a life 21% longer; fitted.</param>
/// <param name="Shape">Weibull shape of losses over life used; our default.</param>
public sealed record KeepingParameters(
    double LossBase, double LossPerKpa, double UncuredLossFactor, double UncuredLossWeeks,
    double SproutPeak, double SproutColdEdgeC, double SproutColdWidthC, double SproutWarmEdgeC, double SproutWarmWidthC,
    double InhibitorShare, double Co2Sprout, double Co2Decay, double LowO2,
    double DecayAtZero, double DecayQ10, double DecayPerTenRh, double UncuredDecayFactor,
    double ShortLife, double LongGain, double Shape)
{
    /// <summary>The shipped coefficients.</summary>
    public static KeepingParameters Default { get; } = new(
        LossBase: 0.0033, LossPerKpa: 0.0090, UncuredLossFactor: 2.75, UncuredLossWeeks: 4,
        SproutPeak: 0.0574, SproutColdEdgeC: 0.287, SproutColdWidthC: 1.6, SproutWarmEdgeC: 20, SproutWarmWidthC: 3,
        InhibitorShare: 0.27, Co2Sprout: 1.0, Co2Decay: 0.5, LowO2: 0.1,
        DecayAtZero: 0.00836, DecayQ10: 2.0, DecayPerTenRh: 0.7, UncuredDecayFactor: 1.5,
        ShortLife: 0.368, LongGain: 0.21, Shape: 3.5);

    private const string Fitted = "fitted to published storage lives (docs/formulas/keeping.md)";
    private const string Ours = "our default, no published value";

    /// <summary>Every number here, by name.</summary>
    public static IReadOnlyList<Dial<KeepingParameters>> Dials { get; } =
    [
        new("loss_base", p => p.LossBase, (p, v) => p with { LossBase = v }, Fitted),
        new("loss_per_kpa", p => p.LossPerKpa, (p, v) => p with { LossPerKpa = v }, Fitted),
        new("uncured_loss_factor", p => p.UncuredLossFactor, (p, v) => p with { UncuredLossFactor = v }, Ours),
        new("uncured_loss_weeks", p => p.UncuredLossWeeks, (p, v) => p with { UncuredLossWeeks = v }, Ours),
        new("sprout_peak", p => p.SproutPeak, (p, v) => p with { SproutPeak = v }, Fitted),
        new("sprout_cold_edge_c", p => p.SproutColdEdgeC, (p, v) => p with { SproutColdEdgeC = v }, Fitted),
        new("sprout_cold_width_c", p => p.SproutColdWidthC, (p, v) => p with { SproutColdWidthC = v }, Ours),
        new("sprout_warm_edge_c", p => p.SproutWarmEdgeC, (p, v) => p with { SproutWarmEdgeC = v }, Ours),
        new("sprout_warm_width_c", p => p.SproutWarmWidthC, (p, v) => p with { SproutWarmWidthC = v }, Ours),
        new("inhibitor_share", p => p.InhibitorShare, (p, v) => p with { InhibitorShare = v }, Fitted),
        new("co2_sprout", p => p.Co2Sprout, (p, v) => p with { Co2Sprout = v }, Ours),
        new("co2_decay", p => p.Co2Decay, (p, v) => p with { Co2Decay = v }, Ours),
        new("low_o2", p => p.LowO2, (p, v) => p with { LowO2 = v }, Ours),
        new("decay_at_zero", p => p.DecayAtZero, (p, v) => p with { DecayAtZero = v }, Fitted),
        new("decay_q10", p => p.DecayQ10, (p, v) => p with { DecayQ10 = v }, "our default, within typical published values (USDA AH-66)"),
        new("decay_per_ten_rh", p => p.DecayPerTenRh, (p, v) => p with { DecayPerTenRh = v }, Ours),
        new("uncured_decay_factor", p => p.UncuredDecayFactor, (p, v) => p with { UncuredDecayFactor = v }, Ours),
        new("short_life", p => p.ShortLife, (p, v) => p with { ShortLife = v }, Fitted),
        new("long_gain", p => p.LongGain, (p, v) => p with { LongGain = v }, Fitted),
        new("shape", p => p.Shape, (p, v) => p with { Shape = v }, Ours),
    ];

    /// <summary>The names of all numbers here.</summary>
    public static IReadOnlyList<string> Names { get; } = [.. Dials.Select(d => d.Name)];

    /// <summary>These coefficients with one number multiplied.</summary>
    public KeepingParameters With(string name, double factor) => Dial.Named(Dials, name).Turned(this, factor);
}
