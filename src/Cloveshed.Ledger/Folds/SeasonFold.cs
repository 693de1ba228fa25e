using System.Collections.Immutable;
using System.Runtime.InteropServices;
using Cloveshed.Ledger.Facts;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Ledger.Folds;

/// <summary>
/// The current season while facts are folded. A row's number is the ordinal of its entry among all entries of its file since the season was
/// opened, counted or not, so that it is the same number as of every day.
/// </summary>
internal sealed class SeasonFold
{
    private readonly Dictionary<string, FileDraft> files = new(StringComparer.Ordinal);
    private SeasonRows? began;
    private Guid? inForce, lastOpened;
    private string settings = "";

    public SeasonFold(SeasonRows? rows)
    {
        began = rows;
        inForce = lastOpened = rows?.Opened;
        settings = rows?.Settings ?? "";
    }

    /// <summary>Anything of the season changed since the start.</summary>
    public bool Changed { get; private set; }

    /// <summary>A season was opened since the start: everything before it is gone.</summary>
    public bool Opened { get; private set; }

    /// <summary>Rows that were set or dropped since the start, or since the season was opened.</summary>
    public HashSet<(string File, int Row)> Touched { get; } = [];

    public SeasonRow? Find(string file, int row)
    {
        if (files.TryGetValue(file, out FileDraft? draft))
            return row >= 1 && row <= draft.Slots.Count ? draft.Slots[row - 1] : null;
        return began?.Find(file, row);
    }

    public bool IsOpen => inForce is not null;

    /// <summary>The season that rows belong to now, though it may not count as of the day asked for.</summary>
    private bool Counts(bool counted) => counted && inForce is not null && inForce == lastOpened;

    public void Open(Guid id, Body body, bool counted)
    {
        lastOpened = id;
        if (!counted)
            return;
        began = null;
        files.Clear();
        Touched.Clear();
        inForce = id;
        Opened = Changed = true;
        settings = body.Text("text");
        foreach ((SeasonTable table, bool[] has) in body.Columns())
            files[table.File] = new FileDraft(table, has, []);
    }

    public void Change(Body body, bool counted)
    {
        if (!Counts(counted))
            return;
        settings = body.Text("text");
        Changed = true;
    }

    public void Step(RowKind kind, Guid id, long seq, Body body, bool counted)
    {
        if (kind.Step == RowStep.Entered)
            Enter(kind.Table, id, seq, body, counted);
        else if (Counts(counted))
            Replace(kind, id, seq, body);
    }

    public SeasonRows? Finished()
    {
        if (!Changed)
            return began;
        if (inForce is not { } opened)
            return null;
        ImmutableDictionary<string, FileRows> tables = (began?.Tables ?? ImmutableDictionary<string, FileRows>.Empty)
            .SetItems(files.Values.Select(draft => KeyValuePair.Create(draft.Table.File, draft.Finished())));
        return new SeasonRows(opened, settings, tables);
    }

    private void Enter(SeasonTable table, Guid id, long seq, Body body, bool counted)
    {
        if (inForce is null || inForce != lastOpened)
            return;
        FileDraft draft = Draft(table);
        if (!counted)
        {
            draft.Slots.Add(null); // its number is taken all the same
            return;
        }
        RowCells cells = body.Cells(table);
        draft.Slots.Add(new SeasonRow(table.File, draft.Slots.Count + 1, cells, id, seq));
        draft.Notice(cells);
        Touched.Add((table.File, draft.Slots.Count));
        Changed = true;
    }

    private void Replace(RowKind kind, Guid id, long seq, Body body)
    {
        long row = body.Whole("row");
        FileDraft draft = Draft(kind.Table);
        if (row < 1 || row > draft.Slots.Count || draft.Slots[(int)row - 1] is null)
            return; // not entered yet as of the day asked for; an append has refused it otherwise
        RowCells? cells = kind.Step == RowStep.Dropped ? null : body.Cells(kind.Table);
        draft.Slots[(int)row - 1] = cells is null ? null : new SeasonRow(kind.Table.File, (int)row, cells, id, seq);
        if (cells is not null)
            draft.Notice(cells);
        Touched.Add((kind.Table.File, (int)row));
        Changed = true;
    }

    private FileDraft Draft(SeasonTable table)
    {
        if (files.TryGetValue(table.File, out FileDraft? draft))
            return draft;
        draft = began is not null && began.Tables.TryGetValue(table.File, out FileRows? rows)
            ? new FileDraft(table, [.. rows.HasColumn], [.. rows.Slots])
            : new FileDraft(table, new bool[table.Columns.Count], []);
        files.Add(table.File, draft);
        return draft;
    }

    private sealed record FileDraft(SeasonTable Table, bool[] HasColumn, List<SeasonRow?> Slots)
    {
        /// <summary>A column that some row has is a column of the file.</summary>
        public void Notice(RowCells cells)
        {
            for (int ordinal = 0; ordinal < HasColumn.Length; ordinal++)
                HasColumn[ordinal] |= cells.ByOrdinal[ordinal] is not null;
        }

        public FileRows Finished() => new(Table, [.. HasColumn], ImmutableArray.Create(CollectionsMarshal.AsSpan(Slots)));
    }
}
