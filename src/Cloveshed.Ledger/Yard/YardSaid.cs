using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Yard;
using NodaTime;

namespace Cloveshed.Ledger.Yard;

/// <summary>What a fact says of weather and drying, or of a lot that somebody looked at. Who is a badge number or initials, never a person's name.</summary>
public abstract record YardSaid(string Who);

/// <summary>Weather of a place by the hour (or finer), local time; rows may lie ahead, as a forecast has them.</summary>
/// <param name="Source">hand or file.</param>
public sealed record WeatherSaid(PlaceId Place, IReadOnlyList<WeatherRow> Rows, string Source, string Who) : YardSaid(Who);

/// <summary>What a curing place is, whole; the last one counts.</summary>
/// <param name="Day">Where no hours are known it is like this; null: nobody said.</param>
/// <param name="Roof">Rain does not fall on the garlic.</param>
/// <param name="ForcedC">°C of the air that can be blown through it; null: none.</param>
public sealed record YardIs(PlaceId Place, TypicalDay? Day, bool Roof, double? ForcedC, string Who) : YardSaid(Who);

/// <summary>A marked sack of a lot, weighed at the fact's moment.</summary>
public sealed record SackSaid(LotId Lot, string Sack, double Weight, MassUnit Unit, string Who) : YardSaid(Who);

/// <summary>A weight now against the weight of the same garlic on an earlier day.</summary>
public sealed record WeighedAgain(double Now, double Then, LocalDate Since, MassUnit Unit);

/// <summary>Bulbs of a lot that somebody looked at, at the fact's moment.</summary>
/// <param name="Looked">How many; so many had sprouted and so many decayed, and no bulb is both.</param>
/// <param name="Weighed">Null where nothing was weighed.</param>
public sealed record LookSaid(LotId Lot, PlaceId Place, int Looked, int Sprouted, int Decayed, WeighedAgain? Weighed, string Who, string Note) : YardSaid(Who);

/// <summary>A fact of the yard or of a look at a lot.</summary>
/// <param name="Said">Null: it only takes back the one that it corrects, for the reason in <paramref name="Why"/>.</param>
public sealed record YardRecord(Guid Fact, long Seq, DateTimeOffset At, DateTimeOffset RecordedAt, Guid? Corrects, YardSaid? Said, string Why);
