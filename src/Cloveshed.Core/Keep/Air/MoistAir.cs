namespace Cloveshed.Core.Keep.Air;

/// <summary>
/// Moist air in one state. Equations: ASHRAE Handbook, Fundamentals 2017, ch. 1 (perfect gas relations), written from memory and
/// checked against that chapter's tables and its Example 1. Below 0 °C humidity, dew point and wet bulb are over ice, as there.
/// </summary>
/// <param name="TempC">Dry bulb, °C, -100 to 200.</param>
/// <param name="Rh">Relative humidity, percent, 0 to 100.</param>
/// <param name="PressurePa">Barometric pressure, Pa.</param>
/// <param name="HumidityRatio">kg of water vapour per kg of dry air.</param>
public sealed record MoistAir(double TempC, double Rh, double PressurePa, double HumidityRatio)
{
    /// <summary>Sea level, Pa.</summary>
    public const double StandardPressurePa = 101325;

    /// <summary>Molar mass of water over that of dry air.</summary>
    internal const double MassRatio = 0.621945;

    /// <summary>What the saturation law covers, °C.</summary>
    public const double ColdestC = -100, WarmestC = 200;

    /// <summary>Saturation vapour pressure, Pa.</summary>
    public double SaturationPa => SaturatedAir.PressureKpa(TempC) * 1000;

    /// <summary>Partial pressure of the vapour, Pa.</summary>
    public double VapourPa => SaturationPa * Rh / 100;

    /// <summary>Vapour-pressure deficit, Pa.</summary>
    public double DeficitPa => SaturationPa - VapourPa;

    /// <summary>J per kg of dry air, 0 for dry air at 0 °C.</summary>
    public double Enthalpy => EnthalpyOf(TempC, HumidityRatio);

    /// <summary>m³ of moist air per kg of dry air.</summary>
    public double Volume => 287.042 * (TempC + 273.15) * (1 + 1.607858 * HumidityRatio) / PressurePa;

    /// <summary>°C at which it begins to lose water (below 0 °C, frost); null for air that holds none.</summary>
    public double? DewPointC => Rh <= 0 ? null : Math.Min(TempC, SaturatedAt(VapourPa));

    /// <summary>Thermodynamic wet bulb, °C.</summary>
    public double WetBulbC
    {
        get
        {
            double low = DewPointC ?? ColdestC, high = TempC;
            while (high - low > 1e-10)
            {
                double middle = (low + high) / 2;
                (low, high) = RatioByWetBulb(TempC, middle, PressurePa) > HumidityRatio ? (low, middle) : (middle, high);
            }

            return Math.Min(TempC, high);
        }
    }

    /// <summary>Air of a temperature and humidity; refused where the vapour alone would have the pressure of the whole.</summary>
    public static MoistAir Of(double tempC, double rh, double pressurePa = StandardPressurePa)
    {
        Checked(tempC, pressurePa);
        if (!(rh is >= 0 and <= 100))
            throw new ArgumentOutOfRangeException(nameof(rh), rh, "A relative humidity lies between 0 and 100 percent.");
        double vapour = SaturatedAir.PressureKpa(tempC) * 1000 * rh / 100;
        if (vapour >= pressurePa)
            throw new ArgumentOutOfRangeException(nameof(rh), rh, $"At {tempC} °C so humid air has a vapour pressure of {vapour:0} Pa, more than the {pressurePa:0} Pa of all of it.");
        return new MoistAir(tempC, rh, pressurePa, MassRatio * vapour / (pressurePa - vapour));
    }

    /// <summary>Air of a temperature that holds so much water; refused beyond saturation (by more than a millionth, which counts as saturated).</summary>
    public static MoistAir Holding(double tempC, double humidityRatio, double pressurePa = StandardPressurePa)
    {
        Checked(tempC, pressurePa);
        ArgumentOutOfRangeException.ThrowIfNegative(humidityRatio);
        double vapour = pressurePa * humidityRatio / (MassRatio + humidityRatio);
        double rh = 100 * vapour / (SaturatedAir.PressureKpa(tempC) * 1000);
        if (rh > 100.0001)
            throw new ArgumentOutOfRangeException(nameof(humidityRatio), humidityRatio, $"Air of {tempC} °C cannot hold so much water.");
        return new MoistAir(tempC, Math.Min(rh, 100), pressurePa, humidityRatio);
    }

    /// <summary>Air of a dry and a wet bulb, as a sling psychrometer reads them.</summary>
    public static MoistAir ByWetBulb(double tempC, double wetBulbC, double pressurePa = StandardPressurePa)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(wetBulbC, tempC);
        return Holding(tempC, Math.Max(0, RatioByWetBulb(tempC, wetBulbC, pressurePa)), pressurePa);
    }

    /// <summary>Pressure of the standard atmosphere at a height above the sea, Pa; -500 to 11,000 m (same chapter, equation 3).</summary>
    public static double PressureAtHeight(double metres)
    {
        if (!(metres is >= -500 and <= 11000))
            throw new ArgumentOutOfRangeException(nameof(metres), metres, "The standard atmosphere is taken from -500 to 11,000 m.");
        return StandardPressurePa * Math.Pow(1 - 2.25577e-5 * metres, 5.2559);
    }

    /// <summary>Most water that air of this temperature can hold, kg per kg of dry air.</summary>
    public static double SaturatedRatio(double tempC, double pressurePa)
    {
        double saturation = SaturatedAir.PressureKpa(tempC) * 1000;
        return saturation >= pressurePa ? double.PositiveInfinity : MassRatio * saturation / (pressurePa - saturation);
    }

    internal static double EnthalpyOf(double tempC, double ratio) => 1000 * (1.006 * tempC + ratio * (2501 + 1.86 * tempC));

    internal static double TempOf(double enthalpy, double ratio) => (enthalpy / 1000 - 2501 * ratio) / (1.006 + 1.86 * ratio);

    /// <summary>°C at which the saturation pressure is so many Pa. The laws over ice and over water miss each other by 0.01% at 0 °C: between them it is 0 °C.</summary>
    private static double SaturatedAt(double vapourPa)
    {
        double low = ColdestC, high = WarmestC;
        while (high - low > 1e-10)
        {
            double middle = (low + high) / 2;
            (low, high) = SaturatedAir.PressureKpa(middle) * 1000 > vapourPa ? (low, middle) : (middle, high);
        }

        return (low + high) / 2;
    }

    /// <summary>Equations 33 (over water) and 35 (over ice).</summary>
    private static double RatioByWetBulb(double t, double wet, double pressurePa)
    {
        double saturated = SaturatedRatio(wet, pressurePa);
        return double.IsInfinity(saturated) ? saturated
            : wet >= 0 ? ((2501 - 2.326 * wet) * saturated - 1.006 * (t - wet)) / (2501 + 1.86 * t - 4.186 * wet)
            : ((2830 - 0.24 * wet) * saturated - 1.006 * (t - wet)) / (2830 + 1.86 * t - 2.1 * wet);
    }

    private static void Checked(double tempC, double pressurePa)
    {
        if (!(tempC is >= ColdestC and <= WarmestC))
            throw new ArgumentOutOfRangeException(nameof(tempC), tempC, "The law of saturated air covers -100 to 200 °C.");
        if (!(pressurePa > 0) || !double.IsFinite(pressurePa))
            throw new ArgumentOutOfRangeException(nameof(pressurePa), pressurePa, "A pressure is above 0.");
    }
}
