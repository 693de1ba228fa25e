using Cloveshed.Core.Answers;

namespace Cloveshed.Core.Scenarios;

/// <summary>What came of one scenario under one plan, in the season's unit and currency.</summary>
/// <param name="Ordered">[sort] mass ordered, and of that shipped, and shipped by the due week.</param>
/// <param name="DueIn">[week] mass that was due, and of that shipped by then.</param>
/// <param name="Cumulative">[week] what the season brought, less what it cost, up to the week's end; short costs and what stands at the end are in the last.</param>
/// <param name="Closing">Mass that the replay can't account for: of lots, all that came in less all that left or stands. A fault where it is not 0.</param>
/// <param name="Answer">The rows of what was done, where they were asked for.</param>
public sealed record ReplayOutcome(
    int Scenario, double Value, double Revenue, double[] Ordered, double[] Shipped, double[] OnTime, double[] DueIn, double[] OnTimeIn,
    double[] Cumulative, IReadOnlyList<Trouble> Troubles, double Closing, PlanAnswer? Answer)
{
    /// <summary>Mass shipped over mass ordered; 1 where nothing was.</summary>
    public double Fill => Ordered.Sum() is > 0 and var all ? Shipped.Sum() / all : 1;
}
