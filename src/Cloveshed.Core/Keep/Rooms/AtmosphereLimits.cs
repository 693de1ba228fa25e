namespace Cloveshed.Core.Keep.Rooms;

/// <summary>
/// Limits for people, never for garlic. Oxygen: OSHA 29 CFR 1910.146(b), under 19.5 or over 23.5 percent is a hazardous
/// atmosphere. Carbon dioxide: 5,000 ppm over 8 hours is OSHA's limit (29 CFR 1910.1000, table Z-1), 30,000 ppm the short-term one
/// of NIOSH, 40,000 ppm immediately dangerous to life or health (NIOSH). The carbon dioxide figures are as secondary pages print them. Local
/// codes and licensed practice come first; no number here says that a room may be entered.
/// </summary>
public static class AtmosphereLimits
{
    /// <summary>Percent by volume.</summary>
    public const double LeastO2 = 19.5, MostO2 = 23.5;

    /// <summary>Parts per million by volume: over a working day of 8 hours, for 15 minutes, immediately dangerous.</summary>
    public const int WorkdayCo2Ppm = 5_000, ShortTermCo2Ppm = 30_000, DangerousCo2Ppm = 40_000;

    /// <summary>Percent of the lower flammable limit from which air is hazardous (29 CFR 1910.146(b)).</summary>
    public const double MostFlammable = 10;
}
