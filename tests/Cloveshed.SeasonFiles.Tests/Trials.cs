using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>One spoiled season: what is wrong with it, and the one fault that must come of it.</summary>
public sealed record Trial(
    string Name, Func<SmallSeason, SmallSeason> Spoil, FaultRule Rule, string File, int? Line, string? Column, string? Value);

/// <summary>
/// Seasons with one thing wrong. Line numbers are counted by hand in <see cref="SmallSeason"/>'s files, where the header is line 1;
/// what is refused is the contract of the season files, what is expected in words is checked by <see cref="FaultTests"/>.
/// </summary>
public static partial class Trials
{
    private const string FirstLot = "L1,Yard,Early Sorrel,F1,2026-07-20,60,54000,weighed,53000,55000,no,yes,no,0.8,0.1,B,52,0.25,,";
    private const string FirstOrder = "O1,1,Brask Foods,M30,,2026-09-24,100,45.50,,2,10,yes,";

    public static IReadOnlyList<Trial> All { get; } = [.. Files(), .. Rows(), .. CellTrials(), .. Settings(), .. Together(), .. Terms()];

    private static IEnumerable<Trial> Files()
    {
        yield return new("missing file", it => it.Without("lots.csv"), FaultRule.FileMissing, "lots.csv", null, null, null);
        yield return new("missing season.json", it => it.Without("season.json"), FaultRule.FileMissing, "season.json", null, null, null);
        yield return new("file of no bytes", it => it.With("orders.csv", ""), FaultRule.FileEmpty, "orders.csv", null, null, null);
        yield return new("file of empty lines", it => it.With("yields.csv", "\n\n,,\n"), FaultRule.FileEmpty, "yields.csv", null, null, null);
    }

    private static IEnumerable<Trial> Rows()
    {
        yield return new(
            "semicolons", it => it.With("yields.csv", "mode;kept_share\nfresh;0,88\n"), FaultRule.Separator, "yields.csv", 1, null, "mode;kept_share");
        yield return new(
            "tabs", it => it.With("yields.csv", "mode\tkept_share\nfresh\t0.88\n"), FaultRule.Separator, "yields.csv", 1, null, "mode�kept_share");
        yield return new(
            "missing column, once for all rows", it => it.Replace("samples.csv", "weight_g", "weight"), FaultRule.ColumnMissing, "samples.csv", 1, "weight_g", null);
        yield return new(
            "column twice", it => it.Replace("sizes.csv", "class,code", "class,class"), FaultRule.ColumnTwice, "sizes.csv", 1, "class", "class");
        yield return new(
            "a capital in a column's name", it => it.Replace("yields.csv", "kept_share", "Kept_share"), FaultRule.ColumnMissing, "yields.csv", 1, "kept_share", null);
        yield return new(
            "too few fields", it => it.Replace("yields.csv", "crack,0.8", "crack"), FaultRule.FieldCount, "yields.csv", 3, null, "crack");
        yield return new(
            "too many fields", it => it.Replace("yields.csv", "crack,0.8", "crack,0.8,more"), FaultRule.FieldCount, "yields.csv", 3, null, "crack,0.8,more");
        yield return new(
            "empty row in the middle", it => it.Replace("yields.csv", "crack,", "\ncrack,"), FaultRule.EmptyRow, "yields.csv", 3, null, null);
        yield return new(
            "row of commas in the middle", it => it.Replace("yields.csv", "crack,", ",\ncrack,"), FaultRule.EmptyRow, "yields.csv", 3, null, null);
        yield return new(
            "quote in a field", it => it.Append("sell-as-is.csv", "6\" bulbs,0.2,\n"), FaultRule.QuoteInField, "sell-as-is.csv", 4, "variety", "6\" bulbs");
        yield return new(
            "text after a quote", it => it.Append("sell-as-is.csv", "\"Late\" Sorrel,0.2,\n"), FaultRule.TextAfterQuote, "sell-as-is.csv", 4, "variety", "\"Late\" Sorrel");
        yield return new(
            "quote never closed", it => it.Replace("yields.csv", "crack,0.8", "\"crack,0.8"), FaultRule.QuoteNeverClosed, "yields.csv", 3, "mode", "\"crack,0.8");
        yield return new(
            "not UTF-8", it => it.With("rooms.csv", [.. "place,sealed\nCa"u8, 0xF1, .. "on,2026-08-01\n"u8]), FaultRule.NotUtf8, "rooms.csv", 2, "place", "Ca�on");
        yield return new(
            "too many rows",
            it => it.With("clove-grades.csv", Grades(1001)), FaultRule.TooManyRows, "clove-grades.csv", 1002, null, null);
        yield return new(
            "decimal comma splits a row", it => it.Replace("yields.csv", "crack,0.8", "crack,0,8"), FaultRule.DecimalComma, "yields.csv", 3, "kept_share", "0,8");
        yield return new(
            "decimal comma splits a row of many numbers", it => it.Replace("lots.csv", "60,54000,weighed", "60,54000,5,weighed"),
            FaultRule.DecimalComma, "lots.csv", 2, "net", "54000,5");
    }

