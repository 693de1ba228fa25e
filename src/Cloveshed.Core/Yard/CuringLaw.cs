using Cloveshed.Core.Keep;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Yard;

/// <summary>
/// How wet a lot is while it cures. Skins and neck are kg of water per kg of their dry matter; flesh is the share of the cloves'
/// dug weight that is left. A bulb is mostly cloves, and they hardly dry: curing is of the skin and the neck.
/// </summary>
public readonly record struct CuringState(double Skin, double Neck, double Flesh);

/// <summary>
/// Thin layers of skin and neck that go toward the moisture at which they would rest in the air around them, dX/dt = -k (X - Xe),
/// and cloves that lose weight as kept garlic does. k rises with the root of the vapour-pressure deficit, and where wind is known, with it.
/// </summary>
public static class CuringLaw
{
    private static readonly KeepingTraits Cloves = new(KeepClass.Medium, Inhibitor: false, Cured: true);

    /// <summary>Isotherms have no end at saturation; ours stops at 99%.</summary>
    private const double DampestRh = 99;

    /// <summary>As dug.</summary>
    public static CuringState Dug(CuringParameters p) => new(OnDry(p.GreenWet), OnDry(p.GreenWet), 1);

    /// <summary>Moisture at which skins rest, kg per kg of dry matter (the form of C. R. Oswin, 1946; the numbers are ours).</summary>
    public static double AtRest(CuringParameters p, double rh)
    {
        double at = Math.Clamp(rh, 0, DampestRh);
        return p.DampAt50 * Math.Pow(at / (100 - at), p.DampPower);
    }

    /// <summary>Rate of the neck, per hour.</summary>
    public static double NeckRate(CuringParameters p, WeatherRow row)
    {
        (double tempC, double rh) = row.Felt();
        double drive = SaturatedAir.DeficitKpa(tempC, rh) / SaturatedAir.DeficitKpa(CuringParameters.ReferenceC, CuringParameters.ReferenceRh);
        bool enough = row.WindMs is null || row.ForcedC is not null;
        double wind = enough ? 1 : p.StillAir + (1 - p.StillAir) * Math.Min(1, Math.Max(0, row.WindMs!.Value) / p.FullWindMs);
        return p.NeckRate * Math.Sqrt(drive) * wind;
    }

    /// <summary>The state after so many hours in this air: the row's rain falls at once, then it dries (or draws damp) for the hours.</summary>
    public static CuringState After(CuringParameters p, KeepingParameters keep, CuringState state, WeatherRow row, double hours)
    {
        (double tempC, double rh) = row.Felt();
        double most = OnDry(p.GreenWet), rest = AtRest(p, rh), rate = NeckRate(p, row);
        double skin = Wetted(state.Skin, row.RainMm * p.RainPerMm, most), neck = Wetted(state.Neck, row.RainMm * p.RainPerMm * p.RainNeckShare, most);
        double weekly = KeepingLaw.WeightLoss(keep, Cloves, new Climate(tempC, rh, KeepingLaw.AirO2, KeepingLaw.AirCo2), 0);
        return new CuringState(
            rest + (skin - rest) * Math.Exp(-rate * p.SkinHaste * hours),
            rest + (neck - rest) * Math.Exp(-rate * hours),
            state.Flesh * Math.Pow(1 - weekly, p.CloveLoss * hours / 168));
    }

    /// <summary>Neck and skins at the limit or under it.</summary>
    public static bool Cured(CuringParameters p, CuringState state)
    {
        double limit = OnDry(p.CuredWet);
        return state.Skin <= limit && state.Neck <= limit;
    }

    /// <summary>Weight over the weight when dug: dry matter stays, water goes. (What breathing burns is within the loss of the cloves.)</summary>
    public static double MassRatio(CuringParameters p, CuringState state)
    {
        double dry = p.GreenShare * (1 - p.GreenWet);
        return (1 - p.GreenShare) * state.Flesh + dry * (1 - p.NeckPart) * (1 + state.Skin) + dry * p.NeckPart * (1 + state.Neck);
    }

    /// <summary>Water in the whole bulb, share of its weight.</summary>
    public static double Wet(CuringParameters p, CuringState state)
    {
        double dry = p.GreenShare * (1 - p.GreenWet) + (1 - p.GreenShare) * (1 - p.FleshWet);
        return 1 - dry / MassRatio(p, state);
    }

    /// <summary>kg per kg of dry matter, from the share of wet weight.</summary>
    public static double OnDry(double wet) => wet / (1 - wet);

    /// <summary>Share of weight lost when the whole goes from one share of water to another, its dry matter kept: 1 - (1 - from)/(1 - to).</summary>
    public static double LossBetween(double fromWet, double toWet) => 1 - (1 - fromWet) / (1 - toWet);

    // Drier skins drink more; no wetter than dug.
    private static double Wetted(double now, double by, double most) => by <= 0 || now >= most ? now : most - (most - now) * Math.Exp(-by / most);
}
