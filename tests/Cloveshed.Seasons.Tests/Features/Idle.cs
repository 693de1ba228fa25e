using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Features;

/// <summary>
/// What a season is worth when everything is discarded the moment it may be (a closed room is opened at once) and nothing is
/// made: no place holds anything at any week's end, so only firm units and seed short cost. Every plan's value is at least this.
/// </summary>
internal static class Idle
{
    public static double Value(Season season) =>
        -(double)season.Orders.Where(o => o.Firm).Sum(o => o.Units * o.ShortCost)
        - season.SeedNeeds.Sum(n => n.Net * (double)n.ShortCost);
}
