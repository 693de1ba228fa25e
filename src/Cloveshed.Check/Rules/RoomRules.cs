using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>
/// A sealed room: loaded up to and with the week `sealed`, untouched until the week `opened`, then only emptied, and empty at the end
/// of week opened + run_out_weeks - 1. A room without a row is a cold place, or, where it was sealed before, stays closed.
/// </summary>
internal static class RoomRules
{
    private sealed record Sealing(Place Place, int Sealed, int? Opened)
    {
        public bool Closed(int week) => week > Sealed && !(week >= Opened);

        public bool NoMoreIn(int week) => week > Sealed || week >= Opened;
    }

    public static void Check(SeasonData season, AnswerData answer, PathTracks tracks, Findings findings)
    {
        Dictionary<string, Sealing> rooms = Sealings(season, answer, findings);
        foreach (PathTrack track in tracks.All.Where(track => track.Row is not null))
        {
            Touches(season, rooms, track, findings);
        }

        Dictionary<string, double[]> bins = PlaceRules.BinsByPlace(season, tracks);
        foreach (Sealing room in rooms.Values)
        {
            RunOut(season, room, bins[room.Place.Name], findings);
        }
    }

    private static Dictionary<string, Sealing> Sealings(SeasonData season, AnswerData answer, Findings findings)
    {
        var rooms = new Dictionary<string, Sealing>();
        foreach ((string name, (int week, _)) in season.SealedRooms)
        {
            if (season.Places.TryGetValue(name, out Place? place))
            {
                rooms[name] = new Sealing(place, week, null);
            }
        }

        foreach (RoomRow row in answer.Rooms)
        {
            Place place = season.Places[row.Place];
            if (!place.MayBeSealed)
            {
                findings.Add(RuleNames.RoomKind, row.Where, $"a place of kind {place.Kind}", "a place of kind sealed");
                continue;
            }

            // A room that was sealed in the week of as_of may be opened again in that week.
            bool sealedBefore = season.SealedRooms.ContainsKey(row.Place);
            if (row.Opened < row.Sealed || (row.Opened == row.Sealed && !sealedBefore))
            {
                findings.Add(RuleNames.RoomWeeks, row.Where, $"opened {season.Calendar.Show(row.Opened.Value)}", "a week after the week of sealing");
            }

            if (season.SealedRooms.TryGetValue(row.Place, out (int Week, string Date) before))
            {
                if (row.Sealed != before.Week)
                {
                    findings.Add(
                        RuleNames.RoomAlreadySealed, row.Where, $"sealed {season.Calendar.Show(row.Sealed)}",
                        $"{season.Calendar.Show(before.Week)}, the week of {before.Date} in the season's rooms.csv");
                }
            }
            else if (row.Sealed < season.Calendar.AsOfWeek - 1 || row.Sealed >= season.Weeks)
            {
                findings.Add(RuleNames.RoomWeeks, row.Where, $"sealed {season.Calendar.Show(row.Sealed)}", "a week of the season, from as_of on");
            }

            if (row.Opened < season.Calendar.AsOfWeek)
            {
                findings.Add(RuleNames.RoomWeeks, row.Where, $"opened {season.Calendar.Show(row.Opened.Value)}", "a week from as_of on");
            }

            rooms[row.Place] = new Sealing(place, row.Sealed, row.Opened);
        }

        return rooms;
    }

    private static void Touches(SeasonData season, Dictionary<string, Sealing> rooms, PathTrack track, Findings findings)
    {
        LotRow row = track.Row!;
        double nothing = row.Net;
        for (int week = row.Start; week < season.Weeks; week++)
        {
            if (track.States[week] is not PathRow state || Tolerance.IsNothing(track.Standing(week), nothing))
            {
                continue;
            }

            string where = $"paths.csv path {track.Name}, week {season.Calendar.Show(week)}";
            string? before = track.PlaceBefore(week);
            bool arrives = week == row.Start && !row.StoodBefore;
            if ((before != state.Place || arrives) && rooms.TryGetValue(state.Place, out Sealing? into) && into.NoMoreIn(week))
            {
                findings.Add(RuleNames.RoomIn, where, $"into {state.Place}", $"nothing in after week {season.Calendar.Show(into.Sealed)}");
            }

            if (before is not null && before != state.Place && rooms.TryGetValue(before, out Sealing? from) && from.Closed(week))
            {
                findings.Add(RuleNames.RoomOut, where, $"moved out of {before}", Shut(season, from));
            }

            if (rooms.TryGetValue(state.Place, out Sealing? room) && room.Closed(week) && !Tolerance.IsNothing(track.Leaves(week), nothing))
            {
                findings.Add(RuleNames.RoomOut, where, $"{Figures.Show(track.Leaves(week))} run, sold or discarded from {state.Place}", Shut(season, room));
            }
        }
    }

    private static string Shut(SeasonData season, Sealing room) => room.Opened is int opened
        ? $"nothing out after week {season.Calendar.Show(room.Sealed)} and before week {season.Calendar.Show(opened)}"
        : $"nothing out after week {season.Calendar.Show(room.Sealed)}: it is not opened";

    private static void RunOut(SeasonData season, Sealing room, double[] bins, Findings findings)
    {
        if (room.Opened is not int opened || room.Place.RunOutWeeks is not int weeks)
        {
            return;
        }

        for (long week = Math.Max(0, (long)opened + weeks - 1); week < season.Weeks; week++)
        {
            if (!Tolerance.IsNothing(bins[week], room.Place.CapacityBins))
            {
                findings.Over(
                    RuleNames.RoomRunOut, $"keeps.csv place {room.Place.Name}, end of week {season.Calendar.Show((int)week)}", "bins", bins[week], 0);
                return;
            }
        }
    }
}
