using System.Security.Cryptography;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Web.Setup;

/// <summary>Why files were not even looked at.</summary>
public enum ArrivalFault { None, NothingSent, TooLarge, TooMany, NotAZip, LeadsOut, Twice, NoFolder, NotHere, CannotRead }

/// <summary>
/// A season's files that came and wait for a yes: on the disk, in a folder of their own, and only those that a season has. The
/// names of the others are kept, to be warned about.
/// </summary>
public sealed class Arrival
{
    /// <summary>Bytes of all files together, unpacked: a season of a large shed is a few MB; this is fifty times that.</summary>
    public const long MostBytes = 200L * 1024 * 1024;

    /// <summary>Files that are looked at: a season has nineteen, and folders hold what else lies around.</summary>
    public const int MostFiles = 2000;

    /// <summary>Names of other files that are told.</summary>
    private const int MostOthers = 50;

    private static readonly HashSet<string> Known = [SeasonTable.SettingsName, .. SeasonTable.All.Select(table => table.File)];

    private readonly string folder;
    private readonly HashSet<string> taken = new(StringComparer.Ordinal);
    private readonly List<string> others = [];
    private long bytes;

    internal Arrival(string folder, DateTimeOffset at)
    {
        this.folder = folder;
        At = at;
        Directory.CreateDirectory(folder);
    }

    /// <summary>Names it in addresses; not to be guessed.</summary>
    public string Token { get; } = Convert.ToHexStringLower(RandomNumberGenerator.GetBytes(12));

    public DateTimeOffset At { get; }

    /// <summary>Files of other names that lay with them.</summary>
    public IReadOnlyList<string> Others => others;

    /// <summary>Whether a file of this name is one of a season's.</summary>
    public static bool IsOfSeason(string name) => Known.Contains(name);

    /// <summary>Takes one file: a season's is written down, of another the name is kept. What a file says of its own size is not believed.</summary>
    public async Task<ArrivalFault> Take(string name, Stream content, CancellationToken stop)
    {
        if (!Known.Contains(name))
        {
            if (others.Count < MostOthers && name.Length is > 0 and < 200 && name[0] != '.' && !others.Contains(name))
            {
                others.Add(name);
            }

            return ArrivalFault.None;
        }

        if (!taken.Add(name))
        {
            return ArrivalFault.Twice;
        }

        await using FileStream file = new(Path.Combine(folder, name), FileMode.CreateNew, FileAccess.Write);
        byte[] part = new byte[81920];
        for (int read = await content.ReadAsync(part, stop); read > 0; read = await content.ReadAsync(part, stop))
        {
            bytes += read;
            if (bytes > MostBytes)
            {
                return ArrivalFault.TooLarge;
            }

            await file.WriteAsync(part.AsMemory(0, read), stop);
        }

        return ArrivalFault.None;
    }

    /// <summary>The files, and empty ones for the others' names, as the season reader takes them.</summary>
    public IReadOnlyDictionary<string, ReadOnlyMemory<byte>> Files()
    {
        Dictionary<string, ReadOnlyMemory<byte>> files = taken.ToDictionary(name => name, name => new ReadOnlyMemory<byte>(File.ReadAllBytes(Path.Combine(folder, name))));
        foreach (string name in others)
        {
            files.TryAdd(name, default);
        }

        return files;
    }

    internal void Remove() => Directory.Delete(folder, recursive: true);
}
