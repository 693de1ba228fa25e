using System.Buffers.Binary;
using System.IO.Compression;
using Microsoft.AspNetCore.Http;

namespace Cloveshed.Web.Setup;

/// <summary>Files on their way into an arrival: from a folder that a browser sends, from a zip, from a folder on this machine.</summary>
public static class Intake
{
    /// <summary>A zip's list of its files above this is no season's: 2,000 names take a tenth of it.</summary>
    private const uint MostDirectoryBytes = 2 * 1024 * 1024;

    /// <summary>
    /// What a browser sends of a folder: names come as paths within it. The season is the folder nearest to the top that holds
    /// season.json, or the topmost; what lies in other folders is left alone.
    /// </summary>
    public static async Task<ArrivalFault> OfForm(Arrival arrival, IReadOnlyList<IFormFile> files, CancellationToken stop)
    {
        if (files.Count == 0)
        {
            return ArrivalFault.NothingSent;
        }

        if (files is [{ } only] && Name(only.FileName).EndsWith(".zip", StringComparison.OrdinalIgnoreCase))
        {
            await using Stream zip = only.OpenReadStream();
            return await OfZip(arrival, zip, stop);
        }

        return await OfPaths(arrival, [.. files.Select(file => (file.FileName.Replace('\\', '/'), (Func<Stream>)file.OpenReadStream))], stop);
    }

    /// <summary>A zip: every name must stay within it, and what it unpacks to is counted while it is unpacked.</summary>
    public static async Task<ArrivalFault> OfZip(Arrival arrival, Stream stream, CancellationToken stop)
    {
        if (!HasSmallDirectory(stream))
        {
            return ArrivalFault.NotAZip;
        }

        try
        {
            using ZipArchive zip = new(stream, ZipArchiveMode.Read, leaveOpen: true);
            ZipArchiveEntry[] entries = [.. zip.Entries.Where(entry => entry.FullName.Length > 0 && entry.FullName[^1] is not ('/' or '\\'))];
            return entries.Any(entry => LeadsOut(entry.FullName)) ? ArrivalFault.LeadsOut
                : await OfPaths(arrival, [.. entries.Select(entry => (entry.FullName.Replace('\\', '/'), (Func<Stream>)entry.Open))], stop);
        }
        catch (InvalidDataException)
        {
            return ArrivalFault.NotAZip;
        }
    }

    /// <summary>A folder on this machine, as it is now: what changes in it later is not seen.</summary>
    public static async Task<ArrivalFault> OfFolder(Arrival arrival, string folder, CancellationToken stop)
    {
        if (!Path.IsPathFullyQualified(folder) || !Directory.Exists(folder))
        {
            return ArrivalFault.NoFolder;
        }

        try
        {
            return await OfPaths(arrival, [.. Directory.EnumerateFiles(folder).Take(Arrival.MostFiles + 1).Select(path => (Path.GetFileName(path), (Func<Stream>)(() => File.OpenRead(path))))], stop);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException)
        {
            return ArrivalFault.CannotRead;
        }
    }

    private static async Task<ArrivalFault> OfPaths(Arrival arrival, IReadOnlyList<(string Path, Func<Stream> Open)> files, CancellationToken stop)
    {
        if (files.Count == 0)
        {
            return ArrivalFault.NothingSent;
        }

        if (files.Count > Arrival.MostFiles)
        {
            return ArrivalFault.TooMany;
        }

        string home = files.Where(file => Name(file.Path) == SeasonFiles.SeasonTable.SettingsName).DefaultIfEmpty(files.MinBy(file => Depth(file.Path))).Select(file => Folder(file.Path)).MinBy(Depth)!;
        foreach ((string path, Func<Stream> open) in files.Where(file => Folder(file.Path) == home))
        {
            await using Stream content = open();
            if (await arrival.Take(Name(path), content, stop) is not ArrivalFault.None and var fault)
            {
                return fault;
            }
        }

        return ArrivalFault.None;
    }

    /// <summary>
    /// The end record of a zip (PKWARE APPNOTE 6.3, 4.3.16) says how large its list of files is. A list of millions would fill the
    /// memory before the first file is looked at.
    /// </summary>
    private static bool HasSmallDirectory(Stream zip)
    {
        const int EndRecord = 22, LongestComment = 65535;
        byte[] tail = new byte[(int)Math.Min(zip.Length, EndRecord + LongestComment)];
        zip.Seek(-tail.Length, SeekOrigin.End);
        zip.ReadExactly(tail);
        zip.Seek(0, SeekOrigin.Begin);
        int at = tail.AsSpan().LastIndexOf("PK\x05\x06"u8);
        return at >= 0 && at + EndRecord <= tail.Length
            && BinaryPrimitives.ReadUInt16LittleEndian(tail.AsSpan(at + 10)) <= Arrival.MostFiles && BinaryPrimitives.ReadUInt32LittleEndian(tail.AsSpan(at + 12)) <= MostDirectoryBytes;
    }

    private static bool LeadsOut(string path) =>
        path.Any(char.IsControl) || path[0] is '/' or '\\' || path.Contains(':', StringComparison.Ordinal) || path.Split('/', '\\').Contains("..");

    private static string Name(string path) => path[(path.LastIndexOf('/') + 1)..];

    private static string Folder(string path) => path[..(path.LastIndexOf('/') + 1)];

    private static int Depth(string path) => path.Count(letter => letter == '/');
}
