using Cloveshed.Core.Lots;

namespace Cloveshed.Core.Shift;

/// <summary>A product in one piece of a run: whole units of it, of the whole units of the run.</summary>
public sealed record ShareMade(ProductId Product, long Units, long OfUnits);

/// <summary>What one piece of a run is expected to take and make.</summary>
/// <param name="Bins">Whole bins, of <paramref name="OfBins"/>; both 0 for sorted-out bulbs.</param>
/// <param name="Mass">Whole units of mass, of <paramref name="OfMass"/>, in the unit that was asked in.</param>
/// <param name="Makes">In the run's order; products of which the run makes less than half a unit are left out.</param>
public sealed record RunShare(long Bins, long OfBins, long Mass, long OfMass, IReadOnlyList<ShareMade> Makes);

/// <summary>
/// A run that the calendar splits over several shifts, each with its own share: bins, mass and units in proportion to the minutes that it runs there,
/// in whole numbers that add up to the run's own. A run that is not split has one piece with all of it.
/// </summary>
public static class RunShares
{
    /// <summary>A bin is brought whole: the solver's dust above a whole number is no bin.</summary>
    private const double Dust = 1e-6;

    /// <summary>A part of a unit is an expectation of nothing to pack.</summary>
    private const double LeastUnits = 0.5;

    /// <param name="minutes">Of each piece, in order of time; 0 or more, not all 0.</param>
    /// <param name="mass">Of the whole run, in whole units of the reader's mass.</param>
    /// <returns>One for each piece.</returns>
    public static IReadOnlyList<RunShare> Of(ShiftRun run, IReadOnlyList<int> minutes, long mass)
    {
        // Of pieces of the same length the earlier gets the unit that is left over: the key is the place in time, written so that it sorts as it counts.
        Weighted[] pieces = [.. minutes.Select((length, at) => new Weighted(at.ToString("D4", System.Globalization.CultureInfo.InvariantCulture), length))];
        long[] Split(long whole) => [.. Allocation.ByLargestRemainder(whole, pieces).Select(piece => piece.Amount)];
        long bins = (long)Math.Ceiling(run.Bins - Dust);
        long[] binsOf = Split(bins), massOf = Split(mass);
        (ProductId Product, long Units, long[] Of)[] makes = [.. run.Makes.Where(made => made.Units >= LeastUnits)
            .Select(made => (made.Product, Units: (long)Math.Round(made.Units, MidpointRounding.AwayFromZero))).Select(made => (made.Product, made.Units, Split(made.Units)))];
        return [.. pieces.Select((_, at) => new RunShare(binsOf[at], bins, massOf[at], mass, [.. makes.Select(made => new ShareMade(made.Product, made.Of[at], made.Units))]))];
    }
}
