using Cloveshed.Core.Sizes;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Weighing;

/// <summary>Weighed bulbs from a file: a scale's sample, or a sizer's counts.</summary>
/// <param name="Bulbs">All.</param>
/// <param name="Grams">Mean and spread of the weights as written.</param>
/// <param name="Counts">Of each tenth of a gram.</param>
/// <param name="Rows">The rows as written, where they are few enough to keep; else only those with a diameter.</param>
/// <param name="RowsAreAll">Whether Rows has every row.</param>
public sealed record WeighedBulbs(double Bulbs, Moments Grams, WeightHistogram Counts, IReadOnlyList<SampledBulb> Rows, bool RowsAreAll)
{
    // A few hundred single weights are fitted as they are; of more, tenths of a gram tell as much and are fewer.
    private const int SingleWeights = 600;

    /// <summary>For the fit: single weights of a small sample, else tenths of a gram.</summary>
    public WeightCells Cells =>
        RowsAreAll && Rows.Count <= SingleWeights
            ? WeightCells.OfWeights([.. Rows.Where(r => r.Count > 0).Select(r => r.WeightG)], [.. Rows.Where(r => r.Count > 0).Select(r => (double)r.Count)])
            : WeightCells.Of(Counts);
}

/// <summary>
/// weight_g[, diameter_mm][, count]. Plain rows of digits are taken at the speed of memory; at the first byte that is anything else
/// the file is read again by the careful reader, which can say what is wrong, so that both give the same bulbs.
/// </summary>
public static class WeightFile
{
    /// <summary>Rows kept as written; a sizer's file beyond them is its histogram.</summary>
    internal const int RowsKept = 20_000;

    private const double MostCount = 1e9;

    /// <summary>Reads a file.</summary>
    public static FileReading<WeighedBulbs> Read(string path, TextLanguage language) =>
        OneFile.Read(path, language, (bytes, faults) => Parse(path, bytes, faults));

    /// <summary>Parses bytes that are named as a person knows them.</summary>
    public static FileReading<WeighedBulbs> Parse(string name, ReadOnlyMemory<byte> bytes, TextLanguage language) =>
        OneFile.Parse(name, bytes, language, (all, faults) => Parse(name, all, faults));

    private static WeighedBulbs? Parse(string name, ReadOnlyMemory<byte> bytes, FaultList faults) =>
        PlainWeights.Take(bytes.Span) ?? Careful(name, bytes, faults);

    /// <summary>The careful reader alone.</summary>
    internal static WeighedBulbs? Careful(string name, ReadOnlyMemory<byte> bytes, FaultList faults)
    {
        FileLayout layout = new(name, needed: true, int.MaxValue);
        Column weight = layout.NeededNumber("weight_g", Bounds.BulbGrams), diameter = layout.Number("diameter_mm", Bounds.SomeMillimetres);
        Column count = layout.Number("count", new Bounds(0, MostCount));
        Table table = new(layout, bytes, faults);
        BulbTally tally = new();
        while (table.Next())
        {
            double? g = table.Cells.Number(weight), mm = table.Cells.Number(diameter);
            int? bulbs = table.Cells.Whole(count);
            if (table.RowSound)
                tally.Add(g!.Value, mm, bulbs ?? 1, table.Line);
        }

        OneFile.NeedRows(table, tally.Bulbs > 0 ? 1 : 0, "bulb", faults);
        return faults.Count == 0 ? tally.Close() : null;
    }
}

/// <summary>Takes bulbs row by row.</summary>
internal sealed class BulbTally
{
    private readonly WeightHistogram counts = new();
    private readonly List<SampledBulb> rows = [];
    private Moments grams;
    private int taken;

    public long Bulbs { get; private set; }

    public void Add(double g, double? mm, long bulbs, int line)
    {
        counts.AddTenths((int)Math.Round(g * 10, MidpointRounding.ToEven), bulbs);
        if (bulbs > 0)
            grams.Add(g, bulbs);
        Bulbs += bulbs;
        if (taken < WeightFile.RowsKept || mm is not null)
            rows.Add(new(g, mm, bulbs, line));
        taken++;
    }

    public WeighedBulbs Close() => new(Bulbs, grams, counts, rows, taken <= WeightFile.RowsKept);
}
