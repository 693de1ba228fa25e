using Cloveshed.Core;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Web.Api;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using NodaTime.Text;

namespace Cloveshed.Web.Promises;

/// <summary>A line that is asked for. Price: what is offered for a unit, where that is known.</summary>
public sealed record PromiseLineSent(string Product, int Units, decimal? Price = null, bool LargerOk = false);

/// <summary>Can this be promised? Days as 2026-10-23. ShipFrom: the season's as-of date where it is not said.</summary>
public sealed record PromiseSent(string Due, IReadOnlyList<PromiseLineSent> Lines, string? ShipFrom = null);

/// <summary>What can be promised of a line. Money is per unit. AllFrom: the Monday of the week in which all of it can be had; null: not in this season.</summary>
public sealed record PromiseLineRead(string Product, int Asked, int ByDue, string? AllFrom, int? Worth, double? CostLow, double? Cost);

/// <summary>Who gives way. Kind: order-line, market or seed. Less: units; of seed, mass in the season's unit.</summary>
public sealed record PromiseExpenseRead(string Kind, string Name, string? Product, double Less, double Money);

/// <summary>The answer. Verdict: yes, at-a-loss, later, part, no. ModelGap: how far the model is from its bound, a share.</summary>
public sealed record PromiseRead(string Verdict, double Cost, double? Paid, double ModelGap, IReadOnlyList<PromiseLineRead> Lines, IReadOnlyList<PromiseExpenseRead> Expenses);

/// <summary>The next unit of a product in a week (its Monday), at least.</summary>
public sealed record NextUnitRead(string Product, string Week, double AtLeast);

/// <summary>Not yet: ask again. Stage: waiting, preparing, ready (then the question is being answered).</summary>
public sealed record PromiseNotYet(string Stage, double Seconds);

