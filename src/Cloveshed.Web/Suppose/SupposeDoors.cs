using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Ledger;
using Cloveshed.Web.Promises;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Suppose;

/// <summary>GET /plan/ID/suppose/progress says how far the model is, or the answer to the changes in its query. The model is stopped and begun anew at the doors of promises: it is one.</summary>
internal static class SupposeDoors
{
    public static void Map(IEndpointRouteBuilder routes) => routes.MapGet("/plan/{id:guid}/suppose/progress", Progress);

    public static string Page(Guid plan) => $"/plan/{plan}/suppose";

    /// <summary>The page with one change supposed, answered at once.</summary>
    public static string Page(Guid plan, params IEnumerable<SeasonChange> changes) => SupposeForm.Path(Page(plan), changes) + "#answer";

    public static string Said(PromiseStand stand, SupposeAsk? ask, Words<SupposeWord> words, Words<PromiseWord> model) =>
        stand.Stage is StandStage.Waiting or StandStage.Preparing ? PromiseDoors.Said(stand, null, model) : ask is null ? "" : words[SupposeWord.Working];

    private static Results<JsonHttpResult<FarSaid>, NotFound> Progress(Guid id, HttpContext context, ShedReading shed, PromiseReading promises, PromiseRoom room)
    {
        Words<SupposeWord> words = Words.Of<SupposeWord>(shed.Viewer.Language);
        if (promises.Plan is not { } held || held.Fact != id || promises.Stand() is not { } stand)
        {
            return TypedResults.NotFound();
        }

        IReadOnlyList<SeasonChange> changes = SupposeForm.Of(context.Request.Query, shed.SeasonOpen, shed.Reader.ShownPerSeasonUnit, words).Changes;
        SupposeAsk? ask = changes.Count > 0 ? room.Suppose(stand, changes) : null;
        return TypedResults.Json(new FarSaid(Said(stand, ask, words, Words.Of<PromiseWord>(shed.Viewer.Language)), PromiseDoors.Done(stand), !stand.Keeps(ask)));
    }
}
