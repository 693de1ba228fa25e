using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>What is sold or thrown away as it stands.</summary>
internal sealed class AsItStands(ReplayShed shed, Yard yard, KeepWorths worths, Till till)
{
    private readonly PlanningInstance instance = shed.Instance;
    private readonly double[] left = new double[shed.Instance.AsIs.Length];

    /// <summary>Sells or discards planned parts, and sells what has no plan left and is worth no keeping.</summary>
    public void Week(int week)
    {
        for (int a = 0; a < left.Length; a++) left[a] = instance.AsIs[a].Limit;
        for (int p = 0; p < yard.OfPath.Length; p++)
        {
            double planned = 0;
            foreach (PolicyExit exit in shed.Policy.Paths[p].Exits)
            {
                if (exit.Week > week) planned += exit.Part * yard.PathWhole[p];
                if (exit.Week != week || exit.Line >= 0) continue;
                double wanted = exit.Part * yard.PathWhole[p];
                foreach (Batch b in yard.OfPath[p])
                {
                    if (wanted <= b.Dust || b.Left <= 0 || !yard.MayLeave(b, week)) continue;
                    wanted -= exit.Discarded ? b.Take(Math.Min(wanted, b.Left), week, -1, true) : Sell(b, Math.Min(wanted, b.Left), week);
                }
            }
            if (week % 4 != 0 && week < instance.Weeks - 2) continue;
            double standing = yard.OfPath[p].Sum(b => b.Left), spare = standing - planned;
            // What the plan means to keep to the end is no spare.
            double toEnd = yard.PathWhole[p] * Math.Max(0, 1 - shed.Policy.Paths[p].Exits.Sum(e => e.Part));
            spare -= toEnd;
            if (spare <= 1e-6 * yard.PathWhole[p]) continue;
            foreach (Batch b in yard.OfPath[p])
            {
                if (spare <= 0 || b.Left <= 0 || !yard.MayLeave(b, week) || yard.Price(b, week) is not { } price || price * b.Ratio <= worths.Of(b, week)) continue;
                spare -= Sell(b, Math.Min(spare, b.Left), week);
            }
        }
    }

    /// <summary>Sells up to a mass at start of a batch as it stands, as far as anybody buys. The mass sold.</summary>
    public double Sell(Batch b, double mass, int week)
    {
        if (yard.Price(b, week) is not { } price) return 0;
        int a = instance.AsIsOfVariety[instance.Lots[b.Lot].Variety];
        double most = left[a] / b.Ratio * (1 + 1e-9), taken = b.Take(Math.Min(mass, most), week, -1, false, noMore: most < b.Left);
        left[a] -= taken * b.Ratio;
        till.Add(MoneyKind.AsIs, week, taken * b.Ratio * price);
        return taken;
    }
}
