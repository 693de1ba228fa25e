using Cloveshed.Check;

namespace Cloveshed.Web.Plan.Jobs;

/// <summary>
/// Holds an answer against its season by the independent check, which reads files and shares nothing with what planned. Checked are
/// the very bytes that the ledger is to keep.
/// </summary>
internal static class PlanTrial
{
    public static CheckResult Of(IReadOnlyDictionary<string, ReadOnlyMemory<byte>> season, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> answer)
    {
        DirectoryInfo folder = Directory.CreateTempSubdirectory("cloveshed-check-");
        try
        {
            return PlanCheck.Check(Written(folder, "season", season), Written(folder, "answer", answer));
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static string Written(DirectoryInfo folder, string name, IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files)
    {
        string into = folder.CreateSubdirectory(name).FullName;
        // Entries of other folders in the document (the season's settings) are not the answer's.
        foreach ((string file, ReadOnlyMemory<byte> bytes) in files.Where(file => !file.Key.Contains('/', StringComparison.Ordinal)))
        {
            File.WriteAllBytes(Path.Combine(into, file), bytes.Span);
        }

        return into;
    }
}
