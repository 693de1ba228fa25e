using NodaTime;

namespace Cloveshed.Ledger;

/// <summary>Two questions about a past day: what was so, as we know it now, or as it was known at that day's end.</summary>
public enum Knowledge { AsKnownNow, AsKnownThen }

/// <summary>
/// A day to look back to, its end included. A fact counts when it happened on that day or before, by the calendar of the place where it
/// happened; as known then, when the ledger had also recorded it by that day's end, by the calendar of the ledger's own place.
/// </summary>
public sealed record AsOf(LocalDate Day, Knowledge Knowledge = Knowledge.AsKnownNow);
