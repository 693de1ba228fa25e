using Cloveshed.Core;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Pictures;
using Cloveshed.Web.Api;
using Cloveshed.Web.Promises;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime;

namespace Cloveshed.Web.Suppose;

/// <summary>
/// A change. Kind and what it needs: cancel (order, line_number or none for all lines), units (order, line_number, units), due (order, day), add (product, units, price, day), stop (line, day,
/// last_day), people (day, hours), dig-later (lot, weeks), keeps-less (lot, weeks), weighs-less (lot, percent), ran (lot, line, mass in the season's unit, no_more), open (room, day or none:
/// it stays shut). Days as 2026-10-23.
/// </summary>
public sealed record ChangeSent(
    string Kind, string? Order = null, string? LineNumber = null, string? Product = null, int? Units = null, decimal? Price = null, string? Day = null, string? LastDay = null, string? Line = null,
    double? Hours = null, string? Lot = null, double? Weeks = null, double? Percent = null, double? Mass = null, bool NoMore = false, string? Room = null);

/// <summary>What is supposed, all together.</summary>
public sealed record SupposeSent(IReadOnlyList<ChangeSent> Changes);

/// <summary>A run that would take another mass-in, in the season's mass unit. Week: its Monday.</summary>
public sealed record RunShiftRead(string Lot, string Line, string Week, double MassBefore, double Mass);

/// <summary>What would come of it. Money in the season's currency; ModelGap: how far the model is from its bound, a share; Moved: mass.</summary>
public sealed record SupposedRead(
    double ValueBefore, double Value, double Bound, double ModelGap, double Moved, IReadOnlyList<RunShiftRead> Runs, IReadOnlyList<PromiseExpenseRead> Less, IReadOnlyList<PromiseExpenseRead> More);

/// <summary>POST /api/v1/suppositions.</summary>
internal static class SupposeApi
{
    /// <summary>How long a question waits for its answer before it is told to ask again.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(8);

    public static void Map(IEndpointRouteBuilder routes) => routes.MapGroup("/api/v1/suppositions").AddEndpointFilter(FactsApi.Guard).ProducesProblem(StatusCodes.Status403Forbidden)
        .ProducesProblem(StatusCodes.Status503ServiceUnavailable).ProducesProblem(StatusCodes.Status409Conflict)
        .MapPost("", Ask).DisableAntiforgery().WithName("suppose").WithSummary("What would come of changes while the plan stands: value with its bound, the runs that move, who gets less and more. Nothing is changed.")
        .WithDescription("The plan's model is made ready on the first question, for a minute or so: 202 says how far it is, and the same question again gets its answer.")
        .Produces<SupposedRead>().Produces<PromiseNotYet>(StatusCodes.Status202Accepted).ProducesProblem(StatusCodes.Status422UnprocessableEntity);

    private static async Task<IResult> Ask(SupposeSent sent, HttpContext context, ShedReading shed, PromiseReading promises, PromiseRoom room)
    {
        if (promises.Stand() is not { } stand)
        {
            return PromiseApi.NoPlan();
        }

        if (sent.Changes.Count is < 1 or > SupposeForm.MostChanges)
        {
            return Faulty($"changes: 1 to {SupposeForm.MostChanges} are expected; there are {sent.Changes.Count}.");
        }

        SeasonChange?[] changes = [.. sent.Changes.Select(Of)];
        if (Array.IndexOf(changes, null) is >= 0 and var wrong)
        {
            return Faulty($"changes[{wrong}]: the kind \"{sent.Changes[wrong].Kind}\" is not known, or lacks what it needs, or a value of it is out of its range.");
        }

        SupposeAsk ask = room.Suppose(stand, changes.OfType<SeasonChange>().ToArray(), PromiseAsk.ProgramSeconds);
        await Task.WhenAny(ask.Done, Task.Delay(Patience, context.RequestAborted));
        return ask.Answer switch
        {
            null => PromiseApi.Waits(stand, ask.Why),
            { Answer: { } answer } => TypedResults.Json(Read(answer, stand.Gap)),
            { Refused: { } refused, Fault: { } fault } => Faulty($"changes[{Array.IndexOf(changes, refused)}]: {Words.Of<SupposeWord>(Language.En)[ChangeWords.Of(fault)]}"),
            _ => throw new InvalidOperationException("An answer is told or refused."),
        };
    }

    private static SeasonChange? Of(ChangeSent sent) => sent.Kind switch
    {
        "cancel" when sent.Order is { } order => new SeasonChange.OrderCancelled(new(order), sent.LineNumber),
        "units" when sent is { Order: { } order, LineNumber: { } number, Units: >= 1 and <= SeasonChange.MostUnits and var units } => new SeasonChange.OrderResized(new(order), number, units),
        "due" when sent.Order is { } order && Day(sent.Day) is { } day => new SeasonChange.OrderMoved(new(order), sent.LineNumber, day),
        "add" when sent is { Product: { } product, Units: >= 1 and <= SeasonChange.MostUnits and var units, Price: >= 0 and <= SeasonChange.MostPrice and var price } && Day(sent.Day) is { } day => SeasonChange.OrderAdded.Of(new(product), units, price, day),
        "stop" when sent.Line is { } line && Day(sent.Day) is { } first && (sent.LastDay is null ? first : Day(sent.LastDay)) is { } last => new SeasonChange.LineStopped(new(line), first, last),
        "people" when Day(sent.Day) is { } day && sent.Hours is >= 0 and <= SeasonChange.MostPersonHours and var hours => new SeasonChange.PeopleThere(day, hours),
        "dig-later" when sent is { Lot: { } lot, Weeks: >= 1 and <= SeasonChange.MostWeeks and var weeks } && weeks == Math.Floor(weeks) => new SeasonChange.LotDugLater(new(lot), (int)weeks),
        "keeps-less" when sent is { Lot: { } lot, Weeks: > 0 and <= SeasonChange.MostWeeks and var weeks } => new SeasonChange.LotKeepsLess(new(lot), weeks),
        "weighs-less" when sent is { Lot: { } lot, Percent: > 0 and <= SeasonChange.MostPercentLess and var percent } => new SeasonChange.LotWeighsLess(new(lot), percent / 100),
        "ran" when sent is { Lot: { } lot, Line: { } line, Mass: >= 0 and <= 1e12 and var mass } && (mass > 0 || sent.NoMore) => new SeasonChange.RunDone(new(lot), new(line), mass, sent.NoMore),
        "open" when sent.Room is { } room && (sent.Day is null || Day(sent.Day) is not null) => new SeasonChange.RoomOpened(new(room), Day(sent.Day)),
        _ => null,
    };

    private static LocalDate? Day(string? text) => text is null ? null : ChangeText.Day(text);

    private static SupposedRead Read(SupposedAnswer answer, double gap) => new(
        answer.ValueBefore, answer.Value, answer.Bound, gap, answer.Moved, [.. answer.Runs.Select(run => new RunShiftRead(run.Lot.Text, run.Line.Text, Paths.Day(run.Monday), run.Before, run.After))],
        Names(answer.Less), Names(answer.More));

    private static PromiseExpenseRead[] Names(IReadOnlyList<PromiseExpense> who) => [.. who.Select(one => new PromiseExpenseRead(one.KindName, one.Name, one.Product?.Text, one.Less, one.Money))];

    private static IResult Faulty(string fault) => TypedResults.Problem(fault, statusCode: StatusCodes.Status422UnprocessableEntity);
}
