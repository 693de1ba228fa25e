using System.Text;
using System.Text.Json.Nodes;
using Cloveshed.SeasonFiles;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.Ledger;

/// <summary>What an import came to: all of the season's rows are facts now, or none.</summary>
/// <param name="Facts">How many facts were taken: one for season.json and one for each row; 0 where anything was refused.</param>
/// <param name="Already">The current season reads exactly so already: nothing had to be taken.</param>
/// <param name="Faults">What the season reader found wrong.</param>
/// <param name="FaultCount">All faults, also those that are not listed.</param>
/// <param name="Refusals">What the ledger refused though the files were sound.</param>
public sealed record ImportResult(
    int Facts, bool Already, IReadOnlyList<Fault> Faults, int FaultCount, IReadOnlyList<SeasonWarning> Warnings, IReadOnlyList<Refusal> Refusals)
{
    /// <summary>The ledger's current season is the one that was read.</summary>
    public bool Taken => FaultCount == 0 && Refusals.Count == 0;
}

/// <summary>A folder of season files into a ledger, row for row, as one batch of facts. It becomes the current season.</summary>
public static class SeasonImport
{
    /// <summary>Reads and takes a folder.</summary>
    public static ImportResult Import(ShedLedger ledger, string folder, FactOrigin origin, TextLanguage language = TextLanguage.English)
    {
        SeasonReading reading = SeasonReader.Read(folder, out IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, language);
        return Take(ledger, reading, files, origin, language);
    }

    /// <summary>Takes files by name, as uploaded.</summary>
    public static ImportResult Import(
        ShedLedger ledger, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, FactOrigin origin, TextLanguage language = TextLanguage.English) =>
        Take(ledger, SeasonReader.Parse(files, language), files, origin, language);

    private static ImportResult Take(
        ShedLedger ledger, SeasonReading reading, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, FactOrigin origin, TextLanguage language)
    {
        if (reading.Season is null)
            return new ImportResult(0, false, reading.Faults, reading.FaultCount, reading.Warnings, []);
        List<(SeasonTable Table, EnteredTable Rows)> tables =
            [.. SeasonTable.All.Where(table => files.ContainsKey(table.File)).Select(table => (table, table.Read(files[table.File])))];
        string settings = Settings(files[SeasonTable.SettingsName]);
        List<NewFact> batch = [Opened(reading, settings, tables, origin)];
        foreach ((SeasonTable table, EnteredTable entered) in tables)
            foreach (EnteredRow row in entered.Rows)
                batch.Add(Entered(table, row, origin));
        return ledger.Append(batch, null, language, now => IsCurrent(now, settings, tables)) switch
        {
            Appended.Accepted { Again: true } => new ImportResult(0, true, [], 0, reading.Warnings, []),
            Appended.Accepted taken => new ImportResult(taken.Facts.Count, false, [], 0, reading.Warnings, []),
            Appended.Refused refused => new ImportResult(0, false, [], 0, reading.Warnings, refused.Refusals),
            _ => throw new InvalidOperationException("An append has two answers."),
        };
    }

    private static NewFact Opened(SeasonReading reading, string settings, List<(SeasonTable Table, EnteredTable Rows)> tables, FactOrigin origin) =>
        origin.Make(FactKinds.SeasonOpened, new JsonObject
        {
            ["file"] = SeasonTable.SettingsName, ["text"] = settings, ["digest"] = reading.InputDigest, ["name"] = reading.Season!.Settings.Name,
            ["columns"] = new JsonObject(tables.Select(table => KeyValuePair.Create(
                table.Table.File,
                (JsonNode?)new JsonArray([.. table.Table.Columns.Where((_, ordinal) => table.Rows.HasColumn[ordinal]).Select(column => (JsonNode)column)])))),
        });

    private static NewFact Entered(SeasonTable table, EnteredRow row, FactOrigin origin)
    {
        JsonObject cells = [];
        for (int ordinal = 0; ordinal < row.Cells.Count; ordinal++)
            if (row.Cells[ordinal] is { } cell)
                cells[table.Columns[ordinal]] = cell;
        return origin.Make(FactKinds.Entered(table.File), new JsonObject { ["file"] = table.File, ["line"] = row.Line, ["cells"] = cells });
    }

    /// <summary>
    /// The current season, with whatever was changed in it since, reads as these files do: then an import of them would change nothing. One
    /// that was changed since is imported anew, because that is what an import of these files asks for.
    /// </summary>
    private static bool IsCurrent(ShedState now, string settings, List<(SeasonTable Table, EnteredTable Rows)> tables)
    {
        if (now.Rows is not { } rows || rows.Settings != settings || rows.Tables.Count != tables.Count)
            return false;
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> current = now.Files();
        return tables.TrueForAll(table => current.TryGetValue(table.Table.File, out ReadOnlyMemory<byte> bytes)
            && bytes.Span.SequenceEqual(table.Table.Write(table.Rows.HasColumn, table.Rows.Rows.Select(row => row.Cells))));
    }

    private static string Settings(ReadOnlyMemory<byte> bytes) =>
        Encoding.UTF8.GetString(bytes.Span.StartsWith("\uFEFF"u8) ? bytes.Span[3..] : bytes.Span);
}
