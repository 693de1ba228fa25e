using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>Moves are those that the paths make, and no place holds more than it can.</summary>
internal static class PlaceRules
{
    public static void Check(SeasonData season, AnswerData answer, PathTracks tracks, Findings findings)
    {
        Moves(season, answer, tracks, findings);
        Capacity(season, tracks, findings);
    }

    private static void Moves(SeasonData season, AnswerData answer, PathTracks tracks, Findings findings)
    {
        var moved = new Dictionary<(int Week, string Lot, string From, string To), (double Implied, double Written)>();
        foreach (PathTrack track in tracks.All)
        {
            for (int week = track.Row?.Start ?? season.Weeks; week < season.Weeks; week++)
            {
                if (track.PlaceBefore(week) is string from && track.States[week] is PathRow state && state.Place != from)
                {
                    var key = (week, track.Lot, from, state.Place);
                    (double implied, double written) = moved.GetValueOrDefault(key);
                    moved[key] = (implied + track.Row!.BinsOf(track.Standing(week)), written);
                }
            }
        }

        foreach (MoveRow move in answer.Moves)
        {
            var key = (move.Week, move.Lot, move.From, move.To);
            (double implied, double written) = moved.GetValueOrDefault(key);
            moved[key] = (implied, written + move.Bins);
        }

        foreach (((int week, string lot, string from, string to), (double implied, double written)) in moved)
        {
            if (!Tolerance.Same(written, implied))
            {
                findings.NotSame(
                    RuleNames.Moves, $"moves.csv week {season.Calendar.Show(week)}, lot {lot}, from {from} to {to}", "bins", written, implied);
            }
        }
    }

    private static void Capacity(SeasonData season, PathTracks tracks, Findings findings)
    {
        foreach ((string name, double[] bins) in BinsByPlace(season, tracks))
        {
            for (int week = 0; week < season.Weeks; week++)
            {
                double capacity = season.Places[name].CapacityBins;
                if (!Tolerance.AtMost(bins[week], capacity, capacity))
                {
                    findings.Over(
                        RuleNames.Capacity, $"keeps.csv place {name}, end of week {season.Calendar.Show(week)}", "bins", bins[week], capacity);
                }
            }
        }
    }

    /// <summary>Bins in each place at each week's end.</summary>
    public static Dictionary<string, double[]> BinsByPlace(SeasonData season, PathTracks tracks)
    {
        var places = season.Places.Keys.ToDictionary(name => name, _ => new double[season.Weeks]);
        foreach (PathTrack track in tracks.All)
        {
            for (int week = track.Row?.Start ?? season.Weeks; week < season.Weeks; week++)
            {
                if (track.States[week] is PathRow state)
                {
                    places[state.Place][week] += track.Row!.BinsOf(track.Left[week]);
                }
            }
        }

        return places;
    }
}
