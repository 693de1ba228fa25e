using Cloveshed.Core.Planning.Promises;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Promises;

/// <summary>
/// POST /dock/promise/stop ends the making of a model, …/again begins it anew; …/answer/stop and …/answer/again do so with the question in their query. GET /dock/promise/progress says how far it is, or the answer to the question in its query.
/// </summary>
internal static class PromiseDoors
{
    /// <summary>Of two parts, so that no order's page stands in its place.</summary>
    public const string Page = "/dock/promise/ask";

    private const string ProgressPath = "/dock/promise/progress", StopPath = "/dock/promise/answer/stop", AgainPath = "/dock/promise/answer/again";

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/dock/promise/stop", (HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, PromiseRoom room) =>
        {
            room.Standing?.Stop();
            return desk.Back(context, form, new Said(false, Words.Of<PromiseWord>(shed.Viewer.Language)[PromiseWord.Stopping]));
        });
        routes.MapPost("/dock/promise/again", (HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, PromiseRoom room) =>
        {
            room.Again();
            return desk.Back(context, form, new Said(false, Words.Of<PromiseWord>(shed.Viewer.Language)[PromiseWord.Begun]));
        });
        routes.MapPost(StopPath, (HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, PromiseRoom room) =>
            WithQuestion(context, form, shed, desk, room, PromiseWord.AnswerStopping, (stand, question) => stand.StopAsk(question)));
        routes.MapPost(AgainPath, (HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, PromiseRoom room) =>
            WithQuestion(context, form, shed, desk, room, PromiseWord.Begun, (stand, question) => stand.ForgetStopped(question)));
        routes.MapGet(ProgressPath, Progress);
        PromiseApi.Map(routes);
    }

    /// <summary>Where the page's script looks for how far it is.</summary>
    public static string ProgressOf(HttpRequest page) => ProgressPath + page.QueryString;

    /// <summary>Where a hand stops the question of a page, and where it asks it anew.</summary>
    public static string StopOf(HttpRequest page) => StopPath + page.QueryString;

    public static string AgainOf(HttpRequest page) => AgainPath + page.QueryString;

    /// <summary>How far it is, as it stands on the page.</summary>
    public static string Said(PromiseStand stand, PromiseAsk? ask, Words<PromiseWord> words) => stand.Stage switch
    {
        StandStage.Waiting => words[PromiseWord.StandWaits],
        StandStage.Preparing => words.Say(PromiseWord.StandPreparing, Paths.Number(Math.Floor(stand.Seconds)), Paths.Number(PromiseRoom.MostSeconds)),
        _ => ask is null ? "" : words[PromiseWord.Answering],
    };

    /// <summary>A share that never says that it is done before it is.</summary>
    public static double Done(PromiseStand stand) => stand.Ended ? 1 : Math.Min(0.98, stand.Seconds / PromiseRoom.MostSeconds);

    private static IResult WithQuestion(
        HttpContext context, IFormCollection form, ShedReading shed, FactDesk desk, PromiseRoom room, PromiseWord said, Action<PromiseStand, PromiseQuestion> what)
    {
        Words<PromiseWord> words = Words.Of<PromiseWord>(shed.Viewer.Language);
        if (room.Standing is { } stand && shed.Season is { } season && PromiseForm.Of(context.Request.Query, season, words).Question is { } question)
        {
            what(stand, question);
        }

        return desk.Back(context, form, new Said(false, words[said]));
    }

    private static Results<JsonHttpResult<FarSaid>, NotFound> Progress(HttpContext context, ShedReading shed, PromiseReading promises, PromiseRoom room)
    {
        Words<PromiseWord> words = Words.Of<PromiseWord>(shed.Viewer.Language);
        if (promises.Stand() is not { } stand)
        {
            return TypedResults.NotFound();
        }

        PromiseAsk? ask = PromiseForm.Of(context.Request.Query, shed.SeasonOpen, words).Question is { } question ? room.Ask(stand, question) : null;
        return TypedResults.Json(new FarSaid(Said(stand, ask, words), Done(stand), !stand.Keeps(ask)));
    }
}
