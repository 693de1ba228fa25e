using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Core.Sizes;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Http.Metadata;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Line;

/// <summary>POST /line-facts/count takes a sizer's file, …/stop ends its reading, …/drop takes a count back; GET /line-answers/count/… says how far it is.</summary>
internal static class CountDoors
{
    /// <summary>Bytes of a file: ten million bulbs are about 60 MB, with counts far less.</summary>
    public const long MostBytes = 1024L * 1024 * 1024;

    public static void Map(IEndpointRouteBuilder routes)
    {
        // The body goes to the disk as it comes; what is larger is cut off there.
        routes.MapPost("/line-facts/count", Take).WithFormOptions(multipartBodyLengthLimit: MostBytes + (1024 * 1024)).WithMetadata(new SentLimit(MostBytes + (1024 * 1024)));
        routes.MapPost("/line-facts/count/stop", Stop);
        routes.MapPost("/line-facts/count/drop", Drop);
        routes.MapGet("/line-answers/count/{job:guid}", Answer);
    }

    /// <summary>How far a job is, as it stands on its page.</summary>
    public static string Said(CountJob job, ShedReading shed, Words<LineWord> words) =>
        words.Say(LineWord.CountReading, shed.Reader.Number(job.Bulbs, 0), shed.Reader.Percent(job.Bytes > 0 ? Math.Min(1, (double)job.BytesRead / job.Bytes) : 0, 0));

    private static async Task<IResult> Take(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, CountRoom room)
    {
        Words<LineWord> words = Words.Of<LineWord>(shed.Viewer.Language);
        if (FactDesk.Id(form) is not { } id)
        {
            return TypedResults.BadRequest();
        }

        LotId lot = new(form["lot"].ToString());
        IResult Wrong(LineWord word) => desk.Back(context, form, new Said(true, words[word]));
        if (desk.OnlyToLookAt(context, form) is { } past)
        {
            return past;
        }

        if (shed.Season is not { } season || season.Lots.All(row => row.Lot != lot))
        {
            return desk.Back(context, form, new Said(true, words.Say(LineWord.NoLotLead, lot)));
        }

        if (form.Files.GetFile("file") is not { Length: > 0 } file)
        {
            return Wrong(LineWord.CountNoFile);
        }

        if (!int.TryParse(form["bins"], NumberStyles.None, CultureInfo.InvariantCulture, out int bins) || bins is < 1 or > 1_000_000)
        {
            return Wrong(LineWord.CountBadBins);
        }

        string name = new([.. Path.GetFileName(file.FileName).Where(sign => !char.IsControl(sign)).Take(200)]), path = room.NewPath();
        await using (FileStream laid = File.Create(path))
        {
            await file.CopyToAsync(laid, context.RequestAborted);
        }

        room.Take(new CountJob(id, lot, name, bins, file.Length, desk.Origin(SizerDoors.Place), shed.Viewer.FileLanguage), path);
        return new SeeOther(Paths.Query(LinePaths.Of(LinePaths.Count, lot), ("job", id.ToString("D", CultureInfo.InvariantCulture))));
    }

    private static IResult Stop(HttpContext context, [FromForm] IFormCollection form, FactDesk desk, CountRoom room, Viewer viewer)
    {
        if (Guid.TryParse(form["job"], out Guid id) && room.Find(id) is { } job)
        {
            job.Stop();
        }

        return desk.Back(context, form, new Said(false, Words.Of<LineWord>(viewer.Language)[LineWord.CountStopped]));
    }

    private static IResult Drop(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        Words<LineWord> words = Words.Of<LineWord>(shed.Viewer.Language);
        if (!Guid.TryParse(form["count"], out Guid counted))
        {
            return TypedResults.BadRequest();
        }

        // Sent again, the count is already the corrected one.
        SizerCount? count = shed.State.SizerCounts.FirstOrDefault(one => one.Fact == counted || one.Fact == FactDesk.Id(form));
        return count is null ? desk.Back(context, form, new Said(true, words[LineWord.CountGone]))
            : desk.Put(context, form, SizerDoors.Place, (origin, id) => origin.SizerCounted(count.Lot, count.File, count.BinsRun, new WeightHistogram(), id, counted), words.Say(LineWord.CountDropped, count.File));
    }

    private static Results<JsonHttpResult<FarSaid>, NotFound> Answer(Guid job, ShedReading shed, CountRoom room) =>
        room.Find(job) is { } found && shed.Season is not null
            ? TypedResults.Json(new FarSaid(Said(found, shed, Words.Of<LineWord>(shed.Viewer.Language)), found.Bytes > 0 ? Math.Min(1, (double)found.BytesRead / found.Bytes) : 0, found.Stage != CountStage.Reading))
            : TypedResults.NotFound();

    private sealed record SentLimit(long? MaxRequestBodySize) : IRequestSizeLimitMetadata;
}
