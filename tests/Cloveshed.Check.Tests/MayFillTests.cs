using Cloveshed.Check.Rules;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Tests;

/// <summary>Which product may be shipped for which: the contract's sentence on larger_ok and the organic twin, case by case.</summary>
public class MayFillTests
{
    private static readonly Dictionary<string, Product> Products = new Product[]
    {
        new("M-30", "bulb", "M", 30, 0, 0, false), new("M-30-org", "bulb", "M", 30, 0, 0, true), new("M-30-best", "bulb", "M", 30, 0, 0, false),
        new("M-10", "bulb", "M", 10, 0, 0, false), new("L-30", "bulb", "L", 30, 0, 0, false), new("L-30-org", "bulb", "L", 30, 0, 0, true),
        new("L-10", "bulb", "L", 10, 0, 0, false), new("XL-30", "bulb", "XL", 30, 0, 0, false), new("small-5", "clove", "small", 5, 0, 0, false),
        new("big-5", "clove", "big", 5, 0, 0, false), new("M-clove", "clove", "M", 30, 0, 0, false),
    }.ToDictionary(product => product.Name);

    [Theory]
    [InlineData("M-30", "M-30", false, true)]
    [InlineData("M-30", "M-30-org", false, true)]
    [InlineData("M-30-org", "M-30", false, false)]
    [InlineData("M-30-org", "M-30", true, false)]
    [InlineData("M-30", "M-30-best", true, false)]
    [InlineData("M-30", "M-10", true, false)]
    [InlineData("M-30", "L-30", false, false)]
    [InlineData("M-30", "L-30", true, true)]
    [InlineData("M-30", "L-30-org", true, true)]
    [InlineData("M-30", "L-30-org", false, false)]
    [InlineData("M-30-org", "L-30-org", true, true)]
    [InlineData("M-30-org", "L-30", true, false)]
    [InlineData("M-30", "L-10", true, false)]
    [InlineData("M-30", "XL-30", true, false)]
    [InlineData("L-30", "M-30", true, false)]
    [InlineData("XL-30", "L-30", true, false)]
    [InlineData("small-5", "big-5", true, true)]
    [InlineData("small-5", "big-5", false, false)]
    [InlineData("M-30", "M-clove", true, false)]
    public void A_line_is_filled_with(string ordered, string shipped, bool largerOk, bool may)
    {
        var season = new SeasonData(new Calendar(new DateOnly(2026, 8, 3), 4, new DateOnly(2026, 8, 3)), 0);
        season.Sizes.AddRange([new("M", 40, 55), new("L", 55, 70), new("XL", 70, null)]);
        season.Grades.AddRange([new("small", 10, 16), new("big", 16, null)]);
        Assert.Equal(may, OrderRules.MayFill(season, Products[ordered], Products[shipped], largerOk));
    }
}
