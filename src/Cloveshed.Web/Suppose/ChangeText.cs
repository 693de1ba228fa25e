using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Web.Shared;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Web.Suppose;

/// <summary>A change as an address has it: its kind and its parts, each escaped, with bars between. Masses are in the season's unit.</summary>
internal static class ChangeText
{
    public static string Of(SeasonChange change) => change switch
    {
        SeasonChange.OrderCancelled c => Joined("cancel", c.Order.Text, c.Number ?? ""),
        SeasonChange.OrderResized c => Joined("units", c.Order.Text, c.Number, Paths.Number(c.Units)),
        SeasonChange.OrderMoved c => Joined("due", c.Order.Text, c.Number ?? "", Paths.Day(c.Due)),
        SeasonChange.OrderAdded c => Joined("add", c.Line.Product.Text, Paths.Number(c.Line.Units), c.Line.Price.ToString(CultureInfo.InvariantCulture), Paths.Day(c.Line.Due)),
        SeasonChange.LineStopped c => Joined("stop", c.Line.Text, Paths.Day(c.First), Paths.Day(c.Last)),
        SeasonChange.PeopleThere c => Joined("people", Paths.Day(c.Day), Paths.Number(c.PersonHours)),
        SeasonChange.LotDugLater c => Joined("later", c.Lot.Text, Paths.Number(c.Weeks)),
        SeasonChange.LotKeepsLess c => Joined("keeps", c.Lot.Text, Paths.Number(c.Weeks)),
        SeasonChange.LotWeighsLess c => Joined("lighter", c.Lot.Text, Paths.Number(100 * c.Share)),
        SeasonChange.RunDone c => Joined(c.NoMore ? "ran-no-more" : "ran", c.Lot.Text, c.Line.Text, Paths.Number(c.Mass)),
        SeasonChange.RoomOpened c => Joined("open", c.Place.Text, c.Day is { } day ? Paths.Day(day) : ""),
        _ => throw new InvalidOperationException($"{change.GetType().Name} has no address."),
    };

    /// <summary>Null where it is none.</summary>
    public static SeasonChange? Read(string text) => text.Split('|').Select(Uri.UnescapeDataString).ToArray() switch
    {
        ["cancel", { Length: > 0 } order, var number] => new SeasonChange.OrderCancelled(new(order), number.Length > 0 ? number : null),
        ["units", { Length: > 0 } order, { Length: > 0 } number, var units] when Whole(units, 1, SeasonChange.MostUnits) is { } count => new SeasonChange.OrderResized(new(order), number, count),
        ["due", { Length: > 0 } order, var number, var day] when Day(day) is { } due => new SeasonChange.OrderMoved(new(order), number.Length > 0 ? number : null, due),
        ["add", { Length: > 0 } product, var units, var price, var day] when Whole(units, 1, SeasonChange.MostUnits) is { } count && Price(price) is { } each && Day(day) is { } due => SeasonChange.OrderAdded.Of(new(product), count, each, due),
        ["stop", { Length: > 0 } line, var from, var to] when Day(from) is { } first && Day(to) is { } last => new SeasonChange.LineStopped(new(line), first, last),
        ["people", var day, var hours] when Day(day) is { } week && Number(hours, 0, SeasonChange.MostPersonHours) is { } count => new SeasonChange.PeopleThere(week, count),
        ["later", { Length: > 0 } lot, var weeks] when Whole(weeks, 1, SeasonChange.MostWeeks) is { } count => new SeasonChange.LotDugLater(new(lot), count),
        ["keeps", { Length: > 0 } lot, var weeks] when Number(weeks, 0.01, SeasonChange.MostWeeks) is { } count => new SeasonChange.LotKeepsLess(new(lot), count),
        ["lighter", { Length: > 0 } lot, var percent] when Number(percent, 0.01, SeasonChange.MostPercentLess) is { } much => new SeasonChange.LotWeighsLess(new(lot), much / 100),
        ["ran" or "ran-no-more", { Length: > 0 } lot, { Length: > 0 } line, var mass] when Number(mass, 0, 1e12) is { } much && (much > 0 || text.StartsWith("ran-no-more", StringComparison.Ordinal)) =>
            new SeasonChange.RunDone(new(lot), new(line), much, text.StartsWith("ran-no-more", StringComparison.Ordinal)),
        ["open", { Length: > 0 } room, var day] when day.Length == 0 || Day(day) is not null => new SeasonChange.RoomOpened(new(room), Day(day)),
        _ => null,
    };

    internal static LocalDate? Day(string text) => LocalDatePattern.Iso.Parse(text) is { Success: true, Value: var day } ? day : null;

    internal static int? Whole(string text, int least, int most) => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= least && number <= most ? number : null;

    internal static double? Number(string text, double least, double most) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && number >= least && number <= most ? number : null;

    internal static decimal? Price(string text) => decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal price) && price <= SeasonChange.MostPrice ? price : null;

    private static string Joined(params ReadOnlySpan<string> parts)
    {
        string[] escaped = new string[parts.Length];
        for (int k = 0; k < parts.Length; k++)
        {
            escaped[k] = Uri.EscapeDataString(parts[k]);
        }

        return string.Join('|', escaped);
    }
}
