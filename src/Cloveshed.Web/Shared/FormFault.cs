using Cloveshed.Ledger;

namespace Cloveshed.Web.Shared;

/// <summary>One thing that is wrong with a form as it was sent.</summary>
/// <param name="Field">The id of the field on the page; null where it is of the whole.</param>
public sealed record FormFault(string? Field, string Text, string Remedy = "")
{
    /// <summary>What the ledger refused, as faults of the whole form.</summary>
    public static IReadOnlyList<FormFault> Of(Appended.Refused refused) => [.. refused.Refusals.Select(one => new FormFault(null, one.Message, one.Remedy))];
}
