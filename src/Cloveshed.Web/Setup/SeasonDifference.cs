using System.Text;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Web.Setup;

/// <summary>What an import would change in one list.</summary>
/// <param name="Same">Rows that read as before.</param>
/// <param name="Changed">Rows of the same key that read otherwise.</param>
/// <param name="Samples">Some of the rows that are new, changed or gone, for a look.</param>
public sealed record ListDifference(string File, int New, int Changed, int Gone, int Same, IReadOnlyList<RowDifference> Samples)
{
    public bool Any => New + Changed + Gone > 0;
}

/// <summary>One row: its key, and its cells before (null: new) and after (null: gone).</summary>
public sealed record RowDifference(string Key, IReadOnlyList<CellStep> Cells, bool IsNew, bool IsGone);

/// <summary>The current season held against files that would take its place, row by row. Only sound files are compared.</summary>
public static class SeasonDifference
{
    /// <summary>Rows of each list that are shown.</summary>
    public const int Shown = 20;

    private const char Unit = '\u001f';

    public static IReadOnlyList<ListDifference> Of(SeasonRows? now, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files) =>
        [Settings(now, files), .. SeasonTable.All.Select(table => OfList(now, table, files))];

    private static ListDifference Settings(SeasonRows? now, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files)
    {
        ReadOnlySpan<byte> text = files[SeasonTable.SettingsName].Span;
        Dictionary<string, string> after = SettingsText.Values(Encoding.UTF8.GetString(text.StartsWith("\uFEFF"u8) ? text[3..] : text)), before = now is null ? [] : SettingsText.Values(now.Settings);
        List<RowDifference> rows = [.. before.Keys.Union(after.Keys).Where(key => before.GetValueOrDefault(key) != after.GetValueOrDefault(key))
            .Select(key => new RowDifference(key, [new CellStep(key, before.GetValueOrDefault(key, ""), after.GetValueOrDefault(key, ""))], !before.ContainsKey(key), !after.ContainsKey(key)))];
        int added = rows.Count(row => row.IsNew), gone = rows.Count(row => row.IsGone);
        return new ListDifference(SeasonTable.SettingsName, added, rows.Count - added - gone, gone, after.Count - rows.Count + gone, rows);
    }

    private static ListDifference OfList(SeasonRows? now, SeasonTable table, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files)
    {
        int[] key = [.. ColumnGuides.KeyOf(table.File).Select(table.OrdinalOf)];
        // Rows without a key are known by all of their cells, and may be there several times.
        Dictionary<string, List<string?[]>> before = new(StringComparer.Ordinal);
        foreach (SeasonRow row in now?.Of(table.File) ?? [])
        {
            string?[] cells = [.. table.Columns.Select(column => row.Cells.GetValueOrDefault(column))];
            Add(before, Key(cells, key), cells);
        }

        int added = 0, changed = 0, same = 0;
        List<RowDifference> samples = [];
        foreach (EnteredRow row in files.TryGetValue(table.File, out ReadOnlyMemory<byte> bytes) ? table.Read(bytes).Rows : [])
        {
            string?[]? was = Take(before, Key(row.Cells, key));
            if (was is null)
            {
                added++;
                Show(samples, table, key, [], row.Cells);
            }
            else if (Steps(table, was, row.Cells).Count > 0)
            {
                changed++;
                Show(samples, table, key, was, row.Cells);
            }
            else
            {
                same++;
            }
        }

        foreach (string?[] gone in before.Values.SelectMany(rows => rows).Take(Shown))
        {
            Show(samples, table, key, gone, []);
        }

        return new ListDifference(table.File, added, changed, before.Values.Sum(rows => rows.Count), same, samples);
    }

    private static string Key(IReadOnlyList<string?> cells, int[] key) =>
        key.Length == 0 ? string.Join(Unit, cells.Select(cell => cell?.Trim() ?? "")) : string.Join(Unit, key.Select(ordinal => cells[ordinal]?.Trim() ?? ""));

    private static void Add(Dictionary<string, List<string?[]>> rows, string key, string?[] cells)
    {
        if (!rows.TryGetValue(key, out List<string?[]>? of))
        {
            rows[key] = of = [];
        }

        of.Add(cells);
    }

    private static string?[]? Take(Dictionary<string, List<string?[]>> rows, string key)
    {
        if (!rows.TryGetValue(key, out List<string?[]>? of))
        {
            return null;
        }

        string?[] cells = of[^1];
        of.RemoveAt(of.Count - 1);
        if (of.Count == 0)
        {
            rows.Remove(key);
        }

        return cells;
    }

    private static List<CellStep> Steps(SeasonTable table, IReadOnlyList<string?> was, IReadOnlyList<string?> now) =>
        [.. table.Columns.Select((column, at) => new CellStep(column, was.ElementAtOrDefault(at) ?? "", now.ElementAtOrDefault(at) ?? "")).Where(step => step.Before != step.After)];

    private static void Show(List<RowDifference> samples, SeasonTable table, int[] key, IReadOnlyList<string?> was, IReadOnlyList<string?> now)
    {
        if (samples.Count >= Shown)
        {
            return;
        }

        IReadOnlyList<string?> cells = now.Count > 0 ? now : was;
        samples.Add(new RowDifference(
            string.Join(" ", (key.Length == 0 ? [.. Enumerable.Range(0, table.Columns.Count)] : key).Select(ordinal => cells[ordinal]).Where(cell => !string.IsNullOrEmpty(cell))), Steps(table, was, now), was.Count == 0, now.Count == 0));
    }
}
