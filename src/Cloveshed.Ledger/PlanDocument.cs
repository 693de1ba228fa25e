using System.IO.Compression;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger.Facts;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Ledger;

/// <summary>
/// A plan's answer as one document: a zip of the answer's files, with the season.json that they are of, so that it can be read by itself.
/// The same answer packs to the same bytes.
/// </summary>
public sealed class PlanDocument
{
    private const string SettingsEntry = "season/" + SeasonTable.SettingsName;

    /// <summary>Before which a zip can name no time; every entry carries it, so that bytes depend on contents only.</summary>
    private static readonly DateTimeOffset NoTime = new(1980, 1, 1, 0, 0, 0, TimeSpan.Zero);

    private PlanDocument(string sha256, byte[] bytes) => (Sha256, Bytes) = (sha256, bytes);

    /// <summary>In lower-case hexadecimal: what plan.made names it by.</summary>
    public string Sha256 { get; }

    public byte[] Bytes { get; }

    /// <summary>An answer packed, with its digest.</summary>
    public static PlanDocument Of(PlanAnswer answer, Season season)
    {
        byte[] bytes = Pack(answer, season);
        return new PlanDocument(FactChain.Digest(bytes), bytes);
    }

    /// <summary>An answer packed.</summary>
    public static byte[] Pack(PlanAnswer answer, Season season)
    {
        using MemoryStream stream = new();
        using (ZipArchive zip = new(stream, ZipArchiveMode.Create, leaveOpen: true))
        {
            Add(zip, SettingsEntry, SeasonWriter.Render(season)[SeasonTable.SettingsName].Span);
            foreach ((string name, byte[] bytes) in AnswerWriter.Render(answer, season))
                Add(zip, name, bytes);
        }
        return stream.ToArray();
    }

    /// <summary>The answer's files by name.</summary>
    public static IReadOnlyDictionary<string, ReadOnlyMemory<byte>> Files(byte[] document)
    {
        Dictionary<string, ReadOnlyMemory<byte>> files = new(StringComparer.Ordinal);
        using ZipArchive zip = new(new MemoryStream(document, writable: false), ZipArchiveMode.Read);
        foreach (ZipArchiveEntry entry in zip.Entries)
        {
            using Stream content = entry.Open();
            using MemoryStream bytes = new();
            content.CopyTo(bytes);
            files[entry.FullName] = bytes.ToArray();
        }
        return files;
    }

    /// <summary>The answer. A document that holds none is a fault of the ledger, since only what was packed here is ever stored as one.</summary>
    public static PlanAnswer Read(byte[] document)
    {
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files = Files(document);
        SeasonSettings settings = files.TryGetValue(SettingsEntry, out ReadOnlyMemory<byte> text) && SeasonReader.Settings(text) is { } read
            ? read : throw new InvalidDataException($"The document holds no sound {SettingsEntry}.");
        AnswerReading reading = AnswerReader.Parse(files, settings);
        return reading.Answer ?? throw new InvalidDataException($"The document holds no sound answer: {reading.Faults[0]}");
    }

    private static void Add(ZipArchive zip, string name, ReadOnlySpan<byte> bytes)
    {
        ZipArchiveEntry entry = zip.CreateEntry(name, CompressionLevel.Fastest);
        entry.LastWriteTime = NoTime;
        using Stream content = entry.Open();
        content.Write(bytes);
    }
}
