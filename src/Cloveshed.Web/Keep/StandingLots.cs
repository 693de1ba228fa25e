using Cloveshed.Core;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Keeping;
using NodaTime;

namespace Cloveshed.Web.Keep;

/// <summary>The keeping chart of lots as they stand, for a season without a plan: each row stays where it is and nothing is run.</summary>
public static class StandingLots
{
    /// <param name="seen">The clocks that do not go by the law alone.</param>
    public static KeepingFacts Of(Season season, Func<LotRow, SeenClock?>? seen = null)
    {
        int weeks = season.Settings.Weeks;
        IEnumerable<KeepingBar> bars = season.Lots.GroupBy(row => row.Lot).Select(rows =>
        {
            LotClock[] clocks = [.. rows.Select(row => LotClock.Of(season, row, seen?.Invoke(row)))];
            LotClock first = clocks.OrderBy(clock => clock.Here.LastGood ?? double.MaxValue).ThenByDescending(clock => clock.Row.Net).First();
            double? InView(double? at) => at is { } when && when <= weeks ? when : null;
            double? last = InView(first.Here.LastGood);
            double latest = clocks.Max(clock => InView(clock.Here.LastGood) ?? double.PositiveInfinity);
            return new KeepingBar(
                rows.Key, first.Row.Variety, rows.Sum(row => row.Net), Period.DaysBetween(season.Settings.FirstWeek, rows.Min(row => row.Harvested)) / 7.0, clocks.Min(clock => clock.Starts),
                [.. Enumerable.Range(1, 3).Select(quarter => InView(first.Reaches(season, quarter / 4.0))).TakeWhile(at => at is not null).Select(at => at!.Value)],
                last, last is not null && latest > last ? latest : null, null, null, null, 0, []);
        });
        return new KeepingFacts(season.Settings, [.. bars.OrderBy(bar => bar.LastGood ?? double.MaxValue).ThenBy(bar => bar.Lot.Text, StringComparer.Ordinal)]);
    }
}
