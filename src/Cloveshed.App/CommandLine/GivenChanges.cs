using System.CommandLine;
using System.Globalization;
using Cloveshed.App.Words;
using Cloveshed.Core.Planning.Supposing;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.App.CommandLine;

/// <summary>Options that say what is supposed, each as often as there is something of its kind.</summary>
internal static class GivenChanges
{
    /// <summary>ORDER, or ORDER/LINE for one line of it.</summary>
    public static Option<SeasonChange[]?> Cancelled(Phrasebook phrases) => Of("--cancel", "ORDER[/LINE]", "SO-1002/1", Phrase.SupposeCancel, phrases,
        text => text.Length == 0 ? null : Order(text) is var (order, number) ? new SeasonChange.OrderCancelled(new(order), number) : null);

    /// <summary>ORDER/LINE=UNITS.</summary>
    public static Option<SeasonChange[]?> Resized(Phrasebook phrases) => Of("--units", "ORDER/LINE=UNITS", "SO-1002/1=200", Phrase.SupposeUnits, phrases,
        text => Halves(text) is var (left, right) && Order(left) is (var order, { } number) && int.TryParse(right, NumberStyles.None, CultureInfo.InvariantCulture, out int units) && units is >= 1 and <= SeasonChange.MostUnits
            ? new SeasonChange.OrderResized(new(order), number, units) : null);

    /// <summary>ORDER[/LINE]=DATE.</summary>
    public static Option<SeasonChange[]?> Moved(Phrasebook phrases) => Of("--move-due", "ORDER[/LINE]=DATE", "SO-1002=2026-07-17", Phrase.SupposeDue, phrases,
        text => Halves(text) is var (left, right) && Order(left) is var (order, number) && Day(right) is { } day ? new SeasonChange.OrderMoved(new(order), number, day) : null);

    /// <summary>LINE=DATE or LINE=DATE..DATE.</summary>
    public static Option<SeasonChange[]?> Stopped(Phrasebook phrases) => Of("--stop", "LINE=DATE[..DATE]", "\"Pack 1=2026-10-05..2026-10-16\"", Phrase.SupposeStop, phrases,
        text => Halves(text) is var (left, right) && right.Split("..") is { Length: 1 or 2 } days && Day(days[0]) is { } first && Day(days[^1]) is { } last
            ? new SeasonChange.LineStopped(new(left), first, last) : null);

    /// <summary>DATE=HOURS.</summary>
    public static Option<SeasonChange[]?> PersonHours(Phrasebook phrases) => Of("--person-hours", "DATE=HOURS", "2026-10-05=900", Phrase.SupposeHours, phrases,
        text => Halves(text) is var (left, right) && Day(left) is { } day && Number(right) is >= 0 and <= SeasonChange.MostPersonHours and var hours
            ? new SeasonChange.PeopleThere(day, hours) : null);

    /// <summary>PRODUCT=UNITS@PRICE@DATE.</summary>
    public static Option<SeasonChange[]?> Added(Phrasebook phrases) => Of("--add", "PRODUCT=UNITS@PRICE@DATE", "\"Jumbo 30 lb=200@46.50@2026-10-23\"", Phrase.SupposeAdd, phrases, text =>
        Halves(text) is var (product, rest) && rest.Split('@') is [var much, var each, var date] && int.TryParse(much, NumberStyles.None, CultureInfo.InvariantCulture, out int units) && units is >= 1 and <= SeasonChange.MostUnits
            && decimal.TryParse(each, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal price) && price <= SeasonChange.MostPrice && Day(date) is { } due
            ? SeasonChange.OrderAdded.Of(new(product), units, price, due) : null);

    /// <summary>LOT=WEEKS.</summary>
    public static Option<SeasonChange[]?> DugLater(Phrasebook phrases) => Of("--dig-later", "LOT=WEEKS", "26-081=2", Phrase.SupposeDigLater, phrases, text =>
        Halves(text) is var (lot, right) && int.TryParse(right, NumberStyles.None, CultureInfo.InvariantCulture, out int weeks) && weeks is >= 1 and <= SeasonChange.MostWeeks ? new SeasonChange.LotDugLater(new(lot), weeks) : null);

    /// <summary>LOT=WEEKS.</summary>
    public static Option<SeasonChange[]?> KeepsLess(Phrasebook phrases) => Of("--keeps-less", "LOT=WEEKS", "26-081=3", Phrase.SupposeKeepsLess, phrases, text =>
        Halves(text) is var (lot, right) && Number(right) is > 0 and <= SeasonChange.MostWeeks and var weeks ? new SeasonChange.LotKeepsLess(new(lot), weeks) : null);

    /// <summary>LOT=PERCENT.</summary>
    public static Option<SeasonChange[]?> WeighsLess(Phrasebook phrases) => Of("--weighs-less", "LOT=PERCENT", "26-081=8", Phrase.SupposeWeighsLess, phrases, text =>
        Halves(text) is var (lot, right) && Number(right) is > 0 and <= SeasonChange.MostPercentLess and var percent ? new SeasonChange.LotWeighsLess(new(lot), percent / 100) : null);

    /// <summary>LOT@LINE=MASS.</summary>
    public static Option<SeasonChange[]?> Ran(Phrasebook phrases, bool noMore) => Of(noMore ? "--ran-no-more" : "--ran", "LOT@LINE=MASS", "\"25-063@Pack 1=12000\"", noMore ? Phrase.SupposeRanNoMore : Phrase.SupposeRan, phrases, text =>
        Halves(text) is var (left, right) && left.LastIndexOf('@') is > 0 and var at && at < left.Length - 1 && Number(right) is { } mass && (noMore ? mass >= 0 : mass > 0)
            ? new SeasonChange.RunDone(new(left[..at].Trim()), new(left[(at + 1)..].Trim()), mass, noMore) : null);

    /// <summary>ROOM=DATE, or ROOM=never.</summary>
    public static Option<SeasonChange[]?> Opened(Phrasebook phrases) => Of("--open", "ROOM=DATE|never", "\"Sealed D=2027-01-11\"", Phrase.SupposeOpen, phrases, text =>
        Halves(text) is var (room, right) && (right == "never" || Day(right) is not null) ? new SeasonChange.RoomOpened(new(room), Day(right)) : null);

    private static double? Number(string text) => double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? value : null;

    private static Option<SeasonChange[]?> Of(string name, string form, string example, Phrase does, Phrasebook phrases, Func<string, SeasonChange?> read) => new(name)
    {
        Description = phrases[does], HelpName = form, Arity = ArgumentArity.OneOrMore,
        CustomParser = result =>
        {
            SeasonChange?[] all = [.. result.Tokens.Select(token => read(token.Value.Trim()))];
            int wrong = Array.IndexOf(all, null);
            if (wrong >= 0)
            {
                result.AddError(phrases.Say(Phrase.NotANumber, name, form, example, result.Tokens[wrong].Value));
            }

            return [.. all.OfType<SeasonChange>()];
        },
    };

    /// <summary>Left and right of the last equals sign; names may have one in them, what follows may not.</summary>
    private static (string Left, string Right)? Halves(string text) =>
        text.LastIndexOf('=') is > 0 and var at && at < text.Length - 1 ? (text[..at].Trim(), text[(at + 1)..].Trim()) : null;

    private static (string Order, string? Number)? Order(string text) =>
        text.LastIndexOf('/') is var at && at < 0 ? (text, null) : at > 0 && at < text.Length - 1 ? (text[..at], text[(at + 1)..]) : null;

    private static LocalDate? Day(string text) => LocalDatePattern.Iso.Parse(text) is { Success: true, Value: var day } ? day : null;
}
