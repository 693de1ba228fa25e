using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>What a path can end in. Unsplit: a fresh run of which it is decided apart, for all of a lot and week together, what is packed and what is cracked (polish).</summary>
public enum ExitKind { Discard, Fresh, Crack, Seed, SoldAsIs, Stand, Unsplit }

/// <summary>
/// One way to end a path in a week. Packed: bit k set where sort k is packed from a fresh run; the other classes are sorted out
/// and, with SortedLine at 0 or above, run over that cracker in SortedWeek.
/// </summary>
public readonly record struct Exit(ExitKind Kind, int Week, int Line, ulong Packed, int SortedLine, int SortedWeek, int Need);

/// <summary>An exit and what it is worth at some prices: W (PerMass + fresh share x PerFresh + crack share x PerCrack).</summary>
public readonly record struct PricedExit(Exit Exit, double PerMass, double PerFresh, double PerCrack);

/// <summary>Prices in, the best exits of each lot and week out: closed form, no search.</summary>
public static class Exits
{
    /// <summary>[lot][week] the exits of every lot.</summary>
    internal static PricedExit[][][] OfAll(PlanningInstance instance, RunCharges charges, Prices prices, int threads)
    {
        var exits = new PricedExit[instance.Lots.Length][][];
        Parallel.For(0, exits.Length, new ParallelOptions { MaxDegreeOfParallelism = threads }, lot => exits[lot] = Of(instance, charges, prices, lot));
        return exits;
    }

    /// <summary>[week] the exits of a lot.</summary>
    public static PricedExit[][] Of(PlanningInstance instance, RunCharges charges, Prices prices, int lotIndex) =>
        [.. Enumerable.Range(0, instance.Weeks).Select(t => Of(instance, charges, prices, lotIndex, t))];

    /// <summary>Exits of a lot in a week that can be worth something; discarding, worth nothing, is left to the caller.</summary>
    public static PricedExit[] Of(PlanningInstance instance, RunCharges charges, Prices prices, int lotIndex, int week)
    {
        InstanceLot lot = instance.Lots[lotIndex];
        if (week < instance.AsOf || lot.Hold) return [];
        var found = new List<PricedExit>(6);
        int supply = instance.SupplyOf(lotIndex);
        (double sortedWorth, int sortedLine, int sortedWeek) = Sorted(instance, charges, prices, lot, supply, week);
        for (int i = 0; i < instance.Lines.Length; i++)
        {
            double hours = charges[lotIndex, i, week];
            if (double.IsPositiveInfinity(hours)) continue;
            InstanceLine line = instance.Lines[i];
            double perMass = -hours * prices.Hour[i, week];
            if (instance.Pins.Count > 0 && instance.PinOf(lotIndex, i, week) is var pin and >= 0) perMass += prices.Pin[pin];
            switch (line.Mode)
            {
                case LineMode.Fresh:
                    double perFit = lot.Under * sortedWorth;
                    ulong packed = 0;
                    for (int k = 0; k < instance.Sorts.Length && !instance.Sorts[k].Clove; k++)
                    {
                        double price = instance.Sorts[k].Packed ? prices.Supply[k, supply, week] : -1;
                        if (price >= sortedWorth)
                        {
                            packed |= 1UL << k;
                            perFit += lot.SortShares[k] * price;
                        }
                        else
                        {
                            perFit += lot.SortShares[k] * sortedWorth;
                        }
                    }
                    found.Add(new PricedExit(new Exit(ExitKind.Fresh, week, i, packed, sortedLine, sortedWeek, -1),
                        perMass, instance.KeptFresh * perFit, sortedWorth));
                    break;
                case LineMode.Crack:
                    double perSound = instance.KeptCrack * CloveWorth(instance, prices, lot, supply, week);
                    found.Add(new PricedExit(new Exit(ExitKind.Crack, week, i, 0, -1, -1, -1), perMass, perSound, perSound));
                    break;
                case LineMode.Seed:
                    if (lot.Seed is not { } seed || lot.Inhibitor) break;
                    for (int n = 0; n < instance.SeedNeeds.Length; n++)
                    {
                        InstanceSeedNeed need = instance.SeedNeeds[n];
                        if (need.Variety != lot.Variety || seed > need.Class || week > need.ByWeek) continue;
                        found.Add(new PricedExit(new Exit(ExitKind.Seed, week, i, 0, -1, -1, n), perMass,
                            instance.KeptSeed * (need.ShortCost - prices.Seed[n]), 0));
                    }
                    break;
                default:
                    throw new InvalidOperationException($"Line {line.Id} has a mode that no exit is written for.");
            }
        }
        if (instance.AsIsOfVariety[lot.Variety] is var a and >= 0 && week >= lot.ReadyWeek)
            found.Add(new PricedExit(new Exit(ExitKind.SoldAsIs, week, -1, 0, -1, -1, a), instance.AsIs[a].Price - prices.AsIs[a, week], 0, 0));
        return [.. found];
    }

    /// <summary>What a mass of sorted-out bulbs of the lot is worth: the best cracker in the same or the next two weeks, or nothing.</summary>
    private static (double Worth, int Line, int Week) Sorted(
        PlanningInstance instance, RunCharges charges, Prices prices, InstanceLot lot, int supply, int week)
    {
        (double Worth, int Line, int Week) best = (0, -1, -1);
        for (int t = week; t <= week + FreshRuns.WeeksToCrack && t < instance.Weeks; t++)
        {
            double cloves = double.NaN;
            for (int j = 0; j < instance.Lines.Length; j++)
            {
                double hours = charges.OfSorted(j, t);
                if (double.IsPositiveInfinity(hours)) continue;
                if (double.IsNaN(cloves)) cloves = instance.KeptCrack * CloveWorth(instance, prices, lot, supply, t);
                double worth = cloves - hours * prices.Hour[j, t];
                if (worth > best.Worth) best = (worth, j, t);
            }
        }
        return best;
    }

    private static double CloveWorth(PlanningInstance instance, Prices prices, InstanceLot lot, int supply, int week)
    {
        double worth = 0;
        for (int k = instance.Sorts.Length - 1; k >= 0 && instance.Sorts[k].Clove; k--)
            if (instance.Sorts[k].Packed) worth += lot.SortShares[k] * prices.Supply[k, supply, week];
        return worth;
    }
}
