using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>Which size chart a season uses.</summary>
public enum Chart { One, Two, Five, Fifteen, BoundedLast, Inches }

/// <summary>Which places a shed has.</summary>
public enum PlaceMix { YardOnly, YardAndCold, YardAndRooms, All, RoomsOnly }

/// <summary>Which lines a shed has.</summary>
public enum LineMix { FreshOnly, CrackOnly, SeedOnly, OneOfEach, TwoOfEach }

/// <summary>How much of the garlic is organic.</summary>
public enum OrganicMix { None, Some, All }

/// <summary>What can be asked of the season's garlic.</summary>
public enum Demand { OrdersAndMarket, OrdersOnly, MarketOnly, AsIsOnly, Nothing }

/// <summary>How clove grades lie.</summary>
public enum Grades { None, Three, Gaps, Narrow, BoundedLast }

/// <summary>What is decided before a season is drawn: how many, how long, of which kinds.</summary>
public sealed record OddShape
{
    public int Weeks { get; init; } = 12;
    public int Lots { get; init; } = 8;
    public int Varieties { get; init; } = 2;
    public MassUnit Unit { get; init; } = MassUnit.Pound;
    public Chart Chart { get; init; } = Chart.Five;
    public PlaceMix Places { get; init; } = PlaceMix.All;
    public LineMix Lines { get; init; } = LineMix.OneOfEach;
    public OrganicMix Organic { get; init; } = OrganicMix.Some;
    public Demand Demand { get; init; } = Demand.OrdersAndMarket;
    public Grades Grades { get; init; } = Grades.Three;
    public bool SeedNeeds { get; init; } = true;

    /// <summary>Days from the first week's Monday to as_of; negative: the files are older than the season.</summary>
    public int AsOfDay { get; init; }

    /// <summary>How much of what the garlic could give is asked for, about.</summary>
    public double Asked { get; init; } = 0.8;

    /// <summary>How much of the garlic its lines could run in the season, about.</summary>
    public double LineRoom { get; init; } = 1.6;

    /// <summary>A shape drawn at large: mostly small, so that many seasons can be planned in a test run.</summary>
    public static OddShape Draw(Pcg pcg) => new()
    {
        Weeks = pcg.Chance(0.1) ? pcg.Whole(40, 70) : pcg.Whole(2, 20),
        Lots = pcg.Chance(0.1) ? pcg.Whole(20, 60) : pcg.Whole(1, 12),
        Varieties = pcg.Whole(1, 4),
        Unit = pcg.Chance(0.4) ? MassUnit.Kilogram : MassUnit.Pound,
        Chart = pcg.Pick(Enum.GetValues<Chart>()),
        Places = pcg.Pick(Enum.GetValues<PlaceMix>()),
        Lines = pcg.Chance(0.6) ? LineMix.OneOfEach : pcg.Pick(Enum.GetValues<LineMix>()),
        Organic = pcg.Pick(Enum.GetValues<OrganicMix>()),
        Demand = pcg.Chance(0.6) ? Demand.OrdersAndMarket : pcg.Pick(Enum.GetValues<Demand>()),
        Grades = pcg.Pick(Enum.GetValues<Grades>()),
        SeedNeeds = pcg.Chance(0.6),
        AsOfDay = pcg.Chance(0.5) ? 0 : pcg.Whole(-20, 10),
        Asked = pcg.Between(0.1, 2.5),
        LineRoom = pcg.Between(0.3, 4),
    };
}
