using System.Text;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.Web.Setup;

/// <summary>A fault that a change would bring, and the row that it is in, where it is in one that stands already.</summary>
public sealed record TrialFault(Fault Fault, SeasonRow? Row);

/// <summary>What the season's reader says of a change before it is handed in.</summary>
/// <param name="AtFields">Faults of the row itself, by column.</param>
/// <param name="Elsewhere">Faults that other rows would have.</param>
/// <param name="Count">All of them, also those that are not listed.</param>
public sealed record RowTrial(IReadOnlyDictionary<string, IReadOnlyList<Fault>> AtFields, IReadOnlyList<TrialFault> Elsewhere, int Count)
{
    /// <summary>Faults of other rows that are listed; nobody reads on, and each is looked up.</summary>
    public const int Told = 12;

    /// <summary>Nothing against it.</summary>
    public bool Sound => Count == 0;

    /// <summary>The season with the row reading so; without cells it is dropped, without a number it is new.</summary>
    public static RowTrial Of(ShedState state, SeasonList list, int? number, IReadOnlyDictionary<string, string>? cells, TextLanguage language) =>
        Of(state, list, number is { } row ? new Dictionary<int, IReadOnlyDictionary<string, string>?> { [row] = cells } : [], number is null ? cells : null, language);

    /// <summary>The season with rows reading so (dropped where they have no cells) and one more. Faults at fields are those of the last of them.</summary>
    public static RowTrial Of(
        ShedState state, SeasonList list, Dictionary<int, IReadOnlyDictionary<string, string>?> changed, IReadOnlyDictionary<string, string>? added, TextLanguage language)
    {
        SeasonRows rows = state.Rows ?? throw new InvalidOperationException("No season is open.");
        List<(SeasonRow? Row, IReadOnlyDictionary<string, string> Cells)> all = [];
        foreach (SeasonRow row in rows.Of(list.File))
        {
            if (!changed.TryGetValue(row.Row, out IReadOnlyDictionary<string, string>? cells))
            {
                all.Add((row, row.Cells));
            }
            else if (cells is not null)
            {
                all.Add((row, cells));
            }
        }

        if (added is not null)
        {
            all.Add((null, added));
        }

        IReadOnlyList<string> columns = list.Table.Columns, had = rows.ColumnsOf(list.File);
        bool[] has = [.. columns.Select((column, ordinal) => had.Contains(column) || list.Table.IsNeeded(ordinal) || added?.ContainsKey(column) == true || changed.Values.Any(cells => cells?.ContainsKey(column) == true))];
        Dictionary<string, ReadOnlyMemory<byte>> files = new(state.Files()) { [list.File] = list.Table.Write(has, all.Select(row => (IReadOnlyList<string?>)[.. columns.Select(column => row.Cells.GetValueOrDefault(column))])) };
        SeasonReading reading = SeasonReader.Parse(files, language);
        return reading.Season is not null ? new RowTrial(new Dictionary<string, IReadOnlyList<Fault>>(), [], 0) : Placed(reading, rows, list, changed.Count > 0 ? changed.Keys.Max() : null, all);
    }

    /// <summary>season.json with another text.</summary>
    public static RowTrial OfSettings(ShedState state, string text, TextLanguage language)
    {
        Dictionary<string, ReadOnlyMemory<byte>> files = new(state.Files()) { [SeasonTable.SettingsName] = Encoding.UTF8.GetBytes(text) };
        SeasonReading reading = SeasonReader.Parse(files, language);
        SeasonRows rows = state.Rows ?? throw new InvalidOperationException("No season is open.");
        bool Own(Fault fault) => fault.File == SeasonTable.SettingsName && fault.Column is not null;
        return new RowTrial(
            reading.Faults.Where(Own).GroupBy(fault => fault.Column!).ToDictionary(group => group.Key, group => (IReadOnlyList<Fault>)[.. group]),
            [.. reading.Faults.Where(fault => !Own(fault)).Take(Told).Select(fault => new TrialFault(fault, fault.Line is { } line ? At(rows.Of(fault.File), line) : null))], reading.FaultCount);
    }

    private static RowTrial Placed(
        SeasonReading reading, SeasonRows rows, SeasonList list, int? number, List<(SeasonRow? Row, IReadOnlyDictionary<string, string> Cells)> all)
    {
        Dictionary<string, IReadOnlyList<Fault>> own = [];
        List<TrialFault> elsewhere = [];
        int line = 2;
        Dictionary<int, SeasonRow?> byLine = [];
        int ownLine = -1;
        foreach ((SeasonRow? row, IReadOnlyDictionary<string, string> cells) in all)
        {
            byLine[line] = row;
            ownLine = row?.Row == number ? line : ownLine;
            line += Lines(cells);
        }

        foreach (Fault fault in reading.Faults)
        {
            // The column of a key is all of its columns: the first one is where it is mended.
            string? column = fault.Column?.Split(", ")[0];
            if (fault.File == list.File && fault.Line == ownLine && column is not null && list.Table.OrdinalOf(column) >= 0)
            {
                own[column] = [.. own.GetValueOrDefault(column) ?? [], fault];
            }
            else if (elsewhere.Count < Told)
            {
                elsewhere.Add(new TrialFault(fault, fault.Line is not { } at ? null : fault.File == list.File ? byLine.GetValueOrDefault(at) : At(rows.Of(fault.File), at)));
            }
        }

        return new RowTrial(own, elsewhere, reading.FaultCount);
    }

    private static SeasonRow? At(IEnumerable<SeasonRow> rows, int line)
    {
        int at = 2;
        foreach (SeasonRow row in rows)
        {
            if (at == line)
            {
                return row;
            }

            at += Lines(row.Cells);
        }

        return null;
    }

    /// <summary>A row takes one line, and one more for each line end within its cells.</summary>
    private static int Lines(IReadOnlyDictionary<string, string> cells) =>
        1 + cells.Values.Sum(cell => cell.Length == 0 ? 0 : cell.ReplaceLineEndings("\n").Count(letter => letter == '\n'));
}
