using Cloveshed.Ledger;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Setup;

/// <summary>A row's form as it was sent and not taken: shown again with what was wrong.</summary>
/// <param name="Trial">What the season's reader has against it; null where it was something else.</param>
/// <param name="Others">What is wrong with the form itself, or what the ledger refused.</param>
/// <param name="Dropping">It was to be dropped, not changed.</param>
/// <param name="Id">The fact's id that the form brought, kept so that a fact is one however often it is sent.</param>
public sealed record RowDraft(
    IReadOnlyDictionary<string, string> Cells, string Reason, string Day, string List, RowTrial? Trial, IReadOnlyList<FormFault> Others, bool Dropping, Guid Id);
