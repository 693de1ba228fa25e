using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Web.Promises;

namespace Cloveshed.Web.Suppose;

/// <summary>Changes put to a standing plan, and what came of them: the same changes in the same order are one question.</summary>
public sealed class SupposeAsk(IReadOnlyList<SeasonChange> changes) : StandAsk<Supposed>(string.Join('\n', changes.Select(ChangeText.Of)))
{
    public IReadOnlyList<SeasonChange> Changes => changes;
}
