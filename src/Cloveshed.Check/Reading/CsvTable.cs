namespace Cloveshed.Check.Reading;

/// <summary>A CSV file with the columns that the check needs, in any order; other columns are left alone.</summary>
internal sealed class CsvTable
{
    private readonly Dictionary<string, int> columns = new(StringComparer.OrdinalIgnoreCase);
    private readonly Findings findings;
    private readonly bool season;

    private CsvTable(string file, Findings findings, bool season) => (File, this.findings, this.season) = (file, findings, season);

    public string File { get; }

    public List<CsvRow> Rows { get; } = [];

    /// <summary>The table; empty where the file may be missing and is; null where it cannot be read, which is then reported.</summary>
    /// <param name="season">Whether it is a file of the season, whose faults all go under one rule.</param>
    public static CsvTable? Read(string folder, string file, bool mayBeMissing, bool season, Findings findings, params string[] needed)
    {
        var table = new CsvTable(file, findings, season);
        if (mayBeMissing && !System.IO.File.Exists(Path.Combine(folder, file)))
        {
            return table;
        }

        string? text = FileText.Read(folder, file, season, findings);
        return text is not null && table.Take(text, needed) ? table : null;
    }

    public int? Column(string name) => columns.TryGetValue(name, out int at) ? at : null;

    public void Report(string rule, string where, string found, string allowed) =>
        findings.Add(season ? RuleNames.Season : rule, season ? $"season {where}" : where, found, allowed);

    private bool Take(string text, string[] needed)
    {
        (List<CsvRecord> records, int? faultAt) = CsvText.Parse(text);
        if (faultAt is int line)
        {
            Report(RuleNames.FileForm, $"{File} line {line}", "a quote that does not close, or text behind one that does", "RFC 4180");
            return false;
        }

        if (records.Count == 0)
        {
            Report(RuleNames.FileForm, File, "no header row", $"a header row with {string.Join(", ", needed)}");
            return false;
        }

        string[] header = records[0].Cells;
        bool sound = true;
        for (int i = 0; i < header.Length; i++)
        {
            if (!columns.TryAdd(header[i].Trim(), i))
            {
                Report(RuleNames.FileForm, $"{File} line 1", $"column {header[i].Trim()} twice", "each column once");
                sound = false;
            }
        }

        foreach (string name in needed.Where(name => !columns.ContainsKey(name)))
        {
            Report(RuleNames.ColumnMissing, File, $"no column {name}", $"a column {name}");
            sound = false;
        }

        foreach (CsvRecord record in sound ? records.Skip(1) : [])
        {
            if (record.Cells.Length != header.Length)
            {
                Report(RuleNames.FileForm, $"{File} line {record.Line}", $"{record.Cells.Length} cells", $"{header.Length} cells");
            }
            else
            {
                Rows.Add(new CsvRow(this, record));
            }
        }

        return sound;
    }
}

/// <summary>A whole file as text.</summary>
internal static class FileText
{
    public static string? Read(string folder, string file, bool season, Findings findings)
    {
        string rule = season ? RuleNames.Season : RuleNames.FileMissing;
        string path = Path.Combine(folder, file);
        try
        {
            if (File.Exists(path))
            {
                return File.ReadAllText(path);
            }

            findings.Add(rule, file, "no such file", $"a file {file}");
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            findings.Add(rule, file, "a file that cannot be opened", $"a file {file} that can be read");
        }

        return null;
    }
}
