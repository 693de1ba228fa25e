using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Pictures.Board;
using Cloveshed.Pictures.Promise;
using Cloveshed.Pictures.Sections;
using Cloveshed.Web.Plan.Since;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Plan;

/// <summary>A plan with the season that it was made from, and what its pictures and tables show. Each part is made once, when first asked for.</summary>
public sealed class PlanSight(PlanEntry entry, Season season, PlanAnswer answer)
{
    private readonly Lazy<SeasonBoardFacts> board = new(() => SeasonBoardFacts.From(season, answer));
    private readonly Lazy<PromiseFacts> promise = new(() => PromiseFacts.From(season, answer));
    private readonly Lazy<IReadOnlyList<OrderOutcome>> orders = new(() => OrderOutcome.All(season, answer));
    private readonly Lazy<RunBook> runs = new(() => RunBook.Of(answer));

    public PlanEntry Entry => entry;

    /// <summary>As it read when the plan was made.</summary>
    public Season Season => season;

    public PlanAnswer Answer => answer;

    /// <summary>Where the plan's page is, whichever plan is adopted.</summary>
    public string Path => $"/plan/{entry.Fact}";

    public string TablesPath => Path + "/tables";

    public SeasonBoardFacts Board => board.Value;

    public PromiseFacts Promise => promise.Value;

    public IReadOnlyList<OrderOutcome> Orders => orders.Value;

    public RunBook Runs => runs.Value;
}

/// <summary>Plans by their entries, with the season that each was made from.</summary>
public sealed class SightShelf(PlanShelf plans, BasisShelf bases)
{
    /// <summary>The adopted one, two that are compared, and the last few looked at.</summary>
    private const int Room = 8;

    private readonly Shelf<PlanSight> shelf = new(Room);

    public PlanSight Of(PlanEntry entry) => shelf.Of(entry.Fact.ToString(), () => new PlanSight(entry, bases.SeasonOf(entry.Basis), plans.Of(entry)));
}
