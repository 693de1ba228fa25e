using Cloveshed.Core;
using Cloveshed.Core.Cuts;
using Cloveshed.Core.Line;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.WebUtilities;

namespace Cloveshed.Web.Line;

/// <summary>A setting's figures for a hand that drags, with the address of the best cuts under it.</summary>
internal sealed record SizerAnswered(IReadOnlyDictionary<string, string> Said, IReadOnlyList<int> Off, IReadOnlyList<SizerRegion> Regions, IReadOnlyList<string> Faults, int? OutOfOrder, string Best);

/// <summary>GET /line-answers/sizer/… gives a setting's figures; POST /line-facts/cuts puts a setting in force.</summary>
internal static class SizerDoors
{
    internal const string Place = "line";

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/line-answers/sizer/{name}", Answer);
        routes.MapPost("/line-facts/cuts", Put);
    }

    private static Results<JsonHttpResult<SizerAnswered>, NotFound> Answer(string name, HttpContext context, ShedReading shed, WeightsShelf weights)
    {
        LotId lot = new(Paths.Named(name));
        if (shed.Season is null || SizerSight.Of(shed, weights, lot, context.Request.Query) is not { } sight)
        {
            return TypedResults.NotFound();
        }

        SizerTold told = SizerTold.Of(sight, shed, Words.Of<LineWord>(shed.Viewer.Language));
        return TypedResults.Json(new SizerAnswered(told.Said, told.Off, told.Regions, told.Faults, sight.OutOfOrder, sight.Asked.With(LinePaths.Of(LinePaths.Sizer, lot), sight.BestWish)));
    }

    private static IResult Put(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, WeightsShelf weights)
    {
        Words<LineWord> words = Words.Of<LineWord>(shed.Viewer.Language);
        LotId lot = new(form["lot"].ToString());
        QueryCollection asked = new(QueryHelpers.ParseQuery(form["setting"].ToString()));
        if (shed.Season is not { } season || SizerSight.Of(shed, weights, lot, asked) is not { } sight || sight.OutOfOrder is not null || sight.Asked.Faults.Count > 0 || sight.Wish.Boxes.Boxes.Count == 0)
        {
            return desk.Back(context, form, new Said(true, words[LineWord.PutWrong]));
        }

        (IReadOnlyList<Box> boxes, double? over) = sight.Wish.Boxes;
        string Name(int k) => season.Sizes[k].Id.Text;
        SetBox[] set = [.. boxes.Select(box => new SetBox(Name(box.Class), Name(box.Last), Math.Round(box.MinG, 1)))];
        return desk.Put(context, form, Place, (origin, id) => origin.SizerSet(lot, set, over is { } top ? Math.Round(top, 1) : null, id), words.Say(LineWord.PutDone, lot));
    }
}
