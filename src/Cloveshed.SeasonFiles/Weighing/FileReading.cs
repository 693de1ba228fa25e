using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Weighing;

/// <summary>What reading one file of the line came to.</summary>
/// <param name="Value">Null when there is any fault.</param>
/// <param name="Faults">By line, at most 200.</param>
/// <param name="FaultCount">All faults, also those beyond.</param>
public sealed record FileReading<T>(T? Value, IReadOnlyList<Fault> Faults, int FaultCount, IReadOnlyList<SeasonWarning> Warnings) where T : class;

/// <summary>Gets one file's bytes and its table, and turns what was found into a reading; files are named as the user named them.</summary>
internal static class OneFile
{
    // An array's most bytes; ten million bulbs are about 60 MB.
    private const long LargestMegabytes = 2000;

    public static FileReading<T> Read<T>(string path, TextLanguage language, Func<ReadOnlyMemory<byte>, FaultList, T?> parse) where T : class
    {
        FaultList faults = new(language);
        T? value = Bytes(path, faults) is { } bytes ? parse(bytes, faults) : null;
        return Finish(path, value, faults);
    }

    public static FileReading<T> Parse<T>(string name, ReadOnlyMemory<byte> bytes, TextLanguage language, Func<ReadOnlyMemory<byte>, FaultList, T?> parse) where T : class
    {
        FaultList faults = new(language);
        return Finish(name, parse(bytes, faults), faults);
    }

    /// <summary>A table with no sound row is a fault unless another one says why.</summary>
    public static void NeedRows(Table table, int rows, string of, FaultList faults)
    {
        if (rows == 0 && faults.Count == 0)
            faults.Add(FaultRule.NoRows, table.Layout.Name, null, null, null, of);
    }

    private static FileReading<T> Finish<T>(string name, T? value, FaultList faults) where T : class =>
        new(faults.Count == 0 ? value : null, faults.InOrder([name]), faults.Count, faults.WarningsInOrder([name]));

    private static byte[]? Bytes(string path, FaultList faults)
    {
        try
        {
            FileInfo file = new(path);
            if (!file.Exists)
                faults.Add(FaultRule.FileNotThere, path, null, null, null);
            else if (file.Length > LargestMegabytes * 1_000_000)
                faults.Add(FaultRule.FileTooLarge, path, null, null, null, LargestMegabytes);
            else
                return File.ReadAllBytes(path);
        }
        catch (Exception problem) when (problem is IOException or UnauthorizedAccessException or ArgumentException)
        {
            faults.Add(FaultRule.FileUnreadable, path, null, null, null, problem.Message.ReplaceLineEndings(" "));
        }

        return null;
    }
}

/// <summary>--chart: a size chart, as sizes.csv of a season.</summary>
public static class ChartFile
{
    /// <summary>Small to large, at least one class.</summary>
    public static FileReading<IReadOnlyList<Core.Seasons.SizeClass>> Read(string path, TextLanguage language) =>
        OneFile.Read<IReadOnlyList<Core.Seasons.SizeClass>>(path, language, (bytes, faults) =>
        {
            SeasonDraft draft = new(faults);
            Table table = new(Files.SizesFile.Layout.Called(path), bytes, faults);
            Files.SizesFile.Read(table, draft);
            OneFile.NeedRows(table, draft.Sizes.Count, "class", faults);
            return draft.Sizes;
        });
}
