using Cloveshed.Core;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;
using Cloveshed.SeasonFiles.Rooms;
using Cloveshed.SeasonFiles.Weighing;

namespace Cloveshed.SeasonFiles.Yard;

/// <summary>A weighing of a marked sack, in the unit that was named for the file.</summary>
public sealed record SackRow(int Line, LotId Lot, string Sack, DateTimeOffset At, double Weight);

/// <summary>lot, sack, at, weight: marked sacks as they are weighed day by day, in any order of columns and rows.</summary>
public static class SackWeightsFile
{
    /// <summary>A hundred sacks weighed daily for a summer.</summary>
    public const int MostRows = 10_000;

    private static readonly Bounds Weight = new(0, 1e6, AboveMin: true);

    /// <summary>Every fault at once; with any, no row.</summary>
    public static FileReading<IReadOnlyList<SackRow>> Parse(
        string name, ReadOnlyMemory<byte> bytes, IReadOnlyCollection<string> lots, TimeZoneInfo here, DateTimeOffset latest, TextLanguage language) =>
        OneFile.Parse<IReadOnlyList<SackRow>>(name, bytes, language, (all, faults) => Parse(name, all, lots, here, latest, faults));

    private static List<SackRow>? Parse(string name, ReadOnlyMemory<byte> bytes, IReadOnlyCollection<string> lots, TimeZoneInfo here, DateTimeOffset latest, FaultList faults)
    {
        FileLayout layout = new(name, needed: true, MostRows);
        Column lot = layout.NeededText("lot"), sack = layout.NeededText("sack"), at = layout.NeededText("at"), weight = layout.NeededNumber("weight", Weight);
        KnownNames known = new("lots.csv", "lot") { Complete = true };
        foreach (string one in lots)
            known.Add(one);
        Table table = new(layout, bytes, faults);
        RowKeys keys = new(lot, sack, at);
        List<SackRow> rows = [];
        while (table.Next())
        {
            string? which = table.Cells.Text(lot), mark = table.Cells.Text(sack);
            known.Require(table, lot, which);
            DateTimeOffset? when = ReadingsFile.Moment(table, at, here, latest);
            keys.Take(table, which, mark, when is null ? null : table.Cells.Canonical(at));
            double? found = table.Cells.Number(weight);
            if (table.RowSound)
                rows.Add(new SackRow(table.Line, new LotId(which!), mark!.Trim(), when!.Value, found!.Value));
        }

        OneFile.NeedRows(table, rows.Count, "sack", faults);
        return faults.Count == 0 ? rows : null;
    }
}
