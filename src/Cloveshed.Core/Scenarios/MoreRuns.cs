using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>Makes runs beyond the plan for what is still missing, by what they bring now against what the lot is worth kept.</summary>
internal sealed class MoreRuns(ReplayShed shed, Yard yard, KeepWorths worths, RunsMade made)
{
    private const int MoreRunsAtMost = 10;

    private readonly PlanningInstance instance = shed.Instance;

    /// <summary>Runs beyond the plan for what is still wanted.</summary>
    public void Make(LineMode mode, int week, LineBook book, WeekNeeds needs)
    {
        if (mode == LineMode.Crack)
            foreach (Waiting w in made.Waiting.OrderBy(w => w.Week).ToArray())
                for (int i = 0; i < instance.Lines.Length; i++)
                    if (instance.Lines[i].Mode == LineMode.Crack && w.Mass > 0) MoreSorted(i, w, week, book, needs);
        for (int n = 0; n < MoreRunsAtMost; n++)
        {
            if (BestMore(mode, week, book, needs) is not { } best) return;
            made.Run(best.Batch, best.Line, best.Mass, [], -1, week, book);
            made.Pack(mode, week, needs);
        }
    }

    private void MoreSorted(int line, Waiting w, int week, LineBook book, WeekNeeds needs)
    {
        double[] believed = made.Believed(w.Lot);
        double mass = 0, brings = 0;
        for (int k = 0; k < believed.Length; k++)
        {
            if (!instance.Sorts[k].Clove || believed[k] <= 0 || !instance.Sorts[k].Packed) continue;
            double missing = Missing(needs, k, instance.SupplyOf(w.Lot));
            if (missing <= Few(k)) continue;
            double per = instance.KeptCrack * believed[k], some = Math.Min(w.Mass, missing / per);
            mass = Math.Max(mass, some);
            brings += Math.Min(missing, some * per) * needs.MarginOf(k, instance.SupplyOf(w.Lot));
        }
        mass = Math.Min(mass, book.Room(line, -1));
        if (mass <= 0 || brings <= (mass / instance.Lines[line].Rate + book.SetUp(line, -1)) * book.NextHour(line)) return;
        if (made.CrackSorted(line, w.Lot, mass, [], week, book)) made.Pack(LineMode.Crack, week, needs);
    }

    private static double Missing(WeekNeeds needs, int sort, int supply)
    {
        (double organic, double any) = needs.Of(sort);
        return supply == 1 ? organic + any : any;
    }

    // Less than half a unit is digits.
    private double Few(int sort)
    {
        double net = double.PositiveInfinity;
        foreach (InstanceProduct p in instance.Products) if (p.Sort == sort) net = Math.Min(net, p.Net);
        return net / 2;
    }

    private (Batch Batch, int Line, double Mass)? BestMore(LineMode mode, int week, LineBook book, WeekNeeds needs)
    {
        int sorts = instance.Sorts.Length;
        double[][] missing = [new double[sorts], new double[sorts]], margin = [new double[sorts], new double[sorts]];
        bool some = false;
        for (int k = 0; k < sorts; k++)
        {
            if (instance.Sorts[k].Clove != (mode == LineMode.Crack) || !instance.Sorts[k].Packed) continue;
            for (int o = 0; o < instance.SupplyKinds; o++)
            {
                double m = Missing(needs, k, o);
                if (m <= Few(k)) continue;
                (missing[o][k], margin[o][k]) = (m, needs.MarginOf(k, o));
                some |= margin[o][k] > 0;
            }
        }
        if (!some) return null;
        (Batch Batch, int Line, double Mass)? best = null;
        double most = 1e-9;
        double[] per = new double[sorts];
        foreach (Batch b in yard.Batches)
        {
            if (!yard.MayRun(b, week)) continue;
            double spare = b.Left - Promised(b, week);
            if (spare <= 1e-6 * b.Whole) continue;
            int o = instance.SupplyOf(b.Lot);
            (double fresh, double crack) = yard.Sound(b);
            double fit = b.Ratio * (mode == LineMode.Crack ? (fresh + crack) * instance.KeptCrack : fresh * instance.KeptFresh);
            double[] believed = made.Believed(b.Lot);
            double first = double.PositiveInfinity, last = 0;
            for (int k = 0; k < sorts; k++)
            {
                per[k] = missing[o][k] > 0 ? fit * believed[k] : 0;
                if (per[k] <= 1e-9) continue;
                first = Math.Min(first, missing[o][k] / per[k]);
                last = Math.Max(last, missing[o][k] / per[k]);
            }
            if (last <= 0) continue;
            double kept = worths.Of(b, week);
            for (int i = 0; i < instance.Lines.Length; i++)
            {
                InstanceLine line = instance.Lines[i];
                if (line.Mode != mode) continue;
                double room = Math.Min(spare, book.Room(i, b.Lot) / b.Ratio), least = book.IsSetUp(i, b.Lot) ? 0 : line.MinRun / b.Ratio * (1 + 1e-6);
                if (least > room) continue;
                foreach (double size in (ReadOnlySpan<double>)[first, last])
                {
                    double mass = Math.Max(Math.Min(size, room), least), brings = 0;
                    for (int k = 0; k < sorts; k++) if (per[k] > 0) brings += Math.Min(missing[o][k], mass * per[k]) * margin[o][k];
                    double gain = brings - (mass * b.Ratio / line.Rate + book.SetUp(i, b.Lot)) * book.NextHour(i) - mass * Math.Max(0, kept);
                    if (gain > most) (most, best) = (gain, (b, i, mass));
                }
            }
        }
        return best;
    }

    // What the path is planned to give for seed later, and as is this week, is not for others.
    private double Promised(Batch b, int week)
    {
        double promised = 0;
        foreach (PolicyExit e in shed.Policy.Paths[b.Path].Exits)
            if (e.Need >= 0 && e.Week > week || e.Line < 0 && e.Week == week) promised += e.Part * yard.PathWhole[b.Path];
        return promised;
    }
}
