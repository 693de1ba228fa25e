using System.Security.Cryptography;
using System.Text;
using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Files;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles;

/// <summary>
/// Reads a season's files: everything that is wrong is found in one go, and only a season without fault comes out.
/// <see cref="Parse"/> is pure over bytes; <see cref="Read"/> is the shell that gets them from a folder.
/// </summary>
public static class SeasonReader
{
    /// <summary>Files above this are refused unread: a season's largest is a few MB, and one of 200 MB still fits.</summary>
    public const int LargestFileMegabytes = 512;

    /// <summary>Reads a folder. Files that are not a season's are warned about and left alone.</summary>
    public static SeasonReading Read(string folder, TextLanguage language = TextLanguage.English) => Read(folder, out _, language);

    /// <summary>Reads a folder, and gives the bytes that the answer is of: a file may change while it is read.</summary>
    public static SeasonReading Read(string folder, out IReadOnlyDictionary<string, ReadOnlyMemory<byte>> read, TextLanguage language = TextLanguage.English)
    {
        FaultList faults = new(language);
        Dictionary<string, ReadOnlyMemory<byte>> files = [];
        if (!Directory.Exists(folder))
            faults.Add(FaultRule.FolderMissing, folder, null, null, null);
        else
            ReadFolder(folder, files, faults);
        read = files;
        return Finish(files, faults);
    }

    /// <summary>season.json alone; null where it has a fault.</summary>
    public static SeasonSettings? Settings(ReadOnlyMemory<byte> text)
    {
        SeasonDraft draft = new(new FaultList(TextLanguage.English));
        SettingsFile.Read(text, draft);
        return draft.Frame.Settings;
    }

    /// <summary>Parses files by name; names that are not a season's are warned about.</summary>
    public static SeasonReading Parse(IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, TextLanguage language = TextLanguage.English)
    {
        FaultList faults = new(language);
        Dictionary<string, ReadOnlyMemory<byte>> known = [];
        foreach ((string name, ReadOnlyMemory<byte> bytes) in files)
            if (SeasonFileSet.Names.Contains(name))
                known[name] = bytes;
            else
                faults.Warn(WarningRule.UnknownFile, name, null, null);
        ReportMissing([.. files.Keys], ".", known.Keys, faults);
        return Finish(known, faults);
    }

    private static void ReadFolder(string folder, Dictionary<string, ReadOnlyMemory<byte>> files, FaultList faults)
    {
        HashSet<string> unreadable = [];
        // Hidden files are what systems leave in folders; no person put them there.
        string[] names =
            [.. Directory.EnumerateFiles(folder).Select(path => Path.GetFileName(path)).Where(name => name[0] != '.').Order(StringComparer.Ordinal)];
        foreach (string name in names)
        {
            if (!SeasonFileSet.Names.Contains(name))
            {
                faults.Warn(WarningRule.UnknownFile, name, null, null);
                continue;
            }
            string path = Path.Combine(folder, name);
            try
            {
                if (new FileInfo(path).Length > LargestFileMegabytes * 1024L * 1024L)
                {
                    faults.Add(FaultRule.FileTooLarge, name, null, null, null, LargestFileMegabytes);
                    unreadable.Add(name);
                }
                else
                    files[name] = File.ReadAllBytes(path);
            }
            catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
            {
                faults.Add(FaultRule.FileUnreadable, name, null, null, null, problem.Message.ReplaceLineEndings(" "));
                unreadable.Add(name);
            }
        }
        ReportMissing(names, folder, [.. files.Keys, .. unreadable], faults);
    }

    private static void ReportMissing(string[] present, string folder, IReadOnlyCollection<string> known, FaultList faults)
    {
        if (known.Count == 0)
        {
            faults.Add(FaultRule.FolderEmpty, folder, null, null, null);
            return;
        }
        foreach (string name in SeasonFileSet.Names.Where(name => SeasonFileSet.IsNeeded(name) && !known.Contains(name)))
        {
            string? almost = present.FirstOrDefault(other => string.Equals(other, name, StringComparison.OrdinalIgnoreCase));
            faults.Add(FaultRule.FileMissing, name, null, null, null, almost is null ? "" : $" ({almost} → {name})");
        }
    }

    private static SeasonReading Finish(Dictionary<string, ReadOnlyMemory<byte>> files, FaultList faults)
    {
        SeasonDraft draft = new(faults);
        if (files.TryGetValue(SettingsFile.FileName, out ReadOnlyMemory<byte> settings))
            SettingsFile.Read(settings, draft);
        if (!files.ContainsKey(CloveGradesFile.Layout.Name))
            draft.GradeNames.Complete = true; // no file: no grades
        draft.PriceListNames.Complete = !files.ContainsKey(PriceListsFile.Layout.Name);
        draft.DestinationNames.Complete = !files.ContainsKey(FreightFile.Layout.Name);
        foreach (SeasonFile file in SeasonFileSet.Tables)
            if (files.TryGetValue(file.Layout.Name, out ReadOnlyMemory<byte> bytes))
            {
                if (file.Layout.Contract <= (draft.Frame.Contract ?? file.Layout.Contract))
                    file.Read(new Table(file.Layout, bytes, faults), draft);
                else if (TermsChecks.HasRows(bytes))
                    faults.Add(FaultRule.NeedsContract, file.Layout.Name, null, null, null, file.Layout.Contract);
            }
        LotChecks.Check(draft);
        LotChecks.LeaveOutLateOnes(draft);
        TermsChecks.Lower(draft);
        return new SeasonReading(
            faults.Count == 0 ? Assemble(draft) : null, faults.InOrder(SeasonFileSet.Names), faults.Count,
            faults.WarningsInOrder(SeasonFileSet.Names), Digest(files));
    }

    private static Season Assemble(SeasonDraft draft) => new(
        draft.Frame.Settings!, draft.Sizes, draft.Varieties, draft.Places, draft.PlaceWeeks, [.. draft.Lots.Select(lot => lot.Row)],
        [.. draft.Samples.Select(sample => sample.Bulb)], draft.Yields, draft.Lines, draft.LineWeeks, draft.People, draft.Products,
        draft.CloveGrades, draft.Stock, draft.SealedRooms, draft.Lowered?.Orders ?? draft.Orders, draft.Market, draft.SeedNeeds, draft.AsIsPrices)
    {
        Setups = draft.Setups, Shifts = draft.Shifts, Terms = draft.Lowered is null ? null : draft.Terms, PriceOrigins = draft.Lowered?.Origins ?? new Dictionary<(OrderId, string), PriceOrigin>(),
    };

    /// <summary>Of each file in ordinal order of names: name, a zero byte, the length as eight bytes, the bytes.</summary>
    private static string Digest(Dictionary<string, ReadOnlyMemory<byte>> files)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Span<byte> length = stackalloc byte[8];
        foreach ((string name, ReadOnlyMemory<byte> bytes) in files.OrderBy(file => file.Key, StringComparer.Ordinal))
        {
            hash.AppendData(Encoding.UTF8.GetBytes(name + "\0"));
            System.Buffers.Binary.BinaryPrimitives.WriteInt64BigEndian(length, bytes.Length);
            hash.AppendData(length);
            hash.AppendData(bytes.Span);
        }
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }
}
