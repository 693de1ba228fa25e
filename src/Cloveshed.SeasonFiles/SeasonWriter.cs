using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Files;

namespace Cloveshed.SeasonFiles;

/// <summary>Writes a season as the files that read back to an equal season. Every file of its contract is written, also one with no rows.</summary>
public static class SeasonWriter
{
    /// <summary>The files by name, pure.</summary>
    public static IReadOnlyDictionary<string, ReadOnlyMemory<byte>> Render(Season season)
    {
        Dictionary<string, ReadOnlyMemory<byte>> files = new() { [SettingsFile.FileName] = SettingsFile.Write(season) };
        foreach (SeasonFile file in SeasonFileSet.Tables.Where(file => SeasonFileSet.IsOf(file, season)))
            files[file.Layout.Name] = file.Write(season);
        return files;
    }

    /// <summary>Into a folder, all files or none; files of other names in it stay.</summary>
    public static void Write(Season season, string folder) =>
        FolderSwap.Put(folder, [.. SeasonFileSet.Tables.Where(file => SeasonFileSet.IsOf(file, season)).Select(file => (file.Layout.Name, file.Write(season))), (SettingsFile.FileName, SettingsFile.Write(season))]);

    /// <summary>Files that are at hand as bytes, into a folder, all files or none, season.json last; files of other names in it stay.</summary>
    public static void Write(IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, string folder) =>
        FolderSwap.Put(folder, [.. files.OrderBy(file => file.Key == SettingsFile.FileName).ThenBy(file => file.Key, StringComparer.Ordinal)
            .Select(file => (file.Key, file.Value.ToArray()))]);
}
