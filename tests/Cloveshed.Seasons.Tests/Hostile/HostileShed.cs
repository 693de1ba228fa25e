using static Cloveshed.Seasons.Tests.Hostile.HostileCase;

namespace Cloveshed.Seasons.Tests.Hostile;

/// <summary>Broken in places, rooms, lines and people.</summary>
internal static class HostileShed
{
    public static IEnumerable<HostileCase> All =>
    [
        Swap("a place of its own kind", "places.csv", "cold,cold,50", "cold,cellar,50", 3, "kind"),
        Swap("a place twice", "places.csv", "cold,cold,50", "yard,cold,50", 3, "place"),
        Swap("room for less than nothing", "places.csv", "cold,cold,50", "cold,cold,-50", 3, "capacity_bins"),
        Swap("wetter than wet", "places.csv", "-0.5,65,,,1,20", "-0.5,165,,,1,20", 3, "rh"),
        Swap("run out in half weeks", "places.csv", "1,30,2,2", "1,30,2,1.5", 4, "run_out_weeks"),
        Swap("a climate of a place that is not there", "place-weeks.csv", "yard,2030-07-08", "barn,2030-07-08", 2, "place"),
        Swap("a climate of a Tuesday", "place-weeks.csv", "yard,2030-07-08", "yard,2030-07-09", 2, "week"),
        Swap("a climate twice", "place-weeks.csv", "yard,2030-07-15", "yard,2030-07-08", 3, "week"),
        Swap("a room that is not there", "rooms.csv", "room,", "vault,", 2, "place"),
        Swap("a yard that is sealed", "rooms.csv", "room,", "yard,", 2, "place"),
        Swap("a room sealed on no date", "rooms.csv", "2030-06-05", "early June", 2, "sealed"),
        Add("a room sealed twice", "rooms.csv", "room,2030-06-06", "place"),
        Swap("a line of its own mode", "lines.csv", "plant,seed", "plant,sow", 4, "mode"),
        Swap("a line twice", "lines.csv", "plant,seed", "crack,seed", 4, "line"),
        Swap("a line without a rate", "lines.csv", "plant,seed,800", "plant,seed,", 4, "rate_per_hour"),
        Swap("hours below nothing", "lines.csv", "plant,seed,800,20", "plant,seed,800,-20", 4, "hours_per_week"),
        Swap("a set-up below nothing", "lines.csv", "10,2000,0.5", "10,2000,-0.5", 2, "setup_hours"),
        Swap("a week of a line that is not there", "line-weeks.csv", "pack,2030-07-08", "wash,2030-07-08", 3, "line"),
        Swap("a line's week that is no Monday", "line-weeks.csv", "pack,2030-07-08", "pack,2030-07-10", 3, "week"),
        Swap("a line's week twice", "line-weeks.csv", "pack,2030-07-08", "pack,2030-07-01", 3, "week"),
        Swap("people below nothing", "people.csv", "2030-07-08,500", "2030-07-08,-500", 3, "hours"),
        Swap("a week of people twice", "people.csv", "2030-07-08,500", "2030-07-01,500", 3, "week"),
    ];
}
