namespace Cloveshed.Core.Keep;

/// <summary>
/// Vapour pressure of moist air. Saturation: R. W. Hyland and A. Wexler (1983), as ASHRAE Handbook, Fundamentals 2017,
/// ch. 1 prints it (equations 5 over ice and 6 over water; coefficients from memory, checked against the chapter's table).
/// Valid -100 to 200 °C.
/// </summary>
public static class SaturatedAir
{
    /// <summary>Saturation vapour pressure, kPa, at °C; over ice below 0 °C.</summary>
    public static double PressureKpa(double tempC)
    {
        double t = tempC + 273.15;
        double ln = tempC < 0
            ? -5.6745359e3 / t + 6.3925247 + t * (-9.677843e-3 + t * (6.2215701e-7 + t * (2.0747825e-9 + t * -9.484024e-13)))
              + 4.1635019 * Math.Log(t)
            : -5.8002206e3 / t + 1.3914993 + t * (-4.8640239e-2 + t * (4.1764768e-5 + t * -1.4452093e-8))
              + 6.5459673 * Math.Log(t);
        return Math.Exp(ln) / 1000;
    }

    /// <summary>Vapour-pressure deficit, kPa: how much drier the air is than saturated. Humidity in percent, 0 to 100.</summary>
    public static double DeficitKpa(double tempC, double rh) => PressureKpa(tempC) * (1 - Math.Clamp(rh, 0, 100) / 100);
}
