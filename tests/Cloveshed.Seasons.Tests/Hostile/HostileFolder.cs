using System.Text;

namespace Cloveshed.Seasons.Tests.Hostile;

/// <summary>
/// A season's files with something done to them. Sound holds every file of the contract, each with rows enough to break one;
/// its lines are counted from 1, the header.
/// </summary>
internal sealed class HostileFolder
{
    private readonly Dictionary<string, byte[]> _files;

    private HostileFolder(Dictionary<string, byte[]> files) => _files = files;

    public static HostileFolder Sound { get; } = new(SoundTexts.All.ToDictionary(f => f.Key, f => Encoding.UTF8.GetBytes(f.Value), StringComparer.Ordinal));

    /// <summary>File name to bytes.</summary>
    public IReadOnlyDictionary<string, ReadOnlyMemory<byte>> Files => _files.ToDictionary(f => f.Key, f => (ReadOnlyMemory<byte>)f.Value, StringComparer.Ordinal);

    /// <summary>The file with the first occurrence of a text replaced; a text that is not there is a mistake of the test.</summary>
    public HostileFolder With(string file, string old, string now)
    {
        string text = Encoding.UTF8.GetString(_files[file]);
        int at = text.IndexOf(old, StringComparison.Ordinal);
        if (at < 0) throw new ArgumentException($"{file} does not hold {old}", nameof(old));
        return Whole(file, text[..at] + now + text[(at + old.Length)..]);
    }

    /// <summary>The file with a row more at its end.</summary>
    public HostileFolder Row(string file, string row) => Whole(file, Encoding.UTF8.GetString(_files[file]) + row + "\n");

    /// <summary>The file with this text.</summary>
    public HostileFolder Whole(string file, string text) => Bytes(file, Encoding.UTF8.GetBytes(text));

    /// <summary>The file with these bytes.</summary>
    public HostileFolder Bytes(string file, byte[] bytes) => new(new(_files, StringComparer.Ordinal) { [file] = bytes });

    /// <summary>Every file's text changed alike.</summary>
    public HostileFolder Each(Func<string, string> change) =>
        new(_files.ToDictionary(f => f.Key, f => Encoding.UTF8.GetBytes(change(Encoding.UTF8.GetString(f.Value))), StringComparer.Ordinal));

    /// <summary>Without the file.</summary>
    public HostileFolder Without(string file) => new(_files.Where(f => f.Key != file).ToDictionary(StringComparer.Ordinal));
}
