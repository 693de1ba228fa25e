using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>Makes planned runs smaller where all that they give is more than is wanted, and what is left may stand.</summary>
internal sealed class WishTrimming(ReplayShed shed, Yard yard, RunsMade made)
{
    private readonly PlanningInstance instance = shed.Instance;

    /// <param name="finishing">Rows that a small run counts on being finished: nothing is taken off them.</param>
    public void Trim(List<Wish> wishes, LineMode mode, int week, WeekNeeds needs, HashSet<int> finishing)
    {
        double[][] gives = [.. wishes.Select(w =>
        {
            int lot = instance.Rows[shed.Policy.Paths[w.Path].Row].Lot;
            double per = PerStart(w.Path, week, mode);
            double[] believed = made.Believed(lot), out_ = new double[believed.Length];
            for (int k = 0; k < out_.Length; k++)
                if (instance.Sorts[k].Clove == (mode == LineMode.Crack) && instance.Sorts[k].Packed)
                    out_[k] = w.Mass * per * believed[k] * Math.Min(1, w.Exit.Packed[k]);
            return out_;
        })];
        double[] all = new double[instance.Sorts.Length];
        foreach (double[] g in gives) for (int k = 0; k < all.Length; k++) all[k] += g[k];
        int[] order = [.. Enumerable.Range(0, wishes.Count).OrderBy(i => shed.Brings(instance.Rows[shed.Policy.Paths[wishes[i].Path].Row].Lot, mode, week))];
        foreach (int i in order)
        {
            double spare = gives[i].Any(g => g > 0) ? 1 : 0;
            for (int k = 0; k < all.Length && spare > 0; k++)
            {
                if (gives[i][k] <= 0) continue;
                (double organic, double any) = needs.Of(k);
                double over = all[k] - (organic + any);
                spare = Math.Min(spare, over <= Wish.Trifle * all[k] ? 0 : over / gives[i][k]);
            }
            Spot spot = shed.Policy.Places[yard.OfPath[wishes[i].Path].FirstOrDefault(b => b.Left > 0)?.Place ?? instance.Rows[shed.Policy.Paths[wishes[i].Path].Row].Place];
            if (spare <= Wish.Trifle || !spot.Stand[week] || finishing.Contains(shed.Policy.Paths[wishes[i].Path].Row)) continue;
            wishes[i].Mass *= 1 - spare;
            for (int k = 0; k < all.Length; k++) all[k] -= spare * gives[i][k];
        }
    }

    private double PerStart(int path, int week, LineMode mode)
    {
        foreach (Batch b in yard.OfPath[path])
        {
            if (!yard.MayRun(b, week)) continue;
            (double fresh, double crack) = yard.Sound(b);
            return b.Ratio * (mode == LineMode.Crack ? (fresh + crack) * instance.KeptCrack : fresh * instance.KeptFresh);
        }
        return 0;
    }
}
