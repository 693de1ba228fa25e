using Cloveshed.SeasonFiles;

namespace Cloveshed.Ledger;

/// <summary>The current season out of a ledger: row for row and cell for cell what was entered, with what was changed since.</summary>
public static class SeasonExport
{
    /// <summary>
    /// Writes the files into a folder, all or none; files of other names in it stay, as does a season's file that this season has not:
    /// a folder that holds one is refused, since it would then read as another season.
    /// </summary>
    /// <returns>How many facts are in force in it: season.json and each row.</returns>
    public static int Export(ShedState state, string folder)
    {
        if (state.Rows is not { } rows)
            throw new InvalidOperationException("No season is open.");
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files = state.Files();
        SeasonWriter.Write(files, folder);
        return rows.Count + 1;
    }

    /// <summary>A season's file in the folder that this season has not; null where there is none.</summary>
    public static string? Stray(ShedState state, string folder) =>
        SeasonTable.All.Select(table => table.File).FirstOrDefault(file => !state.Files().ContainsKey(file) && File.Exists(Path.Combine(folder, file)));
}
