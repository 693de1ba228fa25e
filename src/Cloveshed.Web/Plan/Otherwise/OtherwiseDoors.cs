using System.Globalization;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Plan.Otherwise;

/// <summary>POST /plan/ID/otherwise/stop ends the play of a plan, …/again begins it anew; GET /plan/ID/otherwise/progress says how far it is.</summary>
internal static class OtherwiseDoors
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/plan/{id:guid}/otherwise/stop", Stop);
        routes.MapPost("/plan/{id:guid}/otherwise/again", Again);
        routes.MapGet("/plan/{id:guid}/otherwise/progress", Progress);
    }

    /// <summary>How far the play is, as it stands on its page.</summary>
    public static string Said(OtherwiseJob job, Words<PlanWord> words) =>
        words.Say(PlanWord.OtherwisePlaying, job.Done.ToString(CultureInfo.InvariantCulture), OtherwiseJob.Count.ToString(CultureInfo.InvariantCulture));

    private static PlanSight? Sight(Guid id, ShedReading shed, SightShelf sights) => shed.State.Plans.FirstOrDefault(plan => plan.Fact == id) is { } entry ? sights.Of(entry) : null;

    private static IResult Stop(Guid id, HttpContext context, [FromForm] IFormCollection form, ShedReading shed, SightShelf sights, FactDesk desk, OtherwiseRoom room)
    {
        if (Sight(id, shed, sights) is { } sight)
        {
            room.Of(sight).Stop();
        }

        return desk.Back(context, form, new Said(false, Words.Of<PlanWord>(shed.Viewer.Language)[PlanWord.OtherwiseStopped]));
    }

    private static IResult Again(Guid id, HttpContext context, [FromForm] IFormCollection form, ShedReading shed, SightShelf sights, FactDesk desk, OtherwiseRoom room)
    {
        if (Sight(id, shed, sights) is { } sight)
        {
            room.Again(sight);
        }

        return desk.Back(context, form, new Said(false, Words.Of<PlanWord>(shed.Viewer.Language)[PlanWord.OtherwiseBegun]));
    }

    private static Results<JsonHttpResult<FarSaid>, NotFound> Progress(Guid id, ShedReading shed, SightShelf sights, OtherwiseRoom room)
    {
        if (Sight(id, shed, sights) is not { } sight)
        {
            return TypedResults.NotFound();
        }

        OtherwiseJob job = room.Of(sight);
        return TypedResults.Json(new FarSaid(Said(job, Words.Of<PlanWord>(shed.Viewer.Language)), (double)job.Done / OtherwiseJob.Count, job.Ended));
    }
}