    private static IEnumerable<Trial> CellTrials()
    {
        yield return Lot("decimal comma in quotes", "54000,weighed", "\"54000,5\",weighed", FaultRule.DecimalComma, "net", "54000,5");
        yield return Lot("negative mass", "54000,weighed", "-54000,weighed", FaultRule.Range, "net", "-54000");
        yield return Lot("no mass", "54000,weighed", "0,weighed", FaultRule.Range, "net", "0");
        yield return Lot("a mass of 1e9", "54000,weighed", "1e9,weighed", FaultRule.Range, "net", "1e9");
        yield return Lot("a mass of NaN", "54000,weighed", "NaN,weighed", FaultRule.NotFinite, "net", "NaN");
        yield return Lot("a mass of infinity", "54000,weighed", "-Infinity,weighed", FaultRule.NotFinite, "net", "-Infinity");
        yield return Lot("a mass of 1e999", "54000,weighed", "1e999,weighed", FaultRule.NotFinite, "net", "1e999");
        yield return Lot("a unit in a number", "54000,weighed", "54000 lb,weighed", FaultRule.Number, "net", "54000 lb");
        yield return Lot("an empty mass", "54000,weighed", ",weighed", FaultRule.CellEmpty, "net", "");
        yield return Lot("a share as percent", "0.8,0.1,B", "80,0.1,B", FaultRule.ShareRange, "fresh_share", "80");
        yield return Lot("shares above 1", "0.8,0.1,B", "0.8,0.21,B", FaultRule.SharesAboveOne, "crack_share", "0.21");
        yield return Lot("a state unknown", "weighed", "guessed", FaultRule.Word, "state", "guessed");
        yield return Lot("true for yes", "no,yes,no,0.8", "true,yes,no,0.8", FaultRule.YesNo, "organic", "true");
        yield return Lot("1 for yes", "no,yes,no,0.8", "no,1,no,0.8", FaultRule.YesNo, "cured", "1");
        yield return Lot("a date the American way", "2026-07-20", "07/20/2026", FaultRule.Date, "harvested", "07/20/2026");
        yield return Lot("a date that does not exist", "2026-07-20", "2026-02-29", FaultRule.Date, "harvested", "2026-02-29");
        yield return Lot("a date of a far year", "2026-07-20", "2226-07-20", FaultRule.Date, "harvested", "2226-07-20");
        yield return Lot("net_low above net", "53000,55000", "54001,55000", FaultRule.LowAboveHigh, "net_low", "54001");
        yield return Lot("net_high below net", "53000,55000", "53000,53999", FaultRule.LowAboveHigh, "net_high", "53999");
        yield return new(
            "percent above 100", it => it.Replace("places.csv", "20,60", "20,101"), FaultRule.PercentRange, "places.csv", 2, "rh", "101");
        yield return new(
            "degrees Fahrenheit", it => it.Replace("places.csv", "20,60", "68,60"), FaultRule.CelsiusRange, "places.csv", 2, "temp_c", "68");
        yield return new(
            "a million million bins", it => it.Replace("places.csv", "500", "1e12"), FaultRule.Range, "places.csv", 2, "capacity_bins", "1e12");
        yield return new(
            "rooms that run out in no week", it => it.Replace("places.csv", "300,6,4", "300,6,0"), FaultRule.LimitRange, "places.csv", 4, "run_out_weeks", "0");
        yield return new(
            "half a carton", it => it.Replace("orders.csv", "24,100,", "24,100.5,"), FaultRule.Whole, "orders.csv", 2, "units", "100.5");
        yield return new(
            "fewer than no cartons", it => it.Replace("orders.csv", "24,100,", "24,-1,"), FaultRule.Range, "orders.csv", 2, "units", "-1");
        yield return new(
            "a line of an order that is no number", it => it.Replace("orders.csv", "O1,1,", "O1,a,"), FaultRule.Number, "orders.csv", 2, "line", "a");
        yield return new(
            "a week that starts on a Tuesday", it => it.Replace("people.csv", "2026-09-07", "2026-09-08"), FaultRule.Monday, "people.csv", 2, "week", "2026-09-08");
        yield return new(
            "stock made on a Sunday", it => it.Replace("stock.csv", "2026-08-31", "2026-08-30"), FaultRule.Monday, "stock.csv", 2, "made", "2026-08-30");
        yield return new(
            "a name as long as a page", it => it.Replace("orders.csv", "O1,1,Brask", "O1,1," + new string('B', 2000)),
            FaultRule.TextTooLong, "orders.csv", 2, "customer", new string('B', 80) + "…");
        yield return new(
            "a class named as the rest", it => it.Replace("sizes.csv", "small,S", "under,S"), FaultRule.ReservedName, "sizes.csv", 2, "class", "under");
        yield return new(
            "a grade named as the rest", it => it.Replace("clove-grades.csv", "small,", "ungraded,"), FaultRule.ReservedName, "clove-grades.csv", 3, "grade", "ungraded");
    }

    private static Trial Lot(string name, string old, string by, FaultRule rule, string column, string value)
    {
        Assert.Contains(old, FirstLot, StringComparison.Ordinal);
        string row = FirstLot.Replace(old, by, StringComparison.Ordinal);
        return new Trial(name, it => it.Replace("lots.csv", FirstLot, row), rule, "lots.csv", 2, column, value);
    }

    private static string Grades(int count) =>
        "grade,min_mm,max_mm\nbig,400,\n" + string.Concat(Enumerable.Range(1, count - 1).Select(at => FormattableString.Invariant($"g{at},{at / 4.0},{(at + 1) / 4.0}\n")));
}
