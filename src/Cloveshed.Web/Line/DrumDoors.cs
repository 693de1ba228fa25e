using Cloveshed.Core;
using Cloveshed.Core.Drum;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.WebUtilities;

namespace Cloveshed.Web.Line;

/// <summary>GET /line-answers/drum/… gives what holes give; POST /line-facts/holes puts holes in force.</summary>
internal static class DrumDoors
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/line-answers/drum/{name}", Answer);
        routes.MapPost("/line-facts/holes", Put);
    }

    private static Results<JsonHttpResult<DrumAnswered>, NotFound> Answer(string name, HttpContext context, ShedReading shed, DrumShelf shelf)
    {
        LotId lot = new(Paths.Named(name));
        if (shed.Season is null || DrumSight.Of(shed, shelf, lot, context.Request.Query) is not { } sight)
        {
            return TypedResults.NotFound();
        }

        DrumTold told = DrumTold.Of(sight, shed, Words.Of<LineWord>(shed.Viewer.Language));
        CurveDrawing drawing = DrumDrawing.Of(sight);
        return TypedResults.Json(new DrumAnswered(told.Said, told.Off, DrumTold.Regions(sight), sight.Faults, sight.OutOfOrder, DrumSight.With(LinePaths.Of(LinePaths.Drum, lot), context.Request.Query, sight.Best.HolesMm, sight.Best.Order), drawing.Svg("")));
    }

    private static IResult Put(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, DrumShelf shelf)
    {
        Words<LineWord> words = Words.Of<LineWord>(shed.Viewer.Language);
        LotId lot = new(form["lot"].ToString());
        QueryCollection asked = new(QueryHelpers.ParseQuery(form["setting"].ToString()));
        if (shed.Season is null || DrumSight.Of(shed, shelf, lot, asked) is not { } sight || sight.OutOfOrder is not null || sight.Faults.Count > 0 || sight.Holes.Distinct().Count() < sight.Holes.Count)
        {
            return desk.Back(context, form, new Said(true, words[LineWord.HolesMustRise]));
        }

        return desk.Put(context, form, SizerDoors.Place, (origin, id) => origin.DrumSet(lot, [.. sight.Holes], sight.Order == HoleOrder.LargestFirst, id), words.Say(LineWord.HolesDone, lot));
    }
}

/// <summary>What holes give, for a hand that drags.</summary>
/// <param name="Best">The address of the best holes.</param>
/// <param name="Picture">The humps as these holes have them.</param>
internal sealed record DrumAnswered(
    IReadOnlyDictionary<string, string> Said, IReadOnlyList<int> Off, IReadOnlyList<SizerRegion> Regions, IReadOnlyList<string> Faults, int? OutOfOrder, string Best, string Picture);
