using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Odd;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>
/// The plan that does nothing: everything is discarded in its first week (a closed room is opened at once) and nothing is made.
/// No place holds anything at any week's end, so only firm units and seed short cost. Every season allows it, and every plan's
/// value is at least its value.
/// </summary>
internal static class Idle
{
    public static double Value(Season season) =>
        -(double)season.Orders.Where(o => o.Firm).Sum(o => o.Units * o.ShortCost)
        - season.SeedNeeds.Sum(n => n.Net * (double)n.ShortCost);

    /// <summary>As answer files carry it.</summary>
    public static PlanAnswer Answer(Season season)
    {
        SeasonSettings settings = season.Settings;
        var standing = season.Lots.Select((row, i) => (Row: row, Path: $"p{i}", Start: OddSeasons.StartWeek(settings, row)))
            .Where(l => l.Start < settings.Weeks).ToArray();
        double value = Value(season);
        Dictionary<string, double> filled = season.Orders.Select(o => o.Product.Text).Distinct().ToDictionary(p => p, _ => 0.0);
        PlanSummary summary = new(value, value + 1, 1 / Math.Max(1, Math.Abs(value)), 1, 1 / Math.Max(1, Math.Abs(value)), 0, PlanStatus.GapReached, 0,
            new Dictionary<string, double>(), new Dictionary<string, double>(), filled, [], [], "idle", "", new Dictionary<string, double>());
        return new(
            summary,
            [.. standing.SelectMany(l => Enumerable.Range(l.Start, settings.Weeks - l.Start + 1).Select(w => new PathWeek(
                l.Path, l.Row.Lot, l.Row.Place, w, l.Row.Place, Math.Pow(0.999, w - l.Start), l.Row.FreshShare ?? 0.5, l.Row.CrackShare ?? 0.2, 0.01 * (w - l.Start))))],
            [], [], [], [], [], [],
            [.. standing.Select(l => new AsIsRow(true, l.Start, l.Row.Lot, l.Path, l.Row.Place, l.Row.Net, l.Row.Net))],
            [.. season.Orders.Select(o => new ShortRow(o.Order, o.Number, o.Units, "nothing is made"))],
            [], [],
            [.. season.SealedRooms.Select(r => new RoomRow(r.Place, settings.WeekOf(r.Sealed), settings.AsOfWeek))],
            [], []);
    }
}
