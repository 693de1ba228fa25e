using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Core.Yard;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Yard;
using Cloveshed.SeasonFiles.Weighing;
using Cloveshed.SeasonFiles.Yard;
using Cloveshed.Web.Rooms;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using NodaTime;

namespace Cloveshed.Web.Yard;

/// <summary>
/// POST /yard/…: weather by hand and from a file, what a yard is, sacks by hand and from a file, a lot cured. A file is one batch; the ids of its
/// facts are made of what they say, so that a file sent again, longer by a day, adds that day and nothing twice.
/// </summary>
internal static class YardDoors
{
    private const string Place = "yard";

    private const long MostBytes = 4 * 1024 * 1024;

    /// <summary>A forecast reaches a fortnight and a bit.</summary>
    private const int ForecastDays = 16;

    /// <summary>A typical day is said whole or not at all.</summary>
    private static readonly string[] DayFields = ["min_c", "max_c", "rh_at_max", "rh_at_min"];

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/yard/weather", Weather);
        routes.MapPost("/yard/weather-file", WeatherFile).WithFormOptions(multipartBodyLengthLimit: MostBytes + 65_536);
        routes.MapPost("/yard/is", Is);
        routes.MapPost("/yard/sack", Sack);
        routes.MapPost("/yard/sack-file", SackFile).WithFormOptions(multipartBodyLengthLimit: MostBytes + 65_536);
        routes.MapPost("/yard/cured", Cured);
    }

    private static IResult Weather(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        YardDraft draft = new(form, shed);
        LocalDateTime? at = draft.Moment("at");
        double? tempC = draft.Needed("temp_c", YardWord.TempC), rh = draft.Needed("rh", YardWord.Rh), rain = draft.Number("rain_mm", YardWord.Rain);
        string who = draft.Who();
        return draft.Faults.Count > 0 ? Again(draft) : Put(
            context, draft, desk, (origin, id) => YardBodies.Made(origin, new WeatherSaid(new PlaceId(draft["place"]), [new WeatherRow(at!.Value, tempC!.Value, rh!.Value, rain ?? 0)], "hand", who), null, id), draft.Words[YardWord.WeatherKept]);
    }

    private static IResult Is(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        YardDraft draft = new(form, shed);
        bool day = DayFields.Any(field => draft[field].Length > 0);
        double? Of(string field, YardWord name) => day ? draft.Needed(field, name) : null;
        double? min = Of("min_c", YardWord.MinC), max = Of("max_c", YardWord.MaxC), dry = Of("rh_at_max", YardWord.RhAtMax), damp = Of("rh_at_min", YardWord.RhAtMin), forced = draft.Number("forced_c", YardWord.ForcedC);
        string who = draft.Who();
        return draft.Faults.Count > 0 ? Again(draft) : Put(
            context, draft, desk, (origin, id) => YardBodies.Made(origin, new YardIs(new PlaceId(draft["place"]), day ? new TypicalDay(min!.Value, max!.Value, dry!.Value, damp!.Value) : null, draft["roof"] == "yes", forced, who), null, id), draft.Words[YardWord.IsKept]);
    }

    private static IResult Sack(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, TimeProvider clock)
    {
        YardDraft draft = new(form, shed);
        LocalDateTime? at = draft.Moment("at");
        double? weight = draft.Needed("weight", YardWord.Weight);
        string mark = draft.Text("sack", YardWord.SackMark), who = draft.Who();
        if (at is { } moment && moment > LocalDateTime.FromDateTime(clock.GetLocalNow().DateTime).PlusMinutes(1))
        {
            draft.Fault("at", YardWord.FaultAhead, YardWord.FaultAheadRemedy);
        }

        return draft.Faults.Count > 0 ? Again(draft) : Put(
            context, draft, desk, (origin, id) => YardBodies.Made(origin with { HappenedAt = Here(at!.Value, clock) }, new SackSaid(new LotId(draft["lot"]), mark, weight!.Value, shed.Unit, who), null, id), draft.Words[YardWord.SackKept]);
    }

    private static async Task<IResult> WeatherFile(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, TimeProvider clock, SaidOnce said)
    {
        YardDraft draft = new(form, shed);
        string who = draft.Who();
        return await File<WeatherRow>(context, draft, desk, said, (name, bytes) => WeatherHoursFile.Parse(name, bytes, clock.LocalTimeZone, clock.GetLocalNow().AddDays(ForecastDays), shed.Viewer.FileLanguage), rows =>
        [
            // One fact a day: few facts, each small enough to be looked at.
            .. rows.GroupBy(row => row.From.Date).Select(day =>
            {
                DateTimeOffset at = Here(day.First().From, clock), now = clock.GetLocalNow();
                return Named(YardBodies.Made(desk.Origin(Place) with { HappenedAt = at < now ? at : now }, new WeatherSaid(new PlaceId(draft["place"]), [.. day], "file", who)), at);
            }),
        ]);
    }

    private static async Task<IResult> SackFile(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, TimeProvider clock, SaidOnce said)
    {
        YardDraft draft = new(form, shed);
        string who = draft.Who();
        string[] lots = [.. (shed.Season?.Lots ?? []).Select(row => row.Lot.Text).Distinct()];
        return await File<SackRow>(
            context, draft, desk, said, (name, bytes) => SackWeightsFile.Parse(name, bytes, lots, clock.LocalTimeZone, clock.GetLocalNow().AddMinutes(1), shed.Viewer.FileLanguage),
            rows => [.. rows.Select(row => Named(YardBodies.Made(desk.Origin(Place) with { HappenedAt = row.At }, new SackSaid(row.Lot, row.Sack, row.Weight, shed.Unit, who)), row.At))]);
    }

    /// <summary>A lot that somebody found cured: all of its rows say so from now on.</summary>
    private static IResult Cured(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        Words<YardWord> words = Words.Of<YardWord>(shed.Viewer.Language);
        string lot = form["lot"].ToString();
        SeasonRow[] rows = [.. (shed.State.Rows?.Of("lots.csv") ?? []).Where(row => row.Cells["lot"] == lot)];
        return rows.Length == 0 ? TypedResults.BadRequest() : desk.PutAll(
            context, form, Place, (origin, id) => [.. rows.Select((row, at) => origin.RowChanged(row, new Dictionary<string, string>(row.Cells) { ["cured"] = "yes" }, FactDesk.Following(id, at), words[YardWord.CuredReason]))],
            words.Say(YardWord.CuredKept, lot));
    }

    private static async Task<IResult> File<TRow>(
        HttpContext context, YardDraft draft, FactDesk desk, SaidOnce said, Func<string, byte[], FileReading<IReadOnlyList<TRow>>> read, Func<IReadOnlyList<TRow>, NewFact[]> facts)
    {
        if (desk.OnlyToLookAt(context, draft.Form) is { } past)
        {
            return past;
        }

        if (draft.Form.Files.GetFile("file") is not { Length: > 0 and <= MostBytes } file)
        {
            draft.Fault("file", YardWord.FaultFile, YardWord.FaultFileRemedy);
            return Again(draft);
        }

        if (draft.Faults.Count > 0)
        {
            return Again(draft);
        }

        using MemoryStream bytes = new();
        await file.CopyToAsync(bytes, context.RequestAborted);
        FileReading<IReadOnlyList<TRow>> reading = read(Path.GetFileName(file.FileName), bytes.ToArray());
        if (reading.Value is not { } rows)
        {
            draft.Faults.AddRange(reading.Faults.Select(fault => new FormFault(null, (fault with { Remedy = "" }).ToString().TrimEnd(), fault.Remedy)));
            return Again(draft);
        }

        switch (desk.Append(facts(rows)))
        {
            case Appended.Refused refused:
                draft.Faults.AddRange(FormFault.Of(refused));
                return Again(draft);
            case var taken:
                said.Say(context, new Said(false, draft.Words.Say(((Appended.Accepted)taken).Again ? YardWord.FileAgain : YardWord.FileKept, rows.Count.ToString("N0", CultureInfo.InvariantCulture))));
                return new SeeOther(FactDesk.LocalPath(draft.Form[FactDesk.BackField]));
        }
    }

    /// <summary>An id that is made of what the fact says.</summary>
    private static NewFact Named(NewFact made, DateTimeOffset at) => made with { Id = ReadingsDoor.IdOf(at, made.Kind + made.Body.GetRawText()) };

    private static DateTimeOffset Here(LocalDateTime at, TimeProvider clock) => new(at.ToDateTimeUnspecified(), clock.LocalTimeZone.GetUtcOffset(at.ToDateTimeUnspecified()));

    private static IResult Put(HttpContext context, YardDraft draft, FactDesk desk, Func<FactOrigin, Guid, NewFact> make, string done)
    {
        if (FactDesk.Id(draft.Form) is not { } id)
        {
            return TypedResults.BadRequest();
        }

        if (desk.OnlyToLookAt(context, draft.Form) is { } past)
        {
            return past;
        }

        if (desk.Append(make(desk.Origin(Place), id)) is Appended.Refused refused)
        {
            draft.Faults.AddRange(FormFault.Of(refused));
            return Again(draft);
        }

        return desk.Back(context, draft.Form, new Said(false, done));
    }

    private static IResult Again(YardDraft draft) => ShownAgain.As<YardPage>(new Dictionary<string, object>
    {
        [nameof(YardPage.Faults)] = (IReadOnlyList<FormFault>)draft.Faults, [nameof(YardPage.Sent)] = (IReadOnlyDictionary<string, string>)draft.Form.ToDictionary(field => field.Key, field => field.Value.ToString()),
    });
}
