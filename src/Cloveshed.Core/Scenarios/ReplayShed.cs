using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>A season and a plan's policy with all that every replay of them needs and none changes.</summary>
public sealed class ReplayShed
{
    // Soundness is read by straight lines off a table up to three lives, at most 1e-6 off; sooner is exact at the points.
    private const double SoundStep = 0.0005;
    private const int SoundPoints = 6000;

    private readonly double[] sound;

    /// <summary>Ready to play scenarios.</summary>
    public ReplayShed(PlanningInstance instance, PlanPolicy policy)
    {
        (Instance, Policy) = (instance, policy);
        sound = [.. Enumerable.Range(0, SoundPoints + 2).Select(i => instance.SoundShare(i * SoundStep))];
        PathsOfRow = policy.Paths.Index().ToLookup(p => p.Item.Row, p => p.Index);
        RunWorth = [.. instance.Lots.Select((_, l) => WorthOf(l, false))];
        CloveWorth = [.. instance.Lots.Select((_, l) => WorthOf(l, true))];
        FreshHour = HourCost(LineMode.Fresh);
        CrackHour = HourCost(LineMode.Crack);
        OpenLines = [.. instance.OrderLines.Index().Where(x => instance.WholeOrders.All(w => !w.Lines.Contains(x.Index))).Select(x => x.Index)];
        Planned = new int[instance.OrderLines.Length];
        foreach (PolicySlot slot in policy.Slots) Planned[slot.Line] += slot.Planned;
    }

    /// <summary>The season that is played.</summary>
    public PlanningInstance Instance { get; }

    /// <summary>The plan that it is played by.</summary>
    public PlanPolicy Policy { get; }
    internal ILookup<int, int> PathsOfRow { get; }

    /// <summary>[lot][week] scaled money that a scaled mass of good bulbs is worth in classes, by the plan's worths.</summary>
    internal double[][] RunWorth { get; }

    /// <summary>[lot][week] the same for cloves.</summary>
    internal double[][] CloveWorth { get; }

    /// <summary>[week] the least that a scaled mass costs on a line, its hour's worth included; infinite where none runs.</summary>
    internal double[] FreshHour { get; }
    internal double[] CrackHour { get; }

    /// <summary>Order lines of no whole order.</summary>
    internal int[] OpenLines { get; }

    /// <summary>[order line] units that the plan fills.</summary>
    internal int[] Planned { get; }

    /// <summary>Scaled money that a scaled mass of a lot's good bulbs brings in a mode, by the plan's worths.</summary>
    internal double Brings(int lot, LineMode mode, int week) => mode switch
    {
        LineMode.Fresh => RunWorth[lot][week],
        LineMode.Crack => CloveWorth[lot][week],
        _ => 0,
    };

    internal double SoundShare(double life)
    {
        double at = life / SoundStep;
        if (!(at < SoundPoints)) return Instance.SoundShare(life);
        if (at <= 0) return sound[0];
        int left = (int)at;
        return sound[left] + (at - left) * (sound[left + 1] - sound[left]);
    }

    private double[] WorthOf(int lot, bool cloves)
    {
        double[] worth = new double[Instance.Weeks];
        bool organic = Instance.SupplyOf(lot) == 1 || !Instance.OrganicApart;
        for (int k = 0; k < Instance.Sorts.Length; k++)
        {
            if (Instance.Sorts[k].Clove != cloves || Instance.Lots[lot].SortShares[k] <= 0) continue;
            for (int t = 0; t < worth.Length; t++)
            {
                double best = 0;
                for (int q = 0; q < Instance.Products.Length; q++)
                    if (Instance.Products[q].Sort == k && (organic || !Instance.Products[q].Organic)) best = Math.Max(best, Policy.Worth[q][t] - Instance.Products[q].UnitCost);
                worth[t] += Instance.Lots[lot].SortShares[k] * best;
            }
        }
        return worth;
    }

    private double[] HourCost(LineMode mode)
    {
        double[] cost = new double[Instance.Weeks];
        Array.Fill(cost, double.PositiveInfinity);
        for (int i = 0; i < Instance.Lines.Length; i++)
            for (int t = 0; t < cost.Length; t++)
                if (Instance.Lines[i].Mode == mode && Instance.Lines[i].Hours[t] > 0)
                    cost[t] = Math.Min(cost[t], (Instance.Lines[i].Cost + Policy.HourWorth[i][t]) / Instance.Lines[i].Rate);
        return cost;
    }
}
