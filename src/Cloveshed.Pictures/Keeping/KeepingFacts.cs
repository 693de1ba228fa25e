using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Paths;
using NodaTime;

namespace Cloveshed.Pictures.Keeping;

/// <summary>A planned run, or a sale as is or a discard (Mode null), on a keeping bar, with the life used when its week begins.</summary>
public sealed record KeepingRun(int Week, LineMode? Mode, double Mass, double LifeUsed, bool Discarded = false);

/// <summary>
/// One lot from digging to its last good day, on the first of its paths to expire. Times are weeks and parts of weeks from
/// the season's start, negative before it. LifeAt: the week at which each quarter of the life is used; a quarter that is not
/// reached in view is missing. LastGoodElsewhere: of the part that lasts longest, infinite where that is not in view; null
/// where all parts end alike. PartClearedAt: the end of the last week in which something of the first to expire stands, ClearedAt
/// of all; null: some stands to the end. Margin: the least of all parts, in weeks from cleared to expired; null: none expires in view.
/// </summary>
public sealed record KeepingBar(
    LotId Lot, VarietyId Variety, double Net, double Dug, double Starts, IReadOnlyList<double> LifeAt, double? LastGood, double? LastGoodElsewhere,
    double? PartClearedAt, double? ClearedAt, double? Margin, double LifeUsedWhenCleared, IReadOnlyList<KeepingRun> Runs);

/// <summary>What a keeping chart shows: first to expire on top, what outlasts the view at the bottom.</summary>
public sealed record KeepingFacts(SeasonSettings Settings, IReadOnlyList<KeepingBar> Bars)
{
    public static KeepingFacts From(Season season, PlanAnswer answer)
    {
        var book = new PathBook(season, answer);
        ILookup<LotId, PathLine> paths = book.All.ToLookup(p => p.Lot);
        ILookup<LotId, RunRow> runs = answer.Runs.Where(r => !r.FromSorted).ToLookup(r => r.Lot);
        ILookup<LotId, AsIsRow> asIs = answer.AsIs.ToLookup(r => r.Lot);
        IEnumerable<KeepingBar> bars = season.Lots.GroupBy(l => l.Lot).Where(g => paths.Contains(g.Key))
            .Select(g => Bar(g, [.. paths[g.Key]], [.. runs[g.Key]], [.. asIs[g.Key]], season.Settings, book));
        return new KeepingFacts(season.Settings,
            [.. bars.OrderBy(b => b.LastGood ?? double.MaxValue).ThenBy(b => b.ClearedAt ?? double.MaxValue).ThenBy(b => b.Lot.Text, StringComparer.Ordinal)]);
    }

    private static KeepingBar Bar(
        IGrouping<LotId, LotRow> rows, IReadOnlyList<PathLine> paths, IReadOnlyList<RunRow> runs, IReadOnlyList<AsIsRow> asIs,
        SeasonSettings settings, PathBook book)
    {
        double net = paths.Sum(p => p.MassAtStart);
        PathLine[] used = [.. paths.Where(p => p.MassAtStart > net * 1e-6)];
        PathLine first = used.OrderBy(p => p.LifeEndsAt() ?? double.MaxValue).ThenByDescending(p => p.MassAtStart).FirstOrDefault() ?? paths[0];
        double? last = first.LifeEndsAt();
        double latest = used.Select(p => p.LifeEndsAt() ?? double.PositiveInfinity).DefaultIfEmpty(double.PositiveInfinity).Max();
        LocalDate dug = rows.Min(r => r.Harvested);
        int start = paths.Min(p => p.FirstWeek);
        double? Cleared(PathLine path) => path.EndMassAtStart > net * 1e-6 ? null
            : Enumerable.Range(start, settings.Weeks - start).LastOrDefault(w => path.StandingAtStart(w) > net * 1e-6, start) + 1;
        double? cleared = used.Any(p => Cleared(p) is null) ? null : used.Select(Cleared).DefaultIfEmpty(start + 1).Max();
        // What is never cleared stands to the season's end, and is past its day by the weeks from then.
        double? margin = used.Where(p => p.LifeEndsAt() is not null).Min(p => p.LifeEndsAt() - (Cleared(p) ?? settings.Weeks));
        IEnumerable<KeepingRun> marks = runs.GroupBy(r => (r.Week, r.Mode)).Select(g =>
                new KeepingRun(g.Key.Week, g.Key.Mode, g.Sum(r => r.MassIn), g.Max(r => book[r.Path!].State(r.Week).LifeUsed)))
            .Concat(asIs.GroupBy(a => (a.Week, a.Discarded)).Select(g =>
                new KeepingRun(g.Key.Week, null, g.Sum(a => a.Mass), g.Max(a => book[a.Path].State(a.Week).LifeUsed), g.Key.Discarded)));
        double usedWhenCleared = runs.Select(r => book[r.Path!].State(r.Week).LifeUsed)
            .Concat(asIs.Where(a => !a.Discarded).Select(a => book[a.Path].State(a.Week).LifeUsed)).DefaultIfEmpty(0).Max();
        return new KeepingBar(
            rows.Key, rows.First().Variety, net, Period.DaysBetween(settings.FirstWeek, dug) / 7.0, start,
            [.. Enumerable.Range(1, 3).Select(q => first.LifeReaches(q / 4.0)).TakeWhile(w => w is not null).Select(w => w!.Value)],
            last, last is not null && latest > last ? latest : null, Cleared(first), cleared, margin, usedWhenCleared, [.. marks.OrderBy(m => m.Week)]);
    }
}
