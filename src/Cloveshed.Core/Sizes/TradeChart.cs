using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Sizes;

/// <summary>
/// The chart that is read by where none is given: the trade's names with their diameters as lower limits. Names and diameters are
/// those of the British Columbia Ministry of Agriculture, "Garlic (organic)", p. 10, "Sizing and Grading Guidelines"; using them as lower
/// limits is common practice, no source (no document of the USDA with limits of these names was found). The smallest, 1 1/2 in, is
/// also the least diameter of U.S. No. 1 (USDA AMS, Garlic Grades and Standards).
/// </summary>
public static class TradeChart
{
    /// <summary>Small to large; the largest has no upper limit.</summary>
    public static IReadOnlyList<SizeClass> Us { get; } =
    [
        new(new("Small tube"), "ST", 37, 41), new(new("Medium tube"), "MT", 41, 44), new(new("Large tube"), "LT", 44, 47),
        new(new("Giant"), "GI", 47, 50), new(new("Jumbo"), "JU", 50, 55), new(new("Extra jumbo"), "XJ", 55, 65),
        new(new("Super jumbo"), "SJ", 65, 70), new(new("Colossal"), "CO", 70, 75), new(new("Super colossal"), "SC", 75, null),
    ];
}
