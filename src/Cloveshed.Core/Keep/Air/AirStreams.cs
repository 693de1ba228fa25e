namespace Cloveshed.Core.Keep.Air;

/// <summary>A stream of air: its state, and kg of dry air in it per second (or in all, for a still amount).</summary>
public sealed record AirStream(MoistAir Air, double DryKg);

/// <summary>Air after heating or cooling, the heat that it took (W, negative when cooled), and the water that fell out of it (kg per second).</summary>
public sealed record ConditionedAir(AirStream Stream, double HeatW, double CondensateKg);

/// <summary>What happens to streams of air: heating, cooling past the dew point, mixing. Balances of dry air, water and enthalpy; no losses.</summary>
public static class AirStreams
{
    /// <summary>Enthalpy of liquid water, J per kg and °C; of ice, J per kg at 0 °C and per °C (ASHRAE Fundamentals 2017, ch. 1).</summary>
    private const double LiquidHeat = 4186, IceAtZero = -334_000, IceHeat = 2100;

    /// <summary>To another temperature at constant pressure. Warmed, it keeps its water; cooled below its dew point, it drops what it cannot hold.</summary>
    public static ConditionedAir Brought(AirStream stream, double toC)
    {
        MoistAir air = stream.Air;
        double holds = Math.Min(air.HumidityRatio, MoistAir.SaturatedRatio(toC, air.PressurePa));
        MoistAir then = MoistAir.Holding(toC, holds, air.PressurePa);
        double dropped = air.HumidityRatio - holds;
        double heat = then.Enthalpy + dropped * WaterEnthalpy(toC) - air.Enthalpy;
        return new ConditionedAir(new AirStream(then, stream.DryKg), heat * stream.DryKg, dropped * stream.DryKg);
    }

    /// <summary>
    /// Two streams of one pressure become one. Where the mixture would hold more than it can, fog forms: the air is saturated
    /// and the rest of the water is named.
    /// </summary>
    public static ConditionedAir Mixed(AirStream one, AirStream other)
    {
        if (Math.Abs(one.Air.PressurePa - other.Air.PressurePa) > 1)
            throw new ArgumentException("Streams are mixed at one pressure.", nameof(other));
        ArgumentOutOfRangeException.ThrowIfNegative(one.DryKg);
        ArgumentOutOfRangeException.ThrowIfNegative(other.DryKg);
        double dry = one.DryKg + other.DryKg, pressure = one.Air.PressurePa;
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(dry, nameof(one));
        double ratio = (one.DryKg * one.Air.HumidityRatio + other.DryKg * other.Air.HumidityRatio) / dry;
        double enthalpy = (one.DryKg * one.Air.Enthalpy + other.DryKg * other.Air.Enthalpy) / dry;
        double tempC = MoistAir.TempOf(enthalpy, ratio);
        if (ratio <= MoistAir.SaturatedRatio(tempC, pressure))
            return new ConditionedAir(new AirStream(MoistAir.Holding(tempC, ratio, pressure), dry), 0, 0);
        // Fog gives back the heat of its forming, so the air ends warmer than the line between the two.
        double low = Math.Min(one.Air.TempC, other.Air.TempC), high = Math.Max(one.Air.TempC, other.Air.TempC);
        while (high - low > 1e-9)
        {
            double middle = (low + high) / 2, holds = MoistAir.SaturatedRatio(middle, pressure);
            double there = MoistAir.EnthalpyOf(middle, holds) + (ratio - holds) * WaterEnthalpy(middle);
            (low, high) = there > enthalpy ? (low, middle) : (middle, high);
        }

        double saturated = MoistAir.SaturatedRatio(low, pressure);
        return new ConditionedAir(new AirStream(MoistAir.Holding(low, saturated, pressure), dry), 0, (ratio - saturated) * dry);
    }

    private static double WaterEnthalpy(double tempC) => tempC >= 0 ? LiquidHeat * tempC : IceAtZero + IceHeat * tempC;
}
