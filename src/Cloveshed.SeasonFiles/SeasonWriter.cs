using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Files;

namespace Cloveshed.SeasonFiles;

/// <summary>Writes a season as the files that read back to an equal season. Every file of its contract is written, also one with no rows.</summary>
public static class SeasonWriter
{
    /// <summary>The files by name, pure. Throws where order lines were changed beside the terms that they come from: the files would lose the change.</summary>
    public static IReadOnlyDictionary<string, ReadOnlyMemory<byte>> Render(Season season)
    {
        Whole(season);
        Dictionary<string, ReadOnlyMemory<byte>> files = new() { [SettingsFile.FileName] = SettingsFile.Write(season) };
        foreach (SeasonFile file in SeasonFileSet.Tables.Where(file => SeasonFileSet.IsOf(file, season)))
            files[file.Layout.Name] = file.Write(season);
        return files;
    }

    /// <summary>Into a folder, all files or none; files of other names in it stay.</summary>
    public static void Write(Season season, string folder)
    {
        Whole(season);
        FolderSwap.Put(folder, [.. SeasonFileSet.Tables.Where(file => SeasonFileSet.IsOf(file, season)).Select(file => (file.Layout.Name, file.Write(season))), (SettingsFile.FileName, SettingsFile.Write(season))]);
    }

    private static void Whole(Season season)
    {
        if (season.Terms is { } terms && !season.Orders.SequenceEqual(TermsLowering.Of(season.Settings, terms).Orders))
            throw new ArgumentException("Order lines were changed beside the terms that they come from. Change the terms, or write the lines by contract 1 without them.", nameof(season));
    }

    /// <summary>Files that are at hand as bytes, into a folder, all files or none, season.json last; files of other names in it stay.</summary>
    public static void Write(IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files, string folder) =>
        FolderSwap.Put(folder, [.. files.OrderBy(file => file.Key == SettingsFile.FileName).ThenBy(file => file.Key, StringComparer.Ordinal)
            .Select(file => (file.Key, file.Value.ToArray()))]);
}
