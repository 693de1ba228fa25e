using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;
using Cloveshed.Ledger.Appending;
using Cloveshed.Ledger.Facts;
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

/// <summary>A season's files, read and ready to be taken into a ledger.</summary>
public sealed class SeasonEntry
{
    private readonly IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files;
    private readonly TextLanguage language;

    private SeasonEntry(SeasonReading reading, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, TextLanguage language) =>
        (Reading, this.files, this.language) = (reading, files, language);

    /// <summary>What was read: with any fault there is no season in it, and nothing will be taken.</summary>
    public SeasonReading Reading { get; }

    /// <summary>Reads a folder.</summary>
    public static SeasonEntry Of(string folder, TextLanguage language = TextLanguage.English)
    {
        SeasonReading reading = SeasonReader.Read(folder, out IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, language);
        return new SeasonEntry(reading, files, language);
    }

    /// <summary>Reads files by name, as uploaded.</summary>
    public static SeasonEntry Of(IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, TextLanguage language = TextLanguage.English) =>
        new(SeasonReader.Parse(files, language), files, language);

    /// <summary>Into a ledger, as one batch of facts. It becomes the current season.</summary>
    public ImportResult Into(ShedLedger ledger, FactOrigin origin)
    {
        if (Reading.Season is null)
            return new ImportResult(0, false, Reading.Faults, Reading.FaultCount, Reading.Warnings, []);
        List<(SeasonTable Table, EnteredTable Rows)> tables =
            [.. SeasonTable.All.Where(table => files.ContainsKey(table.File)).Select(table => (table, table.Read(files[table.File])))];
        string settings = Settings(files[SeasonTable.SettingsName]);
        List<FormedFact> batch = [Opened(Reading, settings, tables, origin)];
        foreach ((SeasonTable table, EnteredTable entered) in tables)
            batch.AddRange(Entered(table, entered, origin));
        return ledger.Append(batch, ShedLedger.NoDocuments, language, now => IsCurrent(now, settings, tables)) switch
        {
            Appended.Accepted { Again: true } => new ImportResult(0, true, [], 0, Reading.Warnings, []),
            Appended.Accepted taken => new ImportResult(taken.Facts.Count, false, [], 0, Reading.Warnings, []),
            Appended.Refused refused => new ImportResult(0, false, [], 0, Reading.Warnings, refused.Refusals),
            _ => throw new InvalidOperationException("An append has two answers."),
        };
    }

    private static FormedFact Opened(SeasonReading reading, string settings, List<(SeasonTable Table, EnteredTable Rows)> tables, FactOrigin origin)
    {
        NewFact fact = origin.Make(FactKinds.SeasonOpened, new JsonObject
        {
            ["file"] = SeasonTable.SettingsName, ["text"] = settings, ["digest"] = reading.InputDigest, ["name"] = reading.Season!.Settings.Name,
            ["columns"] = new JsonObject(tables.Select(table => KeyValuePair.Create(
                table.Table.File,
                (JsonNode?)new JsonArray([.. table.Table.Columns.Where((_, ordinal) => table.Rows.HasColumn[ordinal]).Select(column => (JsonNode)column)])))),
        });
        return new FormedFact(fact.Id, null, FactForm.Stored(fact.Id, fact.Kind, origin, CanonicalJson.Of(fact.Body)!, null), Fresh: true);
    }

    /// <summary>One row, its body written in canonical form straight away: there are many.</summary>
    private static IEnumerable<FormedFact> Entered(SeasonTable table, EnteredTable entered, FactOrigin origin)
    {
        string kind = FactKinds.Entered(table.File);
        int[] inOrder = [.. Enumerable.Range(0, table.Columns.Count).Where(ordinal => entered.HasColumn[ordinal]).OrderBy(ordinal => table.Columns[ordinal], StringComparer.Ordinal)];
        StringBuilder body = new();
        foreach (EnteredRow row in entered.Rows)
        {
            body.Clear().Append("{\"cells\":{");
            foreach (int ordinal in inOrder)
            {
                if (ordinal != inOrder[0])
                    body.Append(',');
                CanonicalJson.AppendString(body, table.Columns[ordinal]);
                body.Append(':');
                CanonicalJson.AppendString(body, row.Cells[ordinal]!);
            }
            body.Append(CultureInfo.InvariantCulture, $"}},\"file\":\"{table.File}\",\"line\":{row.Line},\"v\":1}}");
            Guid id = origin.NewId();
            yield return new FormedFact(id, null, FactForm.Stored(id, kind, origin, body.ToString(), null), Fresh: true);
        }
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

/// <summary>A season's files into a ledger in one step, row for row.</summary>
public static class SeasonImport
{
    /// <summary>Reads and takes a folder.</summary>
    public static ImportResult Import(ShedLedger ledger, string folder, FactOrigin origin, TextLanguage language = TextLanguage.English) =>
        SeasonEntry.Of(folder, language).Into(ledger, origin);

    /// <summary>Reads and takes files by name.</summary>
    public static ImportResult Import(
        ShedLedger ledger, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, FactOrigin origin, TextLanguage language = TextLanguage.English) =>
        SeasonEntry.Of(files, language).Into(ledger, origin);
}
