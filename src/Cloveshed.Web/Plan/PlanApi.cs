using Cloveshed.Ledger;
using Cloveshed.Web.Api;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Plan;

/// <summary>A plan as programs read it. Money in the season's currency, gap as a share; null where no bound was reached.</summary>
/// <param name="Id">Of the fact that records it.</param>
/// <param name="Asked">Of the fact that asked for it.</param>
/// <param name="Basis">The number of the last fact that it was planned from.</param>
/// <param name="Status">gap, time or cancelled.</param>
/// <param name="Adopted">The plan to work by.</param>
/// <param name="Files">Names under /api/v1/plans/{id}/files/.</param>
public sealed record PlanRead(
    Guid Id, Guid Asked, string Name, DateTimeOffset MadeAt, double Value, double? Bound, double? Gap, string Status, long Basis, bool Adopted, IReadOnlyList<string> Files);

/// <summary>GET /api/v1/plans and what is under it.</summary>
internal static class PlanApi
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder plans = routes.MapGroup("/api/v1/plans").AddEndpointFilter(FactsApi.Guard).ProducesProblem(StatusCodes.Status403Forbidden).ProducesProblem(StatusCodes.Status503ServiceUnavailable);
        plans.MapGet("", (ShedLedger ledger) => TypedResults.Json(All(ledger.Now()))).WithName("plans").WithSummary("All plans that passed the check, oldest first.").Produces<PlanRead[]>();
        plans.MapGet("/{id:guid}", One).WithName("plan").WithSummary("One plan.").Produces<PlanRead>().ProducesProblem(StatusCodes.Status404NotFound);
        plans.MapGet("/{id:guid}/files/{name}", File).WithName("plan-file").WithSummary("A file of a plan's answer: CSV, or summary.json with money by kind and the defaults.")
            .Produces<byte[]>(StatusCodes.Status200OK, "text/csv", "application/json").ProducesProblem(StatusCodes.Status404NotFound);
    }

    private static PlanRead[] All(ShedState state) => [.. state.Plans.Select(plan => new PlanRead(
        plan.Fact, plan.Asked, plan.Name, plan.MadeAt, plan.Value, Finite(plan.Bound), Finite(plan.Gap), plan.Status, plan.Basis, state.Adopted?.Fact == plan.Fact, PlanFiles.Names))];

    private static Results<JsonHttpResult<PlanRead>, ProblemHttpResult> One(Guid id, ShedLedger ledger) =>
        All(ledger.Now()).FirstOrDefault(plan => plan.Id == id) is { } plan ? TypedResults.Json(plan) : None();

    private static Results<FileContentHttpResult, ProblemHttpResult> File(Guid id, string name, ShedLedger ledger)
    {
        if (!PlanFiles.Names.Contains(name) || ledger.Now().Plans.FirstOrDefault(plan => plan.Fact == id) is not { } plan || ledger.Document(plan.Document) is not { } document
            || !PlanDocument.Files(document).TryGetValue(name, out ReadOnlyMemory<byte> bytes))
        {
            return None();
        }

        return TypedResults.File(bytes.ToArray(), name.EndsWith(".json", StringComparison.Ordinal) ? "application/json" : "text/csv; charset=utf-8", name);
    }

    private static ProblemHttpResult None() => TypedResults.Problem("There is no such plan, or no such file of it; /api/v1/plans lists them.", statusCode: StatusCodes.Status404NotFound);

    private static double? Finite(double number) => double.IsFinite(number) ? number : null;
}