/// <summary>POST /api/v1/promises and GET /api/v1/promises/next-units.</summary>
internal static class PromiseApi
{
    /// <summary>How long a question waits for its answer before it is told to ask again.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(8);

    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder promises = routes.MapGroup("/api/v1/promises").AddEndpointFilter(FactsApi.Guard).ProducesProblem(StatusCodes.Status403Forbidden).ProducesProblem(StatusCodes.Status503ServiceUnavailable)
            .ProducesProblem(StatusCodes.Status409Conflict);
        promises.MapPost("", Ask).DisableAntiforgery().WithName("promise").WithSummary("Whether an order can be promised, from when, how much of it, at what cost and at whose. The plan is not changed.")
            .WithDescription("The plan's model is made ready on the first question, for a minute or so: 202 says how far it is, and the same question again gets its answer.")
            .Produces<PromiseRead>().Produces<PromiseNotYet>(StatusCodes.Status202Accepted).ProducesProblem(StatusCodes.Status422UnprocessableEntity);
        promises.MapGet("/next-units", NextUnits).WithName("next-units").WithSummary("What the next unit of each product costs the season in each week, at least.")
            .Produces<NextUnitRead[]>().Produces<PromiseNotYet>(StatusCodes.Status202Accepted);
    }

    private static async Task<IResult> Ask(PromiseSent sent, HttpContext context, ShedReading shed, PromiseReading promises, PromiseRoom room)
    {
        if (promises.Stand() is not { } stand)
        {
            return NoPlan();
        }

        if (Faults(sent, shed, out PromiseQuestion? question) is { } fault)
        {
            return TypedResults.Problem(fault, statusCode: StatusCodes.Status422UnprocessableEntity);
        }

        PromiseAsk ask = room.Ask(stand, question!, PromiseAsk.ProgramSeconds);
        await Task.WhenAny(ask.Done, Task.Delay(Patience, context.RequestAborted));
        // A program is told once that a hand has stopped it; asked again, it is a new question.
        stand.ForgetStopped(question!);
        return ask.Answer is { } answer ? TypedResults.Json(Read(answer, stand)) : Waits(stand, ask.Why);
    }

    private static IResult NextUnits(ShedReading shed, PromiseReading promises) =>
        promises.Stand() is not { } stand ? NoPlan()
        : stand.Stage != StandStage.Ready ? Waits(stand, stand.Ended ? stand.Why : null)
        : TypedResults.Json(stand.Prices.Select(price => new NextUnitRead(price.Product.Text, LocalDatePattern.Iso.Format(shed.SeasonOpen.Settings.Monday(price.Week)), price.AtLeast)).ToArray());

    /// <summary>What is wrong with a question, as a sentence; null where nothing is.</summary>
    private static string? Faults(PromiseSent sent, ShedReading shed, out PromiseQuestion? question)
    {
        question = null;
        if (sent.Lines.Count is < 1 or > StandingPlan.LinesAtMost)
        {
            return $"lines: 1 to {StandingPlan.LinesAtMost} are expected; there are {sent.Lines.Count}.";
        }

        if (sent.Lines.FirstOrDefault(line => shed.SeasonOpen.Products.All(product => product.Id.Text != line.Product)) is { } unknown)
        {
            return $"product: \"{unknown.Product}\" is no product of the season; they are {string.Join(", ", shed.SeasonOpen.Products.Select(product => product.Id))}.";
        }

        if (sent.Lines.FirstOrDefault(line => line.Units is < 1 or > PromiseForm.MostUnits || line.Price < 0) is { } odd)
        {
            return $"{odd.Product}: units from 1 to {PromiseForm.MostUnits} and a price of 0 or more are expected.";
        }

        if (LocalDatePattern.Iso.Parse(sent.Due) is not { Success: true, Value: var due } || LocalDatePattern.Iso.Parse(sent.ShipFrom ?? LocalDatePattern.Iso.Format(shed.SeasonOpen.Settings.AsOf)) is not { Success: true, Value: var from })
        {
            return "due, ship_from: a day such as 2026-10-23 is expected.";
        }

        if (sent.ShipFrom is not null && from > due)
        {
            return "ship_from: a day not after due is expected.";
        }

        question = new PromiseQuestion([.. sent.Lines.Select(line => new PromiseLine(new ProductId(line.Product), line.Units, line.Price, line.LargerOk))], from, due);
        return null;
    }

    private static PromiseRead Read(PromiseAnswer answer, PromiseStand stand) => new(
        answer.Verdict switch { PromiseVerdict.Yes => "yes", PromiseVerdict.AtALoss => "at-a-loss", PromiseVerdict.Later => "later", PromiseVerdict.Part => "part", _ => "no" },
        answer.Cost, answer.Paid, stand.Gap,
        [.. answer.Lines.Select(line => new PromiseLineRead(line.Product.Text, line.Asked, line.ByDue, line.AllFrom is { } day ? LocalDatePattern.Iso.Format(day) : null, line.Worth, line.CostLow, line.Cost))],
        [.. answer.Expenses.Select(one => new PromiseExpenseRead(
            one.KindName, one.Name, one.Product?.Text, one.Less, one.Money))]);

    internal static IResult Waits(PromiseStand stand, string? why) => why is null && stand.Stage is StandStage.Waiting or StandStage.Preparing or StandStage.Ready
        ? TypedResults.Json(new PromiseNotYet(stand.Stage switch { StandStage.Waiting => "waiting", StandStage.Preparing => "preparing", _ => "ready" }, Math.Round(stand.Seconds, 1)), statusCode: StatusCodes.Status202Accepted)
        : TypedResults.Problem($"The plan's model could not answer{(string.IsNullOrEmpty(why) ? "; it was stopped or let go" : ": " + why)}. Ask again.", statusCode: StatusCodes.Status409Conflict);

    internal static IResult NoPlan() => TypedResults.Problem("There is no plan to hold to: make one first.", statusCode: StatusCodes.Status409Conflict);
}
