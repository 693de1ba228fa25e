using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>What a mass of a lot is worth at some prices when it leaves in a week: every line, every packing, every cracker tried.</summary>
internal static class WaysOut
{
    /// <summary>Per mass as weighed, with the shares that it has then.</summary>
    internal static double Best(PlanningInstance instance, Prices prices, int lotIndex, int week, double fresh, double crack)
    {
        InstanceLot lot = instance.Lots[lotIndex];
        double best = 0;
        if (lot.Hold || week < instance.AsOf) return best;
        int supply = instance.OrganicApart && lot.Organic ? 1 : 0, sizes = instance.Season.Sizes.Count;
        double Price(int sort, int t) => instance.Sorts[sort].Packed ? prices.Supply[sort, supply, t] : 0;
        double Cloves(int t) => instance.KeptCrack * lot.Known.GradeShares.Select((share, g) => share * Price(sizes + g, t)).Sum();
        foreach ((InstanceLine line, int i) in instance.Lines.Select((l, i) => (l, i)))
        {
            if (week < lot.ReadyWeek || Charge(instance, i, week, lot.Mass) is not { } hours) continue;
            double paid = hours * prices.Hour[i, week];
            if (line.Mode == LineMode.Crack) best = Math.Max(best, (fresh + crack) * Cloves(week) - paid);
            if (line.Mode == LineMode.Seed && lot.Seed is { } own && !lot.Inhibitor)
                for (int n = 0; n < instance.SeedNeeds.Length; n++)
                    if (instance.SeedNeeds[n].Variety == lot.Variety && own <= instance.SeedNeeds[n].Class && week <= instance.SeedNeeds[n].ByWeek)
                        best = Math.Max(best, fresh * instance.KeptSeed * (instance.SeedNeeds[n].ShortCost - prices.Seed[n]) - paid);
            if (line.Mode != LineMode.Fresh) continue;
            foreach (double sorted in SortedWorths(instance, prices, week, Cloves))
            {
                // A class at a time is packed or sorted out: the best of all subsets is the better of each.
                double fit = lot.Known.ClassShares.Select((share, k) => share * Math.Max(Price(k, week), sorted)).Sum() + lot.Known.Under * sorted;
                best = Math.Max(best, fresh * instance.KeptFresh * fit + crack * sorted - paid);
            }
        }
        int price = instance.AsIsOfVariety[lot.Variety];
        return price >= 0 && week >= lot.ReadyWeek ? Math.Max(best, instance.AsIs[price].Price - prices.AsIs[price, week]) : best;
    }

    /// <summary>What sorted-out bulbs are worth if they are let go, or cracked by some line in the same or the next two weeks.</summary>
    private static IEnumerable<double> SortedWorths(PlanningInstance instance, Prices prices, int week, Func<int, double> cloves)
    {
        yield return 0;
        for (int t = week; t <= week + 2 && t < instance.Weeks; t++)
            for (int j = 0; j < instance.Lines.Length; j++)
                if (instance.Lines[j].Mode == LineMode.Crack && Charge(instance, j, t, double.PositiveInfinity) is { } hours)
                    yield return cloves(t) - hours * prices.Hour[j, t];
    }

    /// <summary>Hours per mass with the set-up spread over the most that there is or that a week takes; null where it can't run.</summary>
    private static double? Charge(PlanningInstance instance, int i, int week, double mass)
    {
        InstanceLine line = instance.Lines[i];
        double hours = line.Hours[week] + line.Overtime[week];
        if (line.Heads > 0) hours = Math.Min(hours, instance.People[week] / line.Heads);
        double most = Math.Min(mass, (hours - line.SetUp) * line.Rate);
        return most > 0 ? 1 / line.Rate + line.SetUp / most : null;
    }
}
