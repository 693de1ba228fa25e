using System.Globalization;
using System.Text.RegularExpressions;
using NodaTime;

namespace Cloveshed.Core.Planning;

/// <summary>Everything that a plan's reasons can say: of a run, and of an order line that is short.</summary>
public enum Remark
{
    // Of a run: what it is for
    SeedFor, ServesAndMore, Serves, AlsoMarket, OnlyMarket, CracksSorted, ForCloves,

    // Of a run: why in this week
    PastLife, LifeUntil, LifeUsed, HandsShort, LineFullWithOvertime, LineFull, PlaceFull, RoomOpened, LookedAt,

    // Of a run: the choice that comes next, and what it would have cost
    NextLine, NextSold, NextKept, NextGone, AlikeLine, AlikeSold, AlikeKept, BetterLine, BetterSold, BetterKept,

    // Of a short order line: whether it can be had at all
    AfterSeason, NotToBeHad, ShipsWhole,

    // Of a short order line: its best week, and what is scarce then
    BestWeek, ThenLate, LeftByWholes, MakingDear, BulbsShort, ClovesShort, HoursShort, HandsWorth,
}

/// <summary>
/// The planner's own words, in English, as they stand in runs.csv and shorts.csv: remarks, one after another. A slot names its
/// value's place and kind, "{1:day}", so that a reader can tell a remark from its words and say it in another language.
/// </summary>
public static partial class Remarks
{
    /// <summary>What stands between two remarks.</summary>
    public const string Between = "; ";

    /// <summary>A day as remarks write it.</summary>
    public const string DayPattern = "d MMM uuuu";

    /// <summary>The English words; kinds of slots are text, day, percent (whole), money (per unit, two decimals) and count.</summary>
    public static string Words(Remark remark) => remark switch
    {
        Remark.SeedFor => "seed for {0:text} by {1:day}",
        Remark.ServesAndMore => "serves {0:text} and {1:count} more",
        Remark.Serves => "serves {0:text}",
        Remark.AlsoMarket => "and the market",
        Remark.OnlyMarket => "for the market",
        Remark.CracksSorted => "cracks what was sorted out",
        Remark.ForCloves => "for its cloves and what is sorted out",
        Remark.PastLife => "past its storage life ({0:percent} used)",
        Remark.LifeUntil => "{0:percent} of its storage life used, last good week {1:day}",
        Remark.LifeUsed => "{0:percent} of its storage life used",
        Remark.HandsShort => "hands are short that week",
        Remark.LineFullWithOvertime => "{0:text} has no hours left, overtime included",
        Remark.LineFull => "{0:text} has no hours left",
        Remark.PlaceFull => "{0:text} is full",
        Remark.RoomOpened => "{0:text} opens in the week of {1:day}",
        Remark.LookedAt => "clock by inspections ({0:count}, the last on {1:day})",
        Remark.NextLine => "next best over {0:text} in the week of {1:day}, worth {2:money} less",
        Remark.NextSold => "next best sold as is in the week of {0:day}, worth {1:money} less",
        Remark.NextKept => "next best kept to the season's end, worth {0:money} less",
        Remark.NextGone => "nothing else pays, without this run it is worth {0:money} less",
        Remark.AlikeLine => "as good over {0:text} in the week of {1:day}",
        Remark.AlikeSold => "as good sold as is in the week of {0:day}",
        Remark.AlikeKept => "as good kept to the season's end",
        Remark.BetterLine => "some of it may be worth more over {0:text} in the week of {1:day}, but for holds and whole runs, and more time may find it",
        Remark.BetterSold => "some of it may be worth more sold as is in the week of {0:day}, but for holds and whole runs, and more time may find it",
        Remark.BetterKept => "some of it may be worth more kept to the season's end, but for holds and whole runs, and more time may find it",
        Remark.AfterSeason => "it may not ship before the season ends",
        Remark.NotToBeHad => "nothing in the season can make it",
        Remark.ShipsWhole => "the order ships whole or not at all",
        Remark.BestWeek => "in its best week, that of {1:day}, the next unit of {0:text} costs {2:money} and this line gives {3:money}",
        Remark.ThenLate => "it would then be late",
        Remark.LeftByWholes => "it would pay, but was lost when runs and units were made whole, and more time may find it",
        Remark.MakingDear => "packing it and its line hours alone cost {0:money}",
        Remark.BulbsShort => "{0:text} bulbs are scarce",
        Remark.ClovesShort => "{0:text} cloves are scarce",
        Remark.HoursShort => "hours of {0:text} are scarce in the week of {1:day}, one more is worth {2:money}",
        Remark.HandsWorth => "hands are scarce in the week of {0:day}, one more hour is worth {1:money}",
        _ => throw new ArgumentOutOfRangeException(nameof(remark)),
    };

    /// <summary>A remark with its values: text, a LocalDate, a share (percent), money as a double, a count as an int.</summary>
    internal static string Say(Remark remark, params object[] values) => Slot().Replace(
        Words(remark), slot => Written(values[int.Parse(slot.Groups["at"].ValueSpan, CultureInfo.InvariantCulture)], slot.Groups["kind"].Value));

    private static string Written(object value, string kind) => (value, kind) switch
    {
        (string text, "text") => text,
        (LocalDate day, "day") => day.ToString(DayPattern, CultureInfo.InvariantCulture),
        (double share, "percent") => Math.Round(share * 100).ToString(CultureInfo.InvariantCulture) + "%",
        (double money, "money") => money.ToString("0.00", CultureInfo.InvariantCulture),
        (int count, "count") => count.ToString(CultureInfo.InvariantCulture),
        _ => throw new ArgumentException($"{value} is no {kind}.", nameof(value)),
    };

    /// <summary>A slot in the words of a remark.</summary>
    [GeneratedRegex(@"\{(?<at>\d):(?<kind>\w+)\}")]
    public static partial Regex Slot();
}
