using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Plan.Since;

/// <summary>The shed as it was when a plan was asked for, and what was said since that a new plan would take in.</summary>
public sealed class BasisShelf(ShedLedger ledger)
{
    private const int Room = 4;

    private readonly Shelf<ShedState> sheds = new(Room);
    private readonly Shelf<IReadOnlyList<Fact>> facts = new(Room);

    /// <summary>The shed by the facts up to a number.</summary>
    public ShedState ShedOf(long basis) => ledger.Now() is { } now && (now.Head.Seq == basis || Since(basis, now.Head.Seq).Count == 0) ? now : sheds.Of($"{basis}", () => ledger.Upto(basis));

    /// <summary>The season by the facts up to a number.</summary>
    public Season SeasonOf(long basis) => ShedOf(basis).Season ?? throw new InvalidOperationException($"By fact {basis} no season was open.");

    /// <summary>What was entered or changed since the adopted plan was made.</summary>
    public SincePlan SinceAdopted(ShedState state) =>
        new(state, state is { Adopted: { } adopted, Season.PriceOrigins.Count: > 0 } ? SeasonOf(adopted.Basis) : null);

    /// <summary>Facts above a number and up to another that a plan is made of: rows, settings, holds. Plans and notes are none.</summary>
    public IReadOnlyList<Fact> Since(long basis, long head) => facts.Of(
        $"{basis} {head}", () => [.. ledger.Read(basis).TakeWhile(fact => fact.Seq <= head).Where(fact => SeasonFacts.ChangesPlan(fact.Kind))]);
}
