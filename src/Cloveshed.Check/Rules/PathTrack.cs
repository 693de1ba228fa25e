using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>
/// A path with its states by week and what leaves it. The mass that stands on it at a week's end is what still leaves it later
/// plus what stands on it at the season's end, all in mass at start.
/// </summary>
internal sealed class PathTrack(string name, string lot, string fromPlace, LotRow? row, int weeks)
{
    private readonly double[] leaves = new double[weeks];

    public string Name => name;

    public string Lot => lot;

    public string FromPlace => fromPlace;

    /// <summary>The row of lots.csv that it belongs to; null where there is none.</summary>
    public LotRow? Row => row;

    /// <summary>The state at each week's start, the week after the season's last included; null where paths.csv has no row.</summary>
    public PathRow?[] States { get; } = new PathRow?[weeks + 1];

    /// <summary>Mass at start that stands on it at the end of the season's last week.</summary>
    public double End { get; set; }

    /// <summary>Mass at start left at each week's end.</summary>
    public double[] Left { get; } = new double[weeks];

    /// <summary>All that was ever on it, in mass at start.</summary>
    public double Whole { get; private set; }

    public double Leaves(int week) => leaves[week];

    public void Leave(int week, double massAtStart) => leaves[week] += massAtStart;

    /// <summary>Call once everything that leaves is known.</summary>
    public void Close()
    {
        double left = End;
        for (int week = weeks - 1; week >= 0; week--)
        {
            Left[week] = left;
            left += leaves[week];
        }

        Whole = left;
    }

    /// <summary>Mass at start that stands on it at a week's start, after any move.</summary>
    public double Standing(int week) => week == 0 ? Whole : Left[week - 1];

    /// <summary>The place before a week's move; null before the path begins, save where the row stood there before.</summary>
    public string? PlaceBefore(int week)
    {
        if (row is null || week < row.Start)
        {
            return null;
        }

        return week == row.Start ? fromPlace : States[week - 1]?.Place;
    }
}

/// <summary>All paths of an answer.</summary>
internal sealed class PathTracks
{
    private readonly Dictionary<string, PathTrack> byName;

    private PathTracks(Dictionary<string, PathTrack> byName) => this.byName = byName;

    public IReadOnlyCollection<PathTrack> All => byName.Values;

    public PathTrack? Find(string path) => byName.GetValueOrDefault(path);

    /// <summary>Follows the paths; what paths.csv itself does wrong is for <see cref="PathRules"/>.</summary>
    public static PathTracks Follow(SeasonData season, AnswerData answer)
    {
        var byName = new Dictionary<string, PathTrack>();
        foreach (PathRow state in answer.Paths)
        {
            if (!byName.TryGetValue(state.Path, out PathTrack? track))
            {
                season.LotRows.TryGetValue((state.Lot, state.FromPlace), out LotRow? row);
                row = row is not null && row.Start < season.Weeks ? row : null;
                track = new PathTrack(state.Path, state.Lot, state.FromPlace, row, season.Weeks);
                byName.Add(state.Path, track);
            }

            track.States[state.Week] ??= state;
        }

        var tracks = new PathTracks(byName);
        foreach (RunRow run in answer.Runs.Where(run => !run.Sorted))
        {
            tracks.Find(run.Path)?.Leave(run.Week, run.MassAtStart);
        }

        foreach (AsIsRow asIs in answer.AsIs)
        {
            tracks.Find(asIs.Path)?.Leave(asIs.Week, asIs.MassAtStart);
        }

        foreach (KeepRow keep in answer.Keeps.Where(keep => keep.Week == season.Weeks - 1))
        {
            if (tracks.Find(keep.Path) is PathTrack track)
            {
                track.End += keep.MassAtStart;
            }
        }

        foreach (PathTrack track in byName.Values)
        {
            track.Close();
        }

        return tracks;
    }
}
