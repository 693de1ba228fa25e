namespace Cloveshed.Core.Planning;

/// <summary>What becomes of a mass that is run fresh.</summary>
internal static class FreshRuns
{
    /// <summary>Sorted-out bulbs are cracked in the week of their run or in so many after it.</summary>
    internal const int WeeksToCrack = 2;

    /// <summary>Mass sorted out per scaled start mass of a path that ends in a fresh run: crack share, under size, and classes not packed.</summary>
    internal static double SortedOut(PlanningInstance instance, PathColumn path)
    {
        InstanceLot lot = instance.Lots[instance.Rows[path.Row].Lot];
        double fit = path.MassRatio * path.Fresh * instance.KeptFresh;
        double sorted = path.MassRatio * path.Crack + fit * lot.Under;
        for (int k = 0; k < instance.Sorts.Length && !instance.Sorts[k].Clove; k++)
            if ((path.Exit.Packed >> k & 1) == 0) sorted += fit * lot.SortShares[k];
        return sorted;
    }
}
