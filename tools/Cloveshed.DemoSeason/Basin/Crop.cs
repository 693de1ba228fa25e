using NodaTime;

namespace Cloveshed.DemoSeason.Basin;

/// <summary>What is planted of one variety: how many lots, dug in which days (both included), in which fields.</summary>
public sealed record Planting(Variety Variety, int Lots, LocalDate First, LocalDate Last, IReadOnlyList<string> Fields);

/// <summary>The crop of 2026 on the fields of Quillon Flat, all of them invented.</summary>
public static class Crop
{
    public static readonly IReadOnlyList<Planting> Plantings =
    [
        new(Varieties.EarlyPale, 22, new(2026, 6, 20), new(2026, 7, 18), ["Reedbank", "Sorrel", "Heron", "Weir", "Cistern", "Larkfoot"]),
        new(Varieties.Streak, 11, new(2026, 7, 6), new(2026, 7, 25), ["Tannery", "Heron", "Fencepost"]),
        new(Varieties.KilnRed, 12, new(2026, 7, 13), new(2026, 8, 8), ["Old Kiln", "Tannery", "Gravel Pit"]),
        // Meant for 27 July to 8 August; rain put its digging back by three weeks.
        new(Varieties.TallViolet, 5, new(2026, 8, 17), new(2026, 8, 29), ["Millrace", "Weir"]),
        new(Varieties.LatePale, 26, new(2026, 7, 27), new(2026, 8, 29), ["Sorrel", "Long Meadow", "Windbreak", "Poplar Row", "Saltbush", "Cistern"]),
        new(Varieties.BarnWhite, 9, new(2026, 8, 12), new(2026, 9, 4), ["Saltbush", "Poplar Row", "Long Meadow"]),
    ];
}
