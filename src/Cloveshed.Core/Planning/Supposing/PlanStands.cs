using Cloveshed.Core.Planning.Promises;

namespace Cloveshed.Core.Planning.Supposing;

/// <summary>A solved master as it stands: what each run takes, and who gets how much.</summary>
internal sealed record PlanStands(RunMasses Runs, OutcomeOfOrders Outcome)
{
    private static readonly Dictionary<LotId, LotId> NoParts = [];

    /// <param name="parts">Lots of the master that are a part of another.</param>
    internal static PlanStands Of(Master master, IReadOnlyDictionary<LotId, LotId>? parts = null) => new(new RunMasses(master, parts ?? NoParts), new OutcomeOfOrders(master));

    /// <param name="asked">Order lines that were changed themselves: what they get is no news.</param>
    internal SupposedAnswer Since(PlanStands before, SupposedWorth worth, IReadOnlySet<string> asked) =>
        new(worth.Before, worth.Value, worth.Bound, before.Runs.To(Runs),
            [.. before.Outcome.LostIn(Outcome).Where(one => !asked.Contains(one.Name))], [.. Outcome.LostIn(before.Outcome).Where(one => !asked.Contains(one.Name))]);
}
