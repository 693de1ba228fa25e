using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Ledger;
using Cloveshed.Web.Promises;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Suppose;

/// <summary>
/// GET /plan/ID/suppose/progress says how far the model is, or the answer to the changes in its query; POST …/stop and …/again stop that answer and ask for it anew. The model is stopped and begun anew at the doors of
/// promises: it is one.
/// </summary>
internal static class SupposeDoors
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/plan/{id:guid}/suppose/progress", Progress);
        routes.MapPost("/plan/{id:guid}/suppose/stop", (Guid id, HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, PromiseRoom room) =>
            WithChanges(id, context, form, shed, desk, room, PromiseWord.AnswerStopping, (stand, changes) => stand.StopAsk(changes)));
        routes.MapPost("/plan/{id:guid}/suppose/again", (Guid id, HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, PromiseRoom room) =>
            WithChanges(id, context, form, shed, desk, room, PromiseWord.Begun, (stand, changes) => stand.ForgetStopped(changes)));
    }

    public static string Page(Guid plan) => $"/plan/{plan}/suppose";

    /// <summary>The page with one change supposed, answered at once.</summary>
    public static string Page(Guid plan, params IEnumerable<SeasonChange> changes) => SupposeForm.Path(Page(plan), changes) + "#answer";

    /// <summary>How far it is, as it stands on the page; what the season would be worth is said as soon as it is known.</summary>
    public static string Said(PromiseStand stand, SupposeAsk? ask, ShedReading shed)
    {
        Words<SupposeWord> words = Words.Of<SupposeWord>(shed.Viewer.Language);
        return stand.Stage is StandStage.Waiting or StandStage.Preparing ? PromiseDoors.Said(stand, null, Words.Of<PromiseWord>(shed.Viewer.Language))
            : ask is null ? ""
            : ask.Worth is { } worth ? words.Say(SupposeWord.WorthKnown, shed.Reader.Money(worth.Value), shed.Reader.Money(worth.Before), shed.Reader.Money(worth.Bound))
            : words[SupposeWord.Working];
    }

    private static IResult WithChanges(
        Guid id, HttpContext context, IFormCollection form, ShedReading shed, FactDesk desk, PromiseRoom room, PromiseWord said, Action<PromiseStand, IReadOnlyList<SeasonChange>> what)
    {
        if (room.Standing is { } stand && stand.Basis.Plan.Fact == id && shed.Season is { } season)
        {
            what(stand, SupposeForm.Of(context.Request.Query, season, shed.Reader.ShownPerSeasonUnit, Words.Of<SupposeWord>(shed.Viewer.Language)).Changes);
        }

        return desk.Back(context, form, new Said(false, Words.Of<PromiseWord>(shed.Viewer.Language)[said]));
    }

    private static Results<JsonHttpResult<FarSaid>, NotFound> Progress(Guid id, HttpContext context, ShedReading shed, PromiseReading promises, PromiseRoom room)
    {
        if (promises.Plan is not { } held || held.Fact != id || promises.Stand() is not { } stand)
        {
            return TypedResults.NotFound();
        }

        IReadOnlyList<SeasonChange> changes = SupposeForm.Of(context.Request.Query, shed.SeasonOpen, shed.Reader.ShownPerSeasonUnit, Words.Of<SupposeWord>(shed.Viewer.Language)).Changes;
        SupposeAsk? ask = changes.Count > 0 ? room.Suppose(stand, changes) : null;
        return TypedResults.Json(new FarSaid(Said(stand, ask, shed), PromiseDoors.Done(stand), !stand.Keeps(ask)));
    }
}
