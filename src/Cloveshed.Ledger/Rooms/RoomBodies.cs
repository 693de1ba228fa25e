using System.Globalization;
using System.Text.Json.Nodes;
using Cloveshed.Core;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Ledger.Facts;
using NodaTime.Text;

namespace Cloveshed.Ledger.Rooms;

/// <summary>Facts about places and rooms: made, and read again. What a body lacks throws <see cref="BodyFault"/>.</summary>
public static class RoomBodies
{
    /// <summary>Characters of who, with what and a note.</summary>
    public const int LongestText = 200;

    /// <summary>A fact in its form.</summary>
    /// <param name="corrects">The record that this one takes the place of; the moment is then that of the origin all the same.</param>
    public static NewFact Made(FactOrigin origin, RoomSaid said, Guid? corrects = null, Guid? id = null) => said switch
    {
        AirSaid air => origin.Make(FactKinds.AirRead, new JsonObject
        {
            ["place"] = air.Place.Text, ["temp_c"] = air.TempC, ["rh"] = air.Rh, ["o2"] = air.O2, ["co2"] = air.Co2,
            ["source"] = RoomTexts.Of(air.Source), ["who"] = air.Who, ["instrument"] = air.Instrument,
        }, corrects, id),
        StepSaid step => origin.Make(FactKinds.RoomStepped, new JsonObject
        {
            ["place"] = step.Place.Text, ["step"] = RoomTexts.Of(step.Step), ["who"] = step.Who, ["note"] = step.Note, ["door"] = step.Door is { } door ? Written(door) : null,
        }, corrects, id),
        TestSaid test => origin.Make(FactKinds.RoomTested, new JsonObject { ["place"] = test.Place.Text, ["who"] = test.Who, ["door"] = Written(test.Door) }, corrects, id),
        RoomIs room => origin.Make(FactKinds.RoomDescribed, new JsonObject
        {
            ["place"] = room.Place.Text,
            ["figures"] = new JsonObject(RoomFigures.Forms.Where(form => room.Figures[form.Figure] is not null).Select(form => KeyValuePair.Create(form.Key, (JsonNode?)room.Figures[form.Figure]))),
            ["neighbours"] = new JsonArray([.. room.Figures.Neighbours.Select(one => (JsonNode)RoomTexts.Of(one))]),
        }, corrects, id),
        _ => throw new ArgumentOutOfRangeException(nameof(said)),
    };

    /// <summary>A record that no longer counts.</summary>
    public static NewFact Withdrawn(FactOrigin origin, Guid record, string reason, Guid? id = null) =>
        origin.Make(FactKinds.RecordWithdrawn, new JsonObject { ["reason"] = reason }, record, id);

    internal static RoomRecord Record(StoredFact fact)
    {
        Body body = Body.Of(fact.Body);
        bool withdrawn = fact.Kind == FactKinds.RecordWithdrawn;
        return new RoomRecord(
            Guid.ParseExact(fact.Id, "D"), fact.Seq, StoredFact.Time(fact.HappenedAt), StoredFact.Time(fact.RecordedAt), fact.By, fact.Device,
            fact.Corrects is { } corrects ? Guid.ParseExact(corrects, "D") : null, withdrawn ? null : Said(fact.Kind, body), withdrawn ? Named(body, "reason") : "");
    }

    /// <summary>What a body of one of the kinds says, its form checked.</summary>
    internal static RoomSaid Said(string kind, Body body)
    {
        PlaceId place = new(body.Text("place"));
        return kind switch
        {
            FactKinds.AirRead => new AirSaid(
                place, body.NumberOrNone("temp_c"), body.NumberOrNone("rh"), body.NumberOrNone("o2"), body.NumberOrNone("co2"),
                body.TextOrNone("source") is { } source ? RoomTexts.Source(source) ?? throw new BodyFault("source", "one of " + RoomTexts.AllSources) : ReadingSource.Device,
                Named(body, "who"), Short(body, "instrument")),
            FactKinds.RoomStepped => new StepSaid(
                place, RoomTexts.Step(body.Text("step")) ?? throw new BodyFault("step", "one of " + RoomTexts.AllSteps), Named(body, "who"), Short(body, "note"),
                body.PartOrNone("door") is { } door ? Door(door) : null),
            FactKinds.RoomTested => new TestSaid(place, Named(body, "who"), Door(body.PartOrNone("door") ?? throw new BodyFault("door", "an object"))),
            FactKinds.RoomDescribed => new RoomIs(place, Figures(body)),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No kind about rooms."),
        };
    }

    internal static string Named(Body body, string key) => Short(body, key) is { Length: > 0 } text ? text : throw new BodyFault(key, "a text that is not empty");

    private static string Short(Body body, string key) =>
        (body.TextOrNone(key) ?? "").Trim() is var text && text.Length <= LongestText ? text : throw new BodyFault(key, $"a text of at most {LongestText} characters");

    private static JsonObject Written(DoorSaid door) => new()
    {
        ["attendant"] = door.Attendant, ["locked_and_tagged"] = door.LockedAndTagged,
        ["tests"] = new JsonArray([.. door.Tests.Select(test => (JsonNode)new JsonObject
        {
            ["gas"] = RoomTexts.Of(test.Gas), ["value"] = test.Value, ["who"] = test.Who, ["instrument"] = test.Instrument,
            ["at"] = OffsetDateTimePattern.ExtendedIso.Format(NodaTime.OffsetDateTime.FromDateTimeOffset(test.At)),
        })]),
    };

    private static DoorSaid Door(Body door) => new(
        [.. door.PartsOrNone("tests").Select(test => new GasSaid(
            RoomTexts.Gas(test.Text("gas")) ?? throw new BodyFault("gas", "one of " + RoomTexts.AllGases), test.Number("value"), Short(test, "who"), Short(test, "instrument"), test.Moment("at")))],
        Short(door, "attendant"), door.Flag("locked_and_tagged"));

    private static RoomFigures Figures(Body body)
    {
        Dictionary<RoomFigure, double> given = [];
        foreach ((string key, double value) in body.NumbersOrNone("figures"))
        {
            RoomFigureForm form = RoomFigures.Forms.FirstOrDefault(form => form.Key == key)
                ?? throw new BodyFault($"figures.{key}", "one of " + string.Join(", ", RoomFigures.Forms.Select(form => form.Key)));
            given[form.Figure] = value;
        }

        return new RoomFigures(given, [.. body.TextsOrNone("neighbours").Select(text => RoomTexts.NeighbourOf(text) ?? throw new BodyFault("neighbours", "some of " + RoomTexts.AllNeighbours)).Distinct()]);
    }

    internal static string Number(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
}
