using System.Globalization;
using NodaTime;

namespace Cloveshed.Core.Quantities;

/// <summary>A rate of mass over time, as a line runs: whole grams an hour, from 0 to 1e12, both included.</summary>
public readonly record struct MassRate : IComparable<MassRate>
{
    private const long Bound = 1_000_000_000_000;

    private MassRate(long gramsPerHour)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(gramsPerHour);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(gramsPerHour, Bound);
        GramsPerHour = gramsPerHour;
    }

    /// <summary>Whole grams an hour.</summary>
    public long GramsPerHour { get; }

    /// <summary>A mass in an hour, exact; a negative mass is refused.</summary>
    public static MassRate PerHour(Mass mass) => new(mass.Grams);

    /// <summary>The mean rate at which a mass was run in a time above 0, to the nearest gram an hour, a half to even.</summary>
    public static MassRate Of(Mass mass, Duration time)
    {
        if (time <= Duration.Zero)
        {
            throw new ArgumentOutOfRangeException(nameof(time), time, "A rate needs a time above 0.");
        }

        double rate = Math.Round(mass.Grams / time.TotalHours, MidpointRounding.ToEven);
        return new(rate <= Bound ? (long)rate : Bound + 1);
    }

    /// <summary>The mass run in an hour.</summary>
    public Mass InAnHour() => Mass.FromGrams(GramsPerHour);

    /// <summary>The time that a mass takes, to the nanosecond or 15 digits. A rate of 0 is refused: it never ends.</summary>
    public Duration TimeFor(Mass mass) =>
        GramsPerHour > 0
            ? Duration.FromHours((double)mass.Grams / GramsPerHour)
            : throw new InvalidOperationException("At a rate of 0 no mass is ever run: give the line a rate.");

    /// <summary>The mass run in a time, to the nearest gram, a half to even.</summary>
    public Mass In(Duration time) => Mass.FromKilograms(GramsPerHour * time.TotalHours / 1000);

    /// <summary>Slower.</summary>
    public static bool operator <(MassRate left, MassRate right) => left.GramsPerHour < right.GramsPerHour;

    /// <summary>Slower or equal.</summary>
    public static bool operator <=(MassRate left, MassRate right) => left.GramsPerHour <= right.GramsPerHour;

    /// <summary>Faster.</summary>
    public static bool operator >(MassRate left, MassRate right) => left.GramsPerHour > right.GramsPerHour;

    /// <summary>Faster or equal.</summary>
    public static bool operator >=(MassRate left, MassRate right) => left.GramsPerHour >= right.GramsPerHour;

    /// <inheritdoc/>
    public int CompareTo(MassRate other) => GramsPerHour.CompareTo(other.GramsPerHour);

    /// <summary>Grams an hour with their unit: "5443108 g/h".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{GramsPerHour} g/h");
}
