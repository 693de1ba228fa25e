using NodaTime;

namespace Cloveshed.Ledger;

/// <summary>Two questions about a past day: what was so, as we know it now, or as it was known at that day's end.</summary>
public enum Knowledge { AsKnownNow, AsKnownThen }

/// <summary>
/// A day to look back to, its end included. A fact counts when it happened on that day or before; as known then, when the ledger had also recorded it by
/// that day's end. Both go by the shed's clock, by which every page tells moments: a probe that writes UTC, or a phone that came from another zone,
/// puts no fact on another day than the one that the pages show for it.
/// </summary>
public sealed record AsOf(LocalDate Day, Knowledge Knowledge = Knowledge.AsKnownNow)
{
    /// <summary>Whether what happened, and was recorded, at these moments counts.</summary>
    /// <param name="here">The shed's time zone.</param>
    public bool Counts(DateTimeOffset happened, DateTimeOffset recorded, TimeZoneInfo here) =>
        DayOf(happened, here) <= Day && (Knowledge == Knowledge.AsKnownNow || DayOf(recorded, here) <= Day);

    private static LocalDate DayOf(DateTimeOffset moment, TimeZoneInfo here) => LocalDate.FromDateTime(TimeZoneInfo.ConvertTime(moment, here).DateTime);
}
