using System.Text;

namespace Cloveshed.Check.Reading;

/// <summary>One record of a CSV file; Line is where it begins, the header being line 1.</summary>
internal sealed record CsvRecord(int Line, string[] Cells);

/// <summary>
/// RFC 4180: cells parted by commas, records by a line end (CR LF, LF or CR alone), quotes around cells that hold either, doubled
/// inside. Empty lines are left out. A quote that never closes, or text behind a closing quote, is a fault of form.
/// </summary>
internal static class CsvText
{
    /// <summary>The records, and the line of the first fault of form (null: none); reading stops there.</summary>
    public static (List<CsvRecord> Records, int? FaultAt) Parse(string text)
    {
        var records = new List<CsvRecord>();
        var cells = new List<string>();
        var cell = new StringBuilder();
        int line = 1;
        int begins = 1;
        int at = text.StartsWith('\uFEFF') ? 1 : 0;
        while (at < text.Length)
        {
            char c = text[at];
            if (c == '"' && cell.Length == 0)
            {
                if (!Quoted(text, ref at, cell, ref line))
                {
                    return (records, begins);
                }
            }
            else if (c is ',' or '\r' or '\n')
            {
                cells.Add(cell.ToString());
                cell.Clear();
                at++;
                if (c == ',')
                {
                    continue;
                }

                if (c == '\r' && at < text.Length && text[at] == '\n')
                {
                    at++;
                }

                Close(records, cells, begins);
                begins = ++line;
            }
            else
            {
                cell.Append(c);
                at++;
            }
        }

        cells.Add(cell.ToString());
        Close(records, cells, begins);
        return (records, null);
    }

    private static void Close(List<CsvRecord> records, List<string> cells, int line)
    {
        if (cells.Count > 1 || !string.IsNullOrWhiteSpace(cells[0]))
        {
            records.Add(new CsvRecord(line, [.. cells]));
        }

        cells.Clear();
    }

    // From an opening quote to behind the closing one; false where it does not close, or where text follows.
    private static bool Quoted(string text, ref int at, StringBuilder cell, ref int line)
    {
        for (at++; at < text.Length; at++)
        {
            char c = text[at];
            if (c != '"')
            {
                line += c == '\n' || (c == '\r' && !(at + 1 < text.Length && text[at + 1] == '\n')) ? 1 : 0;
                cell.Append(c);
            }
            else if (at + 1 < text.Length && text[at + 1] == '"')
            {
                cell.Append(c);
                at++;
            }
            else
            {
                at++;
                return at == text.Length || text[at] is ',' or '\r' or '\n';
            }
        }

        return false;
    }
}
