using Cloveshed.Core;
using Cloveshed.Core.Keep.Rooms;

namespace Cloveshed.Ledger.Rooms;

/// <summary>What a fact says of the air of a place, or of a room.</summary>
public abstract record RoomSaid(PlaceId Place);

/// <summary>A place's air at the fact's moment, in °C and percent; null where not read, and something was.</summary>
/// <param name="Who">A badge number or initials, or a device's name; never a person's name.</param>
/// <param name="Instrument">What it was measured with; empty where nobody said.</param>
public sealed record AirSaid(PlaceId Place, double? TempC, double? Rh, double? O2, double? Co2, ReadingSource Source, string Who, string Instrument) : RoomSaid(Place);

/// <summary>What was done to a room.</summary>
/// <param name="Who">Who answers for it, by badge number or initials.</param>
/// <param name="Note">Empty where nobody said.</param>
/// <param name="Door">What was known at the door; null where nobody was asked.</param>
public sealed record StepSaid(PlaceId Place, RoomStep Step, string Who, string Note, DoorSaid? Door) : RoomSaid(Place);

/// <summary>Tests at a door that changed nothing about the room.</summary>
public sealed record TestSaid(PlaceId Place, string Who, DoorSaid Door) : RoomSaid(Place);

/// <summary>What a room is. The last description in force counts, whole.</summary>
public sealed record RoomIs(PlaceId Place, RoomFigures Figures) : RoomSaid(Place);

/// <summary>Who measured which gas with what, who stayed outside, and whether what could start was locked and tagged. No leave to enter.</summary>
public sealed record DoorSaid(IReadOnlyList<GasSaid> Tests, string Attendant, bool LockedAndTagged);

/// <summary>One test of a gas.</summary>
public sealed record GasSaid(TestedGas Gas, double Value, string Who, string Instrument, DateTimeOffset At);

/// <summary>A fact about a place or room.</summary>
/// <param name="Corrects">The record that this one takes the place of, or withdraws.</param>
/// <param name="Said">Null: the record that it corrects is withdrawn.</param>
/// <param name="Why">The reason of a withdrawal; empty otherwise.</param>
public sealed record RoomRecord(Guid Fact, long Seq, DateTimeOffset At, DateTimeOffset RecordedAt, string By, string Device, Guid? Corrects, RoomSaid? Said, string Why);
