using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>From one week to another, both included: rows of one name may not share a week, or it would not be known which of them counts.</summary>
internal sealed class WeekSpans(IReadOnlyList<Column> names, Column from, Column to)
{
    private readonly Dictionary<string, List<(int From, int To, int Line)>> taken = new(StringComparer.Ordinal);
    private readonly RowKeys keys = new([.. names, from]);

    /// <summary>The row's weeks; an empty to is null. Faults of them, of the row's key and of weeks that are there twice are reported here.</summary>
    public (int? From, int? To) Read(Table table, SeasonDraft draft, params ReadOnlySpan<string?> named)
    {
        Cells cells = table.Cells;
        int? first = cells.Week(from, draft.Frame), last = cells.Week(to, draft.Frame);
        if (last < first)
            table.Fault(FaultRule.ToBeforeFrom, to, cells.Canonical(from));
        if (first is not { } start)
            return (first, last);
        bool soundBefore = table.RowSound;
        keys.Take(table, [.. named, cells.Canonical(from)]);
        for (int at = 0; at < named.Length; at++)
            if (named[at] is null && names[at].Needed)
                return (first, last);
        if (!soundBefore || !table.RowSound)
            return (first, last);
        string key = string.Join('\u001f', named);
        if (!taken.TryGetValue(key, out List<(int From, int To, int Line)>? spans))
            taken[key] = spans = [];
        int end = last ?? int.MaxValue;
        foreach ((int otherFrom, int otherTo, int line) in spans)
            if (start <= otherTo && otherFrom <= end)
            {
                int shared = Math.Max(start, otherFrom);
                table.Fault(FaultRule.SpansOverlap, from, string.Join(", ", names.Select(name => name.Name)), line, IsoDate.Text(draft.Frame.Monday(shared)));
                return (first, last);
            }

        spans.Add((start, end, table.Line));
        return (first, last);
    }
}
