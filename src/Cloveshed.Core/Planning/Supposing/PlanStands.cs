using Cloveshed.Core.Planning.Promises;

namespace Cloveshed.Core.Planning.Supposing;

/// <summary>A solved master as it stands: its value (scaled), what each run takes, and who gets how much.</summary>
internal sealed record PlanStands(double Value, RunMasses Runs, OutcomeOfOrders Outcome)
{
    internal static PlanStands Of(Master master, double more) => new(master.Value + more, new RunMasses(master), new OutcomeOfOrders(master));

    /// <param name="asked">Order lines that were changed themselves: what they get is no news.</param>
    internal SupposedAnswer Since(PlanStands before, double bound, double money, IReadOnlySet<string> asked) =>
        new(before.Value * money, Value * money, Math.Max(bound, Value) * money, before.Runs.To(Runs),
            [.. before.Outcome.LostIn(Outcome).Where(one => !asked.Contains(one.Name))], [.. Outcome.LostIn(before.Outcome).Where(one => !asked.Contains(one.Name))]);
}
