using System.Text.Json.Nodes;
using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Yard;
using Cloveshed.Ledger.Facts;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Ledger.Yard;

/// <summary>Facts of the yard and of looks at lots: made, and read again. What a body lacks throws <see cref="BodyFault"/>.</summary>
public static class YardBodies
{
    /// <summary>Characters of who, a sack's mark and a note.</summary>
    public const int LongestText = 200;

    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");

    /// <summary>A fact in its form, at the origin's moment.</summary>
    /// <param name="corrects">The record that this one takes the place of.</param>
    public static NewFact Made(FactOrigin origin, YardSaid said, Guid? corrects = null, Guid? id = null) => said switch
    {
        WeatherSaid weather => origin.Make(FactKinds.WeatherTold, new JsonObject
        {
            ["place"] = weather.Place.Text, ["source"] = weather.Source, ["who"] = weather.Who,
            ["rows"] = new JsonArray([.. weather.Rows.Select(row => (JsonNode)new JsonObject
            {
                ["at"] = Minute.Format(row.From), ["temp_c"] = row.TempC, ["rh"] = row.Rh, ["rain_mm"] = row.RainMm, ["wind_ms"] = row.WindMs, ["forced_c"] = row.ForcedC,
            })]),
        }, corrects, id),
        YardIs yard => origin.Make(FactKinds.YardDescribed, new JsonObject
        {
            ["place"] = yard.Place.Text, ["min_c"] = yard.Day?.MinC, ["max_c"] = yard.Day?.MaxC, ["rh_at_max"] = yard.Day?.RhAtMax, ["rh_at_min"] = yard.Day?.RhAtMin,
            ["roof"] = yard.Roof, ["forced_c"] = yard.ForcedC, ["who"] = yard.Who,
        }, corrects, id),
        SackSaid sack => origin.Make(FactKinds.SackWeighed, new JsonObject
        {
            ["lot"] = sack.Lot.Text, ["sack"] = sack.Sack, ["weight"] = sack.Weight, ["unit"] = Unit(sack.Unit), ["who"] = sack.Who,
        }, corrects, id),
        LookSaid look => origin.Make(FactKinds.LotInspected, new JsonObject
        {
            ["lot"] = look.Lot.Text, ["place"] = look.Place.Text, ["looked"] = look.Looked, ["sprouted"] = look.Sprouted, ["decayed"] = look.Decayed,
            ["weighed"] = look.Weighed is { } weighed
                ? new JsonObject { ["now"] = weighed.Now, ["then"] = weighed.Then, ["since"] = LocalDatePattern.Iso.Format(weighed.Since), ["unit"] = Unit(weighed.Unit) } : null,
            ["who"] = look.Who, ["note"] = look.Note,
        }, corrects, id),
        _ => throw new ArgumentOutOfRangeException(nameof(said)),
    };

    /// <summary>A record that no longer counts.</summary>
    public static NewFact Withdrawn(FactOrigin origin, Guid record, string reason, Guid? id = null) =>
        origin.Make(FactKinds.YardRecordWithdrawn, new JsonObject { ["reason"] = reason }, record, id);

    internal static YardRecord Record(StoredFact fact)
    {
        Body body = Body.Of(fact.Body);
        bool withdrawn = fact.Kind == FactKinds.YardRecordWithdrawn;
        return new YardRecord(
            Guid.ParseExact(fact.Id, "D"), fact.Seq, StoredFact.Time(fact.HappenedAt), StoredFact.Time(fact.RecordedAt),
            fact.Corrects is { } corrects ? Guid.ParseExact(corrects, "D") : null, withdrawn ? null : Said(fact.Kind, body), withdrawn ? Filled(body, "reason") : "");
    }

    /// <summary>What a body of one of the kinds says, its form checked.</summary>
    internal static YardSaid Said(string kind, Body body)
    {
        string who = Filled(body, "who");
        return kind switch
        {
            FactKinds.WeatherTold => new WeatherSaid(
                new PlaceId(body.Text("place")), Rows(body),
                body.TextOrNone("source") is { } source ? source is "hand" or "file" ? source : throw new BodyFault("source", "hand or file") : "hand", who),
            FactKinds.YardDescribed => new YardIs(
                new PlaceId(body.Text("place")),
                body.NumberOrNone("min_c") is { } min ? new TypicalDay(min, body.Number("max_c"), body.Number("rh_at_max"), body.Number("rh_at_min")) : null,
                body.Flag("roof"), body.NumberOrNone("forced_c"), who),
            FactKinds.SackWeighed => new SackSaid(new LotId(body.Text("lot")), Filled(body, "sack"), body.Number("weight"), body.Unit("unit"), who),
            FactKinds.LotInspected => new LookSaid(
                new LotId(body.Text("lot")), new PlaceId(body.Text("place")), Count(body, "looked"), Count(body, "sprouted"), Count(body, "decayed"),
                body.PartOrNone("weighed") is { } weighed ? new WeighedAgain(weighed.Number("now"), weighed.Number("then"), weighed.Date("since"), weighed.Unit("unit")) : null,
                who, Short(body, "note")),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No kind about the yard."),
        };
    }

    internal static string Filled(Body body, string key) => Short(body, key) is { Length: > 0 } text ? text : throw new BodyFault(key, "a text that is not empty");

    private static string Short(Body body, string key) =>
        (body.TextOrNone(key) ?? "").Trim() is var text && text.Length <= LongestText ? text : throw new BodyFault(key, $"a text of at most {LongestText} characters");

    private static int Count(Body body, string key) => checked((int)body.Whole(key));

    private static WeatherRow[] Rows(Body body)
    {
        WeatherRow[] rows =
        [
            .. body.PartsOrNone("rows").Select(row => new WeatherRow(
                Minute.Parse(row.Text("at")) is { Success: true, Value: var at } ? at : throw new BodyFault("rows.at", "a local time such as 2026-08-02T14:00"),
                row.Number("temp_c"), row.Number("rh"), row.NumberOrNone("rain_mm") ?? 0, row.NumberOrNone("wind_ms"), row.NumberOrNone("forced_c"))),
        ];
        return rows.Length > 0 && rows.Select(row => row.From).Distinct().Count() == rows.Length ? rows : throw new BodyFault("rows", "one row or more, each of another moment");
    }

    private static string Unit(MassUnit unit) => unit == MassUnit.Kilogram ? "kg" : "lb";
}
