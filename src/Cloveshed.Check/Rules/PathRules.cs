using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>
/// paths.csv: each path is of one row of lots.csv, has a state for every week from the row's start to the week after the
/// season's last, starts whole, and only ever loses.
/// </summary>
internal static class PathRules
{
    public static void Check(SeasonData season, AnswerData answer, PathTracks tracks, Findings findings)
    {
        foreach (PathRow state in answer.Paths)
        {
            PathTrack track = tracks.Find(state.Path)!;
            if (state.Lot != track.Lot || state.FromPlace != track.FromPlace)
            {
                findings.Add(
                    RuleNames.PathRow, state.Where, $"lot {state.Lot} from {state.FromPlace}",
                    $"lot {track.Lot} from {track.FromPlace}, as in the path's other rows");
            }
        }

        foreach (PathTrack track in tracks.All)
        {
            Row(season, track, findings);
        }

        SameStart(tracks, findings);
    }

    private static void Row(SeasonData season, PathTrack track, Findings findings)
    {
        string where = $"paths.csv path {track.Name}";
        if (track.Row is not LotRow row)
        {
            findings.Add(
                RuleNames.PathRow, where, $"lot {track.Lot} from {track.FromPlace}",
                "a row (lot, place) of lots.csv that starts within the season");
            return;
        }

        for (int week = 0; week <= season.Weeks; week++)
        {
            bool wanted = week >= row.Start;
            if (wanted != (track.States[week] is not null))
            {
                findings.Add(
                    RuleNames.PathWeeks, $"{where}, week {season.Calendar.Show(week)}", wanted ? "no row" : "a row",
                    $"a row for each week from {season.Calendar.Show(row.Start)} to {season.Calendar.Show(season.Weeks)}");
            }
        }

        if (track.States[row.Start] is PathRow start)
        {
            Start(track, row, start, findings);
        }

        for (int week = row.Start; week < season.Weeks; week++)
        {
            if (track.States[week] is PathRow before && track.States[week + 1] is PathRow after)
            {
                Step(before, after, findings);
            }
        }
    }

    private static void Start(PathTrack track, LotRow row, PathRow start, Findings findings)
    {
        if (Math.Abs(start.Ratio - 1) > Tolerance.Ratio)
        {
            findings.NotSame(RuleNames.PathStart, start.Where, "mass_ratio", start.Ratio, 1);
        }

        if (row.FreshShare is double fresh && Math.Abs(start.Fresh - fresh) > Tolerance.Ratio)
        {
            findings.NotSame(RuleNames.PathStart, start.Where, "fresh_share", start.Fresh, fresh);
        }

        if (row.CrackShare is double crack && Math.Abs(start.Crack - crack) > Tolerance.Ratio)
        {
            findings.NotSame(RuleNames.PathStart, start.Where, "crack_share", start.Crack, crack);
        }

        if (start.Fresh + start.Crack > 1 + Tolerance.Ratio)
        {
            findings.Over(RuleNames.PathShares, start.Where, "fresh_share and crack_share together", start.Fresh + start.Crack, 1);
        }

        if (!row.StoodBefore && start.Place != track.FromPlace)
        {
            findings.Add(RuleNames.PathMove, start.Where, $"in {start.Place} in the week in which the row starts", $"in {track.FromPlace} until the week after");
        }
    }

    // The tolerance of the weekly loss shrinks with the ratio, so that a path near its end must lose as well.
    private static void Step(PathRow before, PathRow after, Findings findings)
    {
        double most = before.Ratio * (1 - Tolerance.LeastWeeklyLoss);
        if (after.Ratio > most + (Tolerance.Ratio * Math.Min(1, before.Ratio + Tolerance.Amount)))
        {
            findings.Over(RuleNames.PathLoss, after.Where, "mass_ratio", after.Ratio, most);
        }

        if (after.Fresh > before.Fresh + Tolerance.Ratio)
        {
            findings.Over(RuleNames.PathShares, after.Where, "fresh_share", after.Fresh, before.Fresh);
        }

        if (after.Crack > before.Crack + Tolerance.Ratio)
        {
            findings.Over(RuleNames.PathShares, after.Where, "crack_share", after.Crack, before.Crack);
        }

        if (after.Life < before.Life - Tolerance.Ratio)
        {
            findings.Under(RuleNames.PathLife, after.Where, "life_used", after.Life, before.Life);
        }
    }

    // Where lots.csv leaves the shares open the plan may say what they are, but a row has one start.
    private static void SameStart(PathTracks tracks, Findings findings)
    {
        foreach (IGrouping<LotRow, PathTrack> row in tracks.All.Where(track => track.Row is not null).GroupBy(track => track.Row!))
        {
            PathRow[] starts = [.. row.Select(track => track.States[row.Key.Start]).OfType<PathRow>()];
            foreach (PathRow start in starts.Skip(1))
            {
                if (Math.Abs(start.Fresh - starts[0].Fresh) > Tolerance.Ratio || Math.Abs(start.Crack - starts[0].Crack) > Tolerance.Ratio)
                {
                    findings.Add(
                        RuleNames.PathStart, start.Where, $"shares {Figures.Show(start.Fresh)} and {Figures.Show(start.Crack)}",
                        $"those of path {starts[0].Path}, which starts from the same row: {Figures.Show(starts[0].Fresh)} and {Figures.Show(starts[0].Crack)}");
                }
            }
        }
    }
}
