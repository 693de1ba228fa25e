using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Paths;

namespace Cloveshed.Pictures.Board;

/// <summary>What of a lot stands at a week's start, by kind of place (after that week's moves, before its runs).</summary>
public sealed record ThreadWeek(int Week, double Open, double Cold, double Sealed)
{
    public double Total => Open + Cold + Sealed;

    public double Of(PlaceKind kind) => kind switch { PlaceKind.Open => Open, PlaceKind.Cold => Cold, _ => Sealed };
}

/// <summary>What a lot gives to a line, or to a sale as is (Line null), in a week.</summary>
public sealed record ThreadRun(int Week, LineId? Line, LineMode? Mode, double Mass, double Hours);

/// <summary>A stretch of weeks that a lot, or a part of it, spends in one place (both ends included).</summary>
public sealed record Stay(PlaceId Place, PlaceKind Kind, int From, int To);

/// <summary>A lot as a thread along the weeks. Worth is per mass unit; LastGoodWeek is the first of its paths' life ends, in weeks and parts.</summary>
public sealed record LotThread(
    LotId Lot, VarietyId Variety, string Field, double Net, double Worth, int StartWeek, IReadOnlyList<ThreadWeek> Weeks,
    IReadOnlyList<ThreadRun> Runs, IReadOnlyList<Stay> Stays, PlaceId MainPlace, PlaceKind MainKind, double? LastGoodWeek)
{
    /// <summary>The last week in which any of it stands.</summary>
    public int LastWeek => Weeks.Count == 0 ? StartWeek : Weeks[^1].Week;

    internal static LotThread From(
        IGrouping<LotId, LotRow> rows, IReadOnlyList<PathLine> paths, Dictionary<PlaceId, PlaceKind> kinds, double worth,
        IReadOnlyList<RunRow> runs, IReadOnlyList<AsIsRow> asIs, SeasonSettings settings)
    {
        LotRow first = rows.First();
        int start = paths.Min(p => p.FirstWeek);
        double net = paths.Sum(p => p.MassAtStart);
        var weeks = new List<ThreadWeek>();
        var time = new Dictionary<PlaceId, double>();
        for (int w = start; w < settings.Weeks; w++)
        {
            double[] byKind = new double[3];
            foreach (PathLine path in paths.Where(p => p.Has(w)))
            {
                double mass = path.WeighedAtStart(w);
                if (mass > net * 1e-6)
                {
                    PlaceId place = path.State(w).Place;
                    byKind[(int)kinds[place]] += mass;
                    time[place] = time.GetValueOrDefault(place) + mass;
                }
            }
            if (byKind.Sum() > 0)
            {
                weeks.Add(new ThreadWeek(w, byKind[0], byKind[1], byKind[2]));
            }
        }
        // The kind in which most pound-weeks are spent, and of its places the one with most.
        PlaceId main = time.Count == 0 ? first.Place
            : time.GroupBy(t => kinds[t.Key]).MaxBy(g => g.Sum(t => t.Value))!.MaxBy(t => t.Value).Key;
        IEnumerable<ThreadRun> toLines = runs.Where(r => !r.FromSorted)
            .GroupBy(r => (r.Week, r.Line, r.Mode))
            .Select(g => new ThreadRun(g.Key.Week, g.Key.Line, g.Key.Mode, g.Sum(r => r.MassIn), g.Sum(r => r.Hours + r.OvertimeHours)));
        IEnumerable<ThreadRun> sold = asIs.Where(a => !a.Discarded).GroupBy(a => a.Week)
            .Select(g => new ThreadRun(g.Key, null, null, g.Sum(a => a.Mass), 0));
        return new LotThread(
            first.Lot, first.Variety, first.Field, net, worth, start, weeks, [.. toLines.Concat(sold).OrderBy(r => r.Week)],
            Stayed(paths, kinds, settings.Weeks), main, kinds[main], paths.Where(p => p.MassAtStart > net * 1e-6).Min(p => p.LifeEndsAt()));
    }

    private static List<Stay> Stayed(IReadOnlyList<PathLine> paths, Dictionary<PlaceId, PlaceKind> kinds, int weeks)
    {
        var stays = new List<Stay>();
        foreach (PathLine path in paths)
        {
            for (int w = path.FirstWeek; w < weeks && path.StandingAtStart(w) > path.MassAtStart * 1e-6; w++)
            {
                PlaceId place = path.State(w).Place;
                int open = stays.FindIndex(s => s.Place == place && s.To >= w - 1);
                if (open >= 0)
                {
                    stays[open] = stays[open] with { To = Math.Max(stays[open].To, w) };
                }
                else
                {
                    stays.Add(new Stay(place, kinds[place], w, w));
                }
            }
        }
        return [.. stays.OrderBy(s => s.From).ThenBy(s => s.Place.Text, StringComparer.Ordinal)];
    }
}
