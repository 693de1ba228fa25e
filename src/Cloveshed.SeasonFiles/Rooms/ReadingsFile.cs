using System.Globalization;
using Cloveshed.Core;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;
using Cloveshed.SeasonFiles.Weighing;

namespace Cloveshed.SeasonFiles.Rooms;

/// <summary>A row of a readings file: a place's air at a moment, in °C and percent; null where not read, and something was.</summary>
/// <param name="Who">Badge or initials; null where the column is not there or empty.</param>
public sealed record ReadingRow(int Line, PlaceId Place, DateTimeOffset At, double? TempC, double? Rh, double? O2, double? Co2, string? Who, string? Instrument);

/// <summary>What the rows are read against.</summary>
/// <param name="Places">The season's.</param>
/// <param name="Here">For moments without an offset.</param>
/// <param name="Latest">No reading is after it.</param>
/// <param name="NeedsWho">Nobody was named for the whole file, so each row names who.</param>
public sealed record ReadingsAsked(IReadOnlyCollection<string> Places, TimeZoneInfo Here, DateTimeOffset Latest, bool NeedsWho);

/// <summary>place, at, temp_c, rh, o2, co2, who, instrument: readings as a logger or a hand writes them, in any order of columns.</summary>
public static class ReadingsFile
{
    /// <summary>A reading every ten minutes of ten rooms for a month and a half; a longer file comes in parts.</summary>
    public const int MostRows = 60_000;

    private static readonly string[] Forms =
    [
        "yyyy-MM-dd'T'HH:mm", "yyyy-MM-dd'T'HH:mm:ss", "yyyy-MM-dd'T'HH:mm:ss.FFFFFFF",
    ];

    /// <summary>Every fault at once; with any, no row.</summary>
    public static FileReading<IReadOnlyList<ReadingRow>> Parse(string name, ReadOnlyMemory<byte> bytes, ReadingsAsked asked, TextLanguage language) =>
        OneFile.Parse<IReadOnlyList<ReadingRow>>(name, bytes, language, (all, faults) => Parse(name, all, asked, faults));

    private static List<ReadingRow>? Parse(string name, ReadOnlyMemory<byte> bytes, ReadingsAsked asked, FaultList faults)
    {
        FileLayout layout = new(name, needed: true, MostRows);
        Column place = layout.NeededText("place"), at = layout.NeededText("at");
        Column temp = layout.Number("temp_c", Bounds.Celsius), rh = layout.Number("rh", Bounds.Percent), o2 = layout.Number("o2", Bounds.Percent), co2 = layout.Number("co2", Bounds.Percent);
        Column who = asked.NeedsWho ? layout.NeededText("who") : layout.Text("who"), instrument = layout.Text("instrument");
        KnownNames places = new("places.csv", "place") { Complete = true };
        foreach (string known in asked.Places)
            places.Add(known);
        Table table = new(layout, bytes, faults);
        RowKeys keys = new(place, at);
        List<ReadingRow> rows = [];
        while (table.Next())
        {
            Cells cells = table.Cells;
            string? where = cells.Text(place);
            places.Require(table, place, where);
            DateTimeOffset? when = Moment(table, at, asked.Here, asked.Latest);
            keys.Take(table, where, when is null ? null : cells.Canonical(at));
            ReadingRow row = new(
                table.Line, new PlaceId(where ?? ""), when ?? default, cells.Number(temp), cells.Number(rh), cells.Number(o2), cells.Number(co2), cells.Text(who)?.Trim(), cells.Text(instrument)?.Trim());
            if (new[] { temp, rh, o2, co2 }.All(cells.IsEmpty))
                table.Fault(FaultRule.OneCellOf, "temp_c, rh, o2, co2", null, "temp_c, rh, o2, co2");
            if (table.RowSound)
                rows.Add(row);
        }

        OneFile.NeedRows(table, rows.Count, "reading", faults);
        return faults.Count == 0 ? rows : null;
    }

    /// <summary>A cell's moment: without an offset it is by the clock of <paramref name="here"/>.</summary>
    internal static DateTimeOffset? Moment(Table table, Column column, TimeZoneInfo here, DateTimeOffset latest)
    {
        if (table.Cells.Text(column) is null)
            return null;
        string text = table.Cells.Canonical(column).Replace(' ', 'T');
        DateTimeOffset? found = null;
        if (DateTime.TryParseExact(text, Forms, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateTime local))
            found = new DateTimeOffset(local, here.GetUtcOffset(local));
        else if (DateTimeOffset.TryParseExact(text, [.. Forms.Select(form => form + "zzz"), .. Forms.Select(form => form + "'Z'")], CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset with))
            found = with;
        if (found is not { Year: >= 1900 and <= 2199 })
            table.Fault(FaultRule.Moment, column);
        else if (found > latest)
            table.Fault(FaultRule.MomentAhead, column);
        else
            return found;
        return null;
    }
}
