using System.Net;
using System.Text.Json;
using System.Text.Json.Nodes;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.OpenApi;
using Microsoft.AspNetCore.Routing;
using Microsoft.OpenApi;

namespace Cloveshed.Web.Api;

/// <summary>
/// Facts over HTTP, for devices and programs. Until keys exist only this machine may ask, and only programs: what a page of
/// another site makes a browser send is refused.
/// </summary>
internal static class FactsApi
{
    public const string DocumentName = "v1";

    /// <summary>Facts in one request: as many as a device gathers in a day without signal; more are sent in turns.</summary>
    public const int MostFacts = 1000;

    /// <summary>Who says so, until keys tell one program from another.</summary>
    private const string By = "this-machine";

    public static void Map(WebApplication app)
    {
        app.MapOpenApi("/api/v1/openapi.json");
        RouteGroupBuilder facts = app.MapGroup("/api/v1/facts").AddEndpointFilter(Guard).ProducesProblem(StatusCodes.Status403Forbidden)
            .ProducesProblem(StatusCodes.Status503ServiceUnavailable);
        facts.MapPost("", Take).DisableAntiforgery().WithName("append").WithSummary("Appends facts, each for itself; answered in their order once each is durable.")
            .WithDescription("200 when all were taken, 422 when any was refused: the answers say which. Each may be sent again and gets the same answer.")
            .Produces<FactAnswer[]>().Produces<FactAnswer[]>(StatusCodes.Status422UnprocessableEntity).ProducesProblem(StatusCodes.Status400BadRequest)
            .Accepts<FactSent[]>("application/json");
        facts.MapGet("", Give).WithName("read").WithSummary($"Reads facts in their order, after a number: at most {MostFacts} at a time.").Produces<FactRead[]>();
        app.MapFallback("/api/{**rest}", () => TypedResults.Problem("There is no such address under /api; /api/v1/openapi.json lists them.", statusCode: StatusCodes.Status404NotFound));
    }

    /// <summary>Says in the document what can be asked and what a kind's body holds.</summary>
    public static void Describe(OpenApiOptions options)
    {
        // Forms of pages are no interface for programs.
        options.ShouldInclude = described => described.RelativePath?.StartsWith("api/", StringComparison.Ordinal) == true;
        options.AddDocumentTransformer((document, _, _) =>
        {
            document.Info = new OpenApiInfo
            {
                Title = "Cloveshed", Version = DocumentName,
                Description = "Facts into and out of the ledger. Until keys exist, only from the machine that serves. A kind's body:\n\n" + FactBodies.Table(),
            };
            document.Servers?.Clear();
            return Task.CompletedTask;
        });
        options.AddSchemaTransformer((schema, context, _) =>
        {
            if (context.JsonPropertyInfo is { Name: "kind" })
            {
                schema.Enum = [.. FactKinds.All.Select(kind => (JsonNode)kind)];
            }

            return Task.CompletedTask;
        });
    }

    private static async Task<Results<JsonHttpResult<FactAnswer[]>, ProblemHttpResult>> Take(HttpContext context, ShedLedger ledger, ShedSignals signals)
    {
        FactSent[]? sent;
        try
        {
            sent = await context.Request.ReadFromJsonAsync<FactSent[]>(context.RequestAborted);
        }
        catch (Exception problem) when (problem is JsonException or BadHttpRequestException or InvalidOperationException)
        {
            return TypedResults.Problem($"The body is not an array of facts as JSON: {problem.Message}", statusCode: StatusCodes.Status400BadRequest);
        }

        if (sent is not { Length: > 0 and <= MostFacts } || sent.Contains(null))
        {
            return TypedResults.Problem($"Send an array of 1 to {MostFacts} facts.", statusCode: StatusCodes.Status400BadRequest);
        }

        FactAnswer[] answers = [.. sent.Select(fact => One(fact, ledger, signals))];
        return TypedResults.Json(answers, statusCode: answers.All(answer => answer.Seq is not null) ? StatusCodes.Status200OK : StatusCodes.Status422UnprocessableEntity);
    }

    private static FactAnswer One(FactSent fact, ShedLedger ledger, ShedSignals signals) =>
        signals.Append(ledger, [new NewFact(fact.Id, fact.Kind, fact.HappenedAt, By, fact.Device, fact.Place, fact.Body, fact.Corrects)]) switch
        {
            Appended.Accepted accepted => new(fact.Id, accepted.Facts[0].Seq),
            Appended.Refused { Refusals: [var first, ..] } => new(fact.Id, null, first.Rule, first.Message, first.Remedy),
            _ => throw new InvalidOperationException("The ledger refused without a reason."),
        };

    private static JsonHttpResult<FactRead[]> Give(ShedLedger ledger, [FromQuery] long after = 0) =>
        TypedResults.Json(ledger.Read(after, most: MostFacts).Select(FactRead.Of).ToArray());

    /// <summary>Only this machine; no page of another site; and a ledger that cannot be read says so in JSON.</summary>
    public static async ValueTask<object?> Guard(EndpointFilterInvocationContext asked, EndpointFilterDelegate next)
    {
        HttpRequest request = asked.HttpContext.Request;
        if (asked.HttpContext.Connection.RemoteIpAddress is { } from && !IPAddress.IsLoopback(from))
        {
            return TypedResults.Problem("Facts are taken and given on the machine that serves only, until keys exist.", statusCode: StatusCodes.Status403Forbidden);
        }

        if (request.Headers["Sec-Fetch-Site"].ToString() is not ("" or "same-origin" or "none") || request.Headers.Origin.Any(origin => origin != $"{request.Scheme}://{request.Host}"))
        {
            return TypedResults.Problem("A page of another site may not ask for facts here.", statusCode: StatusCodes.Status403Forbidden);
        }

        try
        {
            return await next(asked);
        }
        catch (LedgerFault fault)
        {
            return TypedResults.Problem(fault.Message, statusCode: StatusCodes.Status503ServiceUnavailable);
        }
    }
}
