namespace Cloveshed.Core.Keep.Rooms;

/// <summary>What else is kept where garlic is.</summary>
public enum Neighbour
{
    /// <summary>Onions, shallots, more garlic.</summary>
    Alliums,

    /// <summary>What takes up odour: most fruit, leaf vegetables, dairy, eggs, meat, nuts.</summary>
    TakesOdour,

    /// <summary>Fruit that gives off ethylene: apples, pears, melons, tomatoes.</summary>
    GivesEthylene,

    /// <summary>What ethylene harms: carrots, leaf vegetables, kiwifruit, cut flowers.</summary>
    HarmedByEthylene,

    /// <summary>What is kept humid, at 90% and more: roots, leaf vegetables, most fruit.</summary>
    KeptHumid,
}

/// <summary>What a neighbour brings.</summary>
public enum NeighbourFinding
{
    /// <summary>Garlic's odour spoils it: another room.</summary>
    OdourSpoilsIt,

    /// <summary>The humidity that it wants brings mould and roots to garlic: another room.</summary>
    HumiditySpoilsGarlic,

    /// <summary>Acceptable company.</summary>
    Acceptable,

    /// <summary>Its ethylene does not matter to garlic.</summary>
    EthyleneDoesNotMatter,

    /// <summary>Garlic makes next to none (under 0.1 µL per kg and hour).</summary>
    GarlicMakesNoEthylene,
}

/// <summary>
/// Company for garlic: odour, apart from everything but onions; ethylene, under 0.1 µL per kg and hour made and insensitive to it (UC Davis Produce
/// Facts: Garlic; a carrier's handbook); humidity over 70% is bad at any temperature (WFLO 2018).
/// </summary>
public static class Neighbours
{
    /// <summary>Pure.</summary>
    public static NeighbourFinding Of(Neighbour neighbour) => neighbour switch
    {
        Neighbour.Alliums => NeighbourFinding.Acceptable,
        Neighbour.TakesOdour => NeighbourFinding.OdourSpoilsIt,
        Neighbour.GivesEthylene => NeighbourFinding.EthyleneDoesNotMatter,
        Neighbour.HarmedByEthylene => NeighbourFinding.GarlicMakesNoEthylene,
        Neighbour.KeptHumid => NeighbourFinding.HumiditySpoilsGarlic,
        _ => throw new ArgumentOutOfRangeException(nameof(neighbour), neighbour, null),
    };

    /// <summary>Whether it may not stand in one room with garlic.</summary>
    public static bool MustBeApart(Neighbour neighbour) => Of(neighbour) is NeighbourFinding.OdourSpoilsIt or NeighbourFinding.HumiditySpoilsGarlic;
}
