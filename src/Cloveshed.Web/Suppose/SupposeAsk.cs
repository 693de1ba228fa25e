using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Web.Promises;

namespace Cloveshed.Web.Suppose;

/// <summary>Changes put to a standing plan, and what came of them: the same changes in the same order are one question.</summary>
public sealed class SupposeAsk(IReadOnlyList<SeasonChange> changes, Func<double> elapsed) : StandAsk<Supposed>(KeyOf(changes), elapsed)
{
    private volatile SupposedWorth? worth;

    public IReadOnlyList<SeasonChange> Changes => changes;

    /// <summary>Known before the answer, while what moves is looked for; null until then.</summary>
    public SupposedWorth? Worth => worth;

    internal void Known(SupposedWorth told) => worth = told;

    internal static string KeyOf(IReadOnlyList<SeasonChange> changes) => string.Join('\n', changes.Select(ChangeText.Of));
}
