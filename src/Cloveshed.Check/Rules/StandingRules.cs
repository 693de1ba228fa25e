using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>
/// Each row's pounds are run, sold, discarded or still standing, once; keeps.csv says so week by week, in the place where the
/// path is; what leaves is weighed as the path says.
/// </summary>
internal static class StandingRules
{
    public static void Check(SeasonData season, AnswerData answer, PathTracks tracks, Findings findings)
    {
        Balance(season, tracks, findings);
        Keeps(season, answer, tracks, findings);
        foreach (RunRow run in answer.Runs.Where(run => !run.Sorted))
        {
            if (Use(season, tracks, run.Where, run.Path, run.Lot, run.Week, run.Place, findings) is PathRow state)
            {
                Weighed(run.Where, "mass_in", run.MassIn, run.MassAtStart, state, findings);
            }
        }

        foreach (AsIsRow asIs in answer.AsIs)
        {
            if (Use(season, tracks, asIs.Where, asIs.Path, asIs.Lot, asIs.Week, asIs.Place, findings) is PathRow state)
            {
                Weighed(asIs.Where, "mass", asIs.Mass, asIs.MassAtStart, state, findings);
            }
        }
    }

    private static void Balance(SeasonData season, PathTracks tracks, Findings findings)
    {
        ILookup<LotRow?, PathTrack> byRow = tracks.All.ToLookup(track => track.Row);
        foreach (LotRow row in season.LotRows.Values.Where(row => row.Start < season.Weeks))
        {
            double sum = byRow[row].Sum(track => track.Whole);
            if (!Tolerance.Same(sum, row.Net))
            {
                findings.NotSame(RuleNames.LotBalance, row.Where, "run, sold, discarded and still kept together", sum, row.Net);
            }
        }
    }

    private static void Weighed(string where, string what, double mass, double atStart, PathRow state, Findings findings)
    {
        double expected = atStart * state.Ratio;
        if (!Tolerance.Same(mass, expected, atStart))
        {
            findings.NotSame(RuleNames.MassWeighed, where, what, mass, expected);
        }
    }

    /// <summary>The path's state in a week, where a row names a path of its own lot that is there in that week; else a breach.</summary>
    private static PathRow? Use(
        SeasonData season, PathTracks tracks, string where, string path, string lot, int week, string place, Findings findings)
    {
        PathTrack? track = tracks.Find(path);
        if (track is null || track.Lot != lot || track.States[week] is not PathRow state)
        {
            string found = track is null ? $"path {path}, not in paths.csv"
                : track.Lot != lot ? $"path {path} with lot {lot}"
                : $"path {path} in week {season.Calendar.Show(week)}, for which it has no row";
            findings.Add(RuleNames.PathUse, where, found, "a path of the row's lot that is there in that week");
            return null;
        }

        if (state.Place != place)
        {
            findings.Add(RuleNames.PlaceUse, where, place.Length == 0 ? "no place" : place, $"{state.Place}, where path {path} is in that week");
        }

        return state;
    }

    private static void Keeps(SeasonData season, AnswerData answer, PathTracks tracks, Findings findings)
    {
        var kept = new Dictionary<(string, int), double>();
        foreach (KeepRow keep in answer.Keeps)
        {
            Use(season, tracks, keep.Where, keep.Path, keep.Lot, keep.Week, keep.Place, findings);
            kept[(keep.Path, keep.Week)] = kept.GetValueOrDefault((keep.Path, keep.Week)) + keep.MassAtStart;
            if (tracks.Find(keep.Path)?.Row is LotRow row && !Tolerance.Same(keep.Bins, row.BinsOf(keep.MassAtStart), row.Bins))
            {
                findings.NotSame(RuleNames.KeepsBins, keep.Where, "bins", keep.Bins, row.BinsOf(keep.MassAtStart));
            }
        }

        foreach (PathTrack track in tracks.All)
        {
            for (int week = track.Row?.Start ?? season.Weeks; week < season.Weeks; week++)
            {
                double found = kept.GetValueOrDefault((track.Name, week));
                if (!Tolerance.Same(found, track.Left[week], track.Row!.Net))
                {
                    findings.NotSame(
                        RuleNames.Keeps, $"keeps.csv path {track.Name}, week {season.Calendar.Show(week)}", "mass_at_start", found, track.Left[week]);
                }
            }
        }
    }
}
