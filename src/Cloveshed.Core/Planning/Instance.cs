using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

// The season as numbers for the planner. Everything here is scaled: masses in units of MassScale, money in units of
// MoneyScale, bins in units of BinScale, so that coefficients are near 1 and solver tolerances mean the same in every season.
// Indices are positions in the arrays of PlanningInstance: rows, lots, places, lines, sorts, products, order lines.

/// <summary>How one place treats one kind of lot, week by week, in plain air and under its sealed atmosphere.</summary>
/// <param name="Loss">[place][week] share of weight lost.</param>
/// <param name="Life">[place][week] share of storage life used.</param>
public sealed record KeepTable(double[][] Loss, double[][] Life, double[][] SealedLoss, double[][] SealedLife);

/// <summary>A lot: what is in it and what may be done with it. Shares are by mass.</summary>
public sealed record InstanceLot(
    LotId Id, int Variety, bool Organic, SeedClass? Seed, bool Inhibitor, bool Hold, int ReadyWeek, double[] SortShares,
    double Under, LotKnowledge Known)
{
    public List<int> Rows { get; } = [];

    /// <summary>Mass of the lot over all its rows, scaled.</summary>
    public double Mass { get; internal set; }
}

/// <summary>One lot in one place: where a path starts.</summary>
/// <param name="Mass">Scaled mass at the start, week Start.</param>
/// <param name="BinsPerMass">Scaled bins per scaled mass at start.</param>
/// <param name="Fresh">Share that makes grade, at the start.</param>
/// <param name="FirstMove">The first week at whose start it may move.</param>
/// <param name="Table">Index into KeepTables.</param>
public sealed record InstanceRow(
    int Lot, int Place, int Start, double Mass, double Net, double Bins, double BinsPerMass, double Fresh, double Crack,
    double LifeAtStart, double SoundAtStart, int FirstMove, int Table);

/// <summary>A place. SealedWeek is set where rooms.csv says that it is sealed already.</summary>
public sealed record InstancePlace(
    PlaceId Id, PlaceKind Kind, double Capacity, double BinWeekCost, double WeekCost, double MoveInCost, int? RunOut, int? SealedWeek)
{
    /// <summary>Cost of a scaled bin at a week's end with the place's fixed cost spread over its capacity: a lower bound of the true cost.</summary>
    public double StandCost => BinWeekCost + (Capacity > 0 ? WeekCost / Capacity : 0);
}

/// <summary>A line. Rate in scaled mass per hour; costs scaled per hour.</summary>
public sealed record InstanceLine(
    LineId Id, LineMode Mode, double Rate, double[] Hours, double[] Overtime, double Cost, double OvertimeCost, double Heads,
    double MinRun, double SetUp);

/// <summary>
/// A sort: a size class or a clove grade, what products are made from. Sorts are the classes first, then the grades.
/// Packed: some product is made of it.
/// </summary>
public sealed record InstanceSort(string Name, bool Clove, bool Packed);

/// <summary>A product. Net scaled; UnitCost scaled per scaled mass.</summary>
public sealed record InstanceProduct(ProductId Id, int Sort, double Net, double NetInUnit, double UnitCost, int Shelf, bool Organic);

/// <summary>Finished stock on the as-of date, usable in weeks First to Last inclusive. Mass scaled.</summary>
public sealed record InstanceStock(int Product, int Made, int First, int Last, double Mass, double Units);

/// <summary>
/// An order line. Price, Short and Late per scaled mass of the ordered product (Late per week). Alternatives are the products that
/// may fill it, the ordered one first. Earliest is the first week in which it may ship. Mass is that of all its units.
/// </summary>
public sealed record InstanceOrderLine(
    int Order, OrderLine Line, int Product, int[] Alternatives, int Earliest, int DueWeek, double Mass, double Price, double Short, double Late)
{
    /// <summary>What a filled mass adds per scaled mass where it ships in a week: its price, no longer short, less the weeks that it is late.</summary>
    internal double GainIn(int week) => Price + Short - Late * Math.Max(0, week - DueWeek);
}

/// <summary>An order that ships whole or not at all, and its lines.</summary>
public sealed record InstanceWholeOrder(OrderId Id, int[] Lines, int Earliest);

