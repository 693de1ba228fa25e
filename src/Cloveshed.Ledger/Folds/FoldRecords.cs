using System.Collections.Immutable;
using System.Text;
using System.Text.Json;
using System.Text.Json.Serialization;
using Cloveshed.Ledger.Facts;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Ledger.Folds;

/// <summary>One row of a read table as text: which table, its key there, and all else that it holds.</summary>
internal readonly record struct FoldRecord(string Table, string Key, string Content);

/// <summary>A state as the rows of the read tables, and back. Written, compared and read by the same texts.</summary>
internal static class FoldRecords
{
    private static readonly JsonSerializerOptions Decisions = new() { NumberHandling = JsonNumberHandling.AllowNamedFloatingPointLiterals };

    /// <summary>Cells as a JSON object by column, in the contract's order of columns.</summary>
    public static string Cells(RowCells cells)
    {
        StringBuilder text = new("{");
        for (int ordinal = 0; ordinal < cells.ByOrdinal.Count; ordinal++)
        {
            if (cells.ByOrdinal[ordinal] is not { } cell)
                continue;
            if (text.Length > 1)
                text.Append(',');
            CanonicalJson.AppendString(text, cells.Table.Columns[ordinal]);
            text.Append(':');
            CanonicalJson.AppendString(text, cell);
        }
        return text.Append('}').ToString();
    }

    public static RowCells Cells(SeasonTable table, string text)
    {
        Utf8JsonReader reader = new(Encoding.UTF8.GetBytes(text));
        string?[] cells = new string?[table.Columns.Count];
        reader.Read();
        while (reader.Read() && reader.TokenType == JsonTokenType.PropertyName)
        {
            int ordinal = table.OrdinalOf(reader.GetString()!);
            reader.Read();
            if (ordinal >= 0)
                cells[ordinal] = reader.GetString();
        }
        return new RowCells(table, cells);
    }

    public static string Columns(FileRows file) => string.Join(',', file.Table.Columns.Where((_, ordinal) => file.HasColumn[ordinal]));

    public static ImmutableArray<bool> Columns(SeasonTable table, string text)
    {
        string[] has = text.Split(',');
        return [.. table.Columns.Select(column => has.Contains(column))];
    }

    /// <summary>The rows of a table of decisions or of the line, in order.</summary>
    public static IEnumerable<(Guid Fact, string Record)> DecisionsOf(ShedState state, string table) => table switch
    {
        "holds" => state.Holds.Select(hold => (hold.Fact, JsonSerializer.Serialize(HoldRecord.Of(hold), Decisions))),
        "plans" => state.Plans.Select(plan => (plan.Fact, JsonSerializer.Serialize(new PlanRecord(plan, plan == state.Adopted), Decisions))),
        "plan_jobs" => state.Jobs.Select(job => (job.Fact, JsonSerializer.Serialize(job, Decisions))),
        "plan_ends" => state.Ended.Select(end => (end.Fact, JsonSerializer.Serialize(end, Decisions))),
        "sizer_counts" => state.SizerCounts.Select(count => (count.Fact, LineRecords.Text(count))),
        "sizer_settings" => state.SizerSettings.Select(setting => (setting.Fact, LineRecords.Text(setting))),
        "drum_settings" => state.DrumSettings.Select(setting => (setting.Fact, LineRecords.Text(setting))),
        _ => throw new ArgumentOutOfRangeException(nameof(table), table, "No table of records."),
    };

    public static RunHold Hold(string record) => JsonSerializer.Deserialize<HoldRecord>(record, Decisions)!.Hold();

    public static PlanRecord Plan(string record) => JsonSerializer.Deserialize<PlanRecord>(record, Decisions)!;

    public static PlanJob Job(string record) => JsonSerializer.Deserialize<PlanJob>(record, Decisions)!;

    public static PlanEnd End(string record) => JsonSerializer.Deserialize<PlanEnd>(record, Decisions)!;

    /// <summary>Every row that the read tables must hold for a state.</summary>
    public static IEnumerable<FoldRecord> Of(ShedState state)
    {
        if (state.Rows is { } rows)
        {
            yield return new("seasons", StoredFact.IdText(rows.Opened), rows.Settings);
            foreach (FileRows file in rows.Tables.Values)
            {
                yield return new("season_files", file.Table.File, Columns(file));
                for (int at = 0; at < file.Slots.Length; at++)
                    yield return OfRow(file.Table.File, at + 1, file.Slots[at]);
            }
        }
        foreach (string table in Store.LedgerTables.RecordTables)
            foreach ((int at, (Guid fact, string record)) in DecisionsOf(state, table).Index())
                yield return new(table, FormattableString.Invariant($"{at + 1}"), $"{StoredFact.IdText(fact)} {record}");
    }

    public static FoldRecord OfRow(string file, int row, SeasonRow? content) => OfRow(
        file, row, content is null ? null : Cells((RowCells)content.Cells), content is null ? null : StoredFact.IdText(content.Fact), content?.Seq ?? 0);

    public static FoldRecord OfRow(string file, int row, string? cells, string? fact, long seq) =>
        new("season_rows", FormattableString.Invariant($"{file} {row}"), FormattableString.Invariant($"{seq} {fact ?? "-"} {cells ?? "dropped"}"));

    internal sealed record PlanRecord(PlanEntry Plan, bool Adopted);

    /// <summary>A hold in plain words and texts, because ids and dates have no JSON of their own.</summary>
    internal sealed record HoldRecord(Guid Fact, bool Pinned, string Lot, string Line, string Week, double? Mass, string Unit)
    {
        public static HoldRecord Of(RunHold hold) => new(
            hold.Fact, hold.Pinned, hold.Lot.Text, hold.Line.Text, NodaTime.Text.LocalDatePattern.Iso.Format(hold.Week), hold.Mass,
            hold.Unit == Core.Seasons.MassUnit.Kilogram ? "kg" : "lb");

        public RunHold Hold() => new(
            Fact, Pinned, new Core.LotId(Lot), new Core.LineId(Line), NodaTime.Text.LocalDatePattern.Iso.Parse(Week).Value, Mass,
            Unit == "kg" ? Core.Seasons.MassUnit.Kilogram : Core.Seasons.MassUnit.Pound);
    }
}
