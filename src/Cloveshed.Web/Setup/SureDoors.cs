using System.Globalization;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Setup;

/// <summary>POST /setup/how-sure/stop ends the trials of the size curves, …/again begins them anew; GET /setup/how-sure/progress says how far they are.</summary>
internal static class SureDoors
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/setup/how-sure/stop", Stop);
        routes.MapPost("/setup/how-sure/again", Again);
        routes.MapGet("/setup/how-sure/progress", Progress);
    }

    /// <summary>How far the trials are, as it stands on their page.</summary>
    public static string Said(SureJob job, Words<SetupWord> words) =>
        words.Say(SetupWord.SureTrying, job.Done.ToString(CultureInfo.InvariantCulture), job.Knowings.ToString(CultureInfo.InvariantCulture));

    private static IResult Stop(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, SureRoom room)
    {
        if (shed.Season is not null)
        {
            room.Of(shed).Stop();
        }

        return desk.Back(context, form, new Said(false, Words.Of<SetupWord>(shed.Viewer.Language)[SetupWord.SureStopped]));
    }

    private static IResult Again(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, SureRoom room)
    {
        if (shed.Season is not null)
        {
            room.Again(shed);
        }

        return desk.Back(context, form, new Said(false, Words.Of<SetupWord>(shed.Viewer.Language)[SetupWord.SureBegun]));
    }

    private static Results<JsonHttpResult<FarSaid>, NotFound> Progress(ShedReading shed, SureRoom room)
    {
        if (shed.Season is null)
        {
            return TypedResults.NotFound();
        }

        SureJob job = room.Of(shed);
        return TypedResults.Json(new FarSaid(Said(job, Words.Of<SetupWord>(shed.Viewer.Language)), (double)job.Done / job.Knowings, job.Ended));
    }
}