/// <summary>Units that a product can sell beyond orders in a week. Price per scaled mass.</summary>
public sealed record InstanceMarket(int Product, int Week, double Mass, double Price, int Units, decimal UnitPrice);

/// <summary>Cloves for planting wanted by the end of a week, of a class or better.</summary>
public sealed record InstanceSeedNeed(int Variety, SeedClass Class, int ByWeek, double Mass, double ShortCost, SeedNeed Need);

/// <summary>A price for garlic as it stands. Limit scaled mass per week (infinite: none).</summary>
public sealed record InstanceAsIs(double Price, double Limit, AsIsPrice Row);

/// <summary>The whole problem, ready to be planned.</summary>
public sealed class PlanningInstance
{
    private IReadOnlyList<InstancePin>? _pins;
    private bool[]? _sortApart;
    private SoundGrid? _soundNear;

    public required Season Season { get; init; }
    public required int Weeks { get; init; }
    public required int AsOf { get; init; }
    public required double MassScale { get; init; }
    public required double MoneyScale { get; init; }
    public required double BinScale { get; init; }
    public required InstanceLot[] Lots { get; init; }
    public required InstanceRow[] Rows { get; init; }
    public required KeepTable[] Tables { get; init; }

    /// <summary>Clocks that do not go by the law alone.</summary>
    public required IReadOnlyDictionary<(LotId Lot, PlaceId Place), Keep.Clocks.SeenClock> Clocks { get; init; }

    public required InstancePlace[] Places { get; init; }
    public required InstanceLine[] Lines { get; init; }
    public required double[] People { get; init; }
    public required InstanceSort[] Sorts { get; init; }
    public required InstanceProduct[] Products { get; init; }
    public required InstanceStock[] Stock { get; init; }
    public required InstanceOrderLine[] OrderLines { get; init; }
    public required InstanceWholeOrder[] WholeOrders { get; init; }
    public required InstanceMarket[] Market { get; init; }
    public required InstanceSeedNeed[] SeedNeeds { get; init; }
    public required InstanceAsIs[] AsIs { get; init; }

    /// <summary>Index into AsIs for each variety, or -1.</summary>
    public required int[] AsIsOfVariety { get; init; }
    public required double KeptFresh { get; init; }
    public required double KeptCrack { get; init; }
    public required double KeptSeed { get; init; }

    /// <summary>Scaled money per scaled mass of sound garlic standing after the last week.</summary>
    public required double EndPrice { get; init; }
    public required Func<double, double> SoundShare { get; init; }

    /// <summary>The same, nearly and quickly.</summary>
    internal SoundGrid SoundNear => _soundNear ??= new SoundGrid(SoundShare);

    /// <summary>What a person has decided about single runs.</summary>
    public RunWishes Wishes { get; init; } = RunWishes.None;

    /// <summary>Pinned runs, each once; Pin indices are positions here.</summary>
    public IReadOnlyList<InstancePin> Pins => _pins ??= Wishes.Pins(this);

    /// <summary>The pin of a run, or -1.</summary>
    public int PinOf(int lot, int line, int week)
    {
        for (int p = 0; p < Pins.Count; p++)
            if (Pins[p].Lot == lot && Pins[p].Line == line && Pins[p].Week == week) return p;
        return -1;
    }

    /// <summary>Whether organic supply is kept apart: there are organic lots and organic products.</summary>
    public required bool OrganicApart { get; init; }

    /// <summary>Value when nothing is done: what short orders and short seed cost.</summary>
    public required double ValueOfNothing { get; init; }

    public int SupplyKinds => OrganicApart ? 2 : 1;

    /// <summary>[sort] Whether organic supply of the sort is worth telling from the rest: some organic product is made of it.</summary>
    public bool[] SortApart => _sortApart ??= [.. Sorts.Select((_, k) => OrganicApart && Products.Any(p => p.Organic && p.Sort == k))];

    /// <summary>
    /// Whether all that there is of a product in any week can still be shipped in every later one: it keeps longer than the season,
    /// and none of its stock runs out of shelf life before the last week.
    /// </summary>
    public bool KeepsOn(int product) =>
        Products[product].Shelf >= Weeks && Stock.All(s => s.Product != product || s.Last >= Weeks - 1);
    public int SupplyOf(int lot) => OrganicApart && Lots[lot].Organic ? 1 : 0;
}
