using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Answers;

/// <summary>One CSV file of an answer: its layout, how a row is written, how a row is read.</summary>
internal sealed class AnswerFile<TRow>(FileLayout layout, Action<CsvText, TRow, SeasonSettings> write, Func<Cells, SeasonFrame, TRow> read)
{
    public FileLayout Layout => layout;

    public string Name => layout.Name;

    public byte[] Write(IReadOnlyList<TRow> rows, SeasonSettings settings)
    {
        CsvText text = new(layout);
        foreach (TRow row in rows)
        {
            write(text, row, settings);
            text.EndRow();
        }
        return text.ToBytes();
    }

    /// <summary>The sound rows; the others are in the faults, as is the file if it is missing.</summary>
    public IReadOnlyList<TRow> Read(IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, SeasonFrame frame, FaultList faults)
    {
        if (!files.TryGetValue(layout.Name, out ReadOnlyMemory<byte> bytes))
        {
            faults.Add(FaultRule.FileMissing, layout.Name, null, null, null, "");
            return [];
        }
        Table table = new(layout, bytes, faults);
        List<TRow> rows = [];
        while (table.Next())
        {
            TRow row = read(table.Cells, frame);
            if (table.RowSound)
                rows.Add(row);
        }
        return rows;
    }
}
