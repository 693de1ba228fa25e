namespace Cloveshed.Core.Drum;

/// <summary>
/// Which holes, and in which order. First every limit of contamination is to hold, then wanted shares are to be met, then as little
/// as may be is to come out where it does not belong. The holes are moved in ever smaller steps until no hole, and no two
/// neighbours together, can be moved by one step for the better.
/// </summary>
public static class HoleChoosing
{
    private static readonly double[] Strides = [32, 8, 4, 2, 1];

    // A hole stays within this of the one for its limit: a grade that hardly gets a clove holds every limit of contamination.
    private const double Lowest = 0.85, Highest = 1.2;

    // What a hundredth over a limit, or beside a wanted share, counts for against a hundredth misplaced.
    private const double PerExcess = 1000, PerShare = 20;

    /// <summary>The answer; at least one grade.</summary>
    public static DrumAnswer Choose(DrumQuestion question)
    {
        IReadOnlyList<Zone> zones = DrumOutflows.Zones(question.Cloves, question.Grades);
        DrumAnswer small = For(question, zones, question.Order ?? HoleOrder.SmallestFirst);
        if (question.Order is not null || zones.Count < 3)
            return small;
        DrumAnswer large = For(question, zones, HoleOrder.LargestFirst);
        bool better = Cost(large.Outflows) < Cost(small.Outflows) - 1e-9;
        return better ? large with { OtherOrderMisplaced = small.Misplaced } : small with { OtherOrderMisplaced = large.Misplaced };
    }

    /// <summary>What a choice is judged by; smaller is better.</summary>
    public static double Cost(IReadOnlyList<Outflow> flows, IReadOnlyList<GradeWanted>? grades = null)
    {
        double cost = 0;
        foreach (Outflow flow in flows)
        {
            cost += flow.Share * flow.Contamination;
            if (flow.WantedShare is { } wanted)
                cost += PerShare * Math.Abs(flow.Share - wanted);
            if (grades?.FirstOrDefault(g => g.Name == flow.Name)?.MostContamination is { } most)
                cost += PerExcess * Math.Max(0, flow.Contamination - most);
        }

        return cost;
    }

    private static DrumAnswer For(DrumQuestion question, IReadOnlyList<Zone> zones, HoleOrder order)
    {
        int holes = zones.Count - 1;
        double step = question.StepMm;
        // In steps, so that no sum of steps drifts.
        int[] at = [.. Enumerable.Range(0, holes).Select(h => (int)Math.Max(1, Math.Round(question.Nature.HoleFor(zones[h + 1].FromMm, question.Load) / step, MidpointRounding.ToEven)))];
        for (int h = 1; h < holes; h++)
            at[h] = Math.Max(at[h], at[h - 1]);
        (int Low, int High)[] room = [.. at.Select(a => ((int)Math.Max(1, Math.Floor(a * Lowest)), (int)Math.Ceiling(a * Highest)))];
        double best = CostAt(at);
        foreach (double stride in Strides)
        {
            int by = (int)stride;
            for (bool moved = true; moved;)
            {
                moved = false;
                for (int h = 0; h < holes; h++)
                    moved |= Try(h, h, by) || Try(h, h, -by) || (h + 1 < holes && (Try(h, h + 1, by) || Try(h, h + 1, -by)));
            }
        }

        IReadOnlyList<Outflow> flows = FlowsAt(at);
        return new([.. at.Select(a => Math.Round(a * step, 6, MidpointRounding.ToEven))], order, flows, flows.Sum(f => f.Share * f.Contamination), null, flows.All(f => f.Held));

        bool Try(int from, int to, int by)
        {
            int[] next = [.. at];
            for (int h = from; h <= to; h++)
                next[h] += by;
            for (int h = from; h <= to; h++)
            {
                if (next[h] < room[h].Low || next[h] > room[h].High)
                    return false;
            }

            if ((from > 0 && next[from] < next[from - 1]) || (to + 1 < holes && next[to] > next[to + 1]))
                return false;
            double cost = CostAt(next);
            if (cost >= best - 1e-12)
                return false;
            (best, at) = (cost, next);
            return true;
        }

        double CostAt(int[] steps) => Cost(FlowsAt(steps), question.Grades);

        IReadOnlyList<Outflow> FlowsAt(int[] steps) =>
            DrumOutflows.Of(question.Cloves, zones, [.. steps.Select(s => question.Nature.At(s * step, question.Load))], order);
    }

    /// <summary>
    /// The largest load at which every limit of contamination still holds with the best holes for it, by halving; 0 where even a
    /// nearly empty drum does not hold them, the top where that much still does.
    /// </summary>
    public static double MostLoad(DrumQuestion question, double top)
    {
        bool Holds(double load) => Choose(question with { Load = load }).AllHeld;
        if (Holds(top))
            return top;
        double low = 0, high = top;
        if (!Holds(0))
            return 0;
        while (high - low > 0.005)
        {
            double middle = (low + high) / 2;
            if (Holds(middle))
                low = middle;
            else
                high = middle;
        }

        return low;
    }
}
