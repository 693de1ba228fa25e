using System.Text;
using Cloveshed.Core.Drum;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Weighing;
using CsCheck;

namespace Cloveshed.SeasonFiles.Tests.Weighing;

/// <summary>Files of the line: weights, charts, prices, cloves, splits. Each rule of theirs is provoked once.</summary>
public sealed class WeighingTests : IDisposable
{
    private static readonly SizeClass[] Chart = [new(new("S"), null, 30, 45), new(new("L"), null, 45, null)];
    private readonly string folder = Directory.CreateTempSubdirectory("cloveshed-weighing-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    private string Put(string text)
    {
        string path = Path.Combine(folder, "file.csv");
        File.WriteAllText(path, text);
        return path;
    }

    /// <summary>Whatever the file, the fast reader and the careful one give the same bulbs, or the careful one speaks.</summary>
    [Fact]
    public void Fast_and_careful_reading_give_the_same_bulbs()
    {
        Gen<string> cell = Gen.OneOf(
            Gen.Int[0, 6000].Select(n => n.ToString(System.Globalization.CultureInfo.InvariantCulture)), Gen.Double[0.01, 300].Select(d => d.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture)),
            Gen.Int[0, 9].Select(k => new[] { "", " 5", "-1", "1e2", "\"50\"", "5.", ".5", "1,5", "x", "0.0" }[k]));
        Gen<string> header = Gen.Int[0, 4].Select(k => new[] { "weight_g", "weight_g,diameter_mm", "count,weight_g", "diameter_mm,count,weight_g", "weight_g,note" }[k]);
        Gen.Select(header, cell.Array[0, 12], Gen.Bool, Gen.Bool).Sample((head, cells, crlf, closed) =>
        {
            int width = head.Split(',').Length;
            string end = crlf ? "\r\n" : "\n", text = head + end + string.Join(end, cells.Chunk(width).Select(row => string.Join(',', row))) + (closed ? end : "");
            ReadOnlyMemory<byte> bytes = Encoding.UTF8.GetBytes(text);
            FaultList faults = new(TextLanguage.English);
            WeighedBulbs? careful = WeightFile.Careful("f", bytes, faults), fast = PlainWeights.Take(bytes.Span);
            if (fast is null)
                return;
            Assert.NotNull(careful);
            Assert.Equal(careful.Bulbs, fast.Bulbs);
            Assert.Equal(careful.Grams, fast.Grams);
            Assert.Equal(careful.Rows, fast.Rows);
            Assert.Equal(careful.Counts.Bulbs, fast.Counts.Bulbs);
        }, iter: 3000);
    }

    [Fact]
    public void A_plain_file_is_read_by_the_fast_reader()
    {
        foreach (string text in new[] { "weight_g\n50.1\n49\n", "\uFEFFweight_g,count\r\n50.1,3\r\n49,\r\n", "diameter_mm,weight_g\n46.1,50\n,49\n\n", "weight_g\n50.1" })
            Assert.NotNull(PlainWeights.Take(Encoding.UTF8.GetBytes(text)));
    }

    [Fact]
    public void Counts_and_rows_beyond_those_kept_are_in_the_histogram()
    {
        StringBuilder text = new("weight_g,count\n");
        for (int k = 0; k < WeightFile.RowsKept + 5; k++)
            text.Append("50.04,2\n");
        WeighedBulbs bulbs = WeightFile.Read(Put(text.ToString()), TextLanguage.English).Value!;
        Assert.Equal(2 * (WeightFile.RowsKept + 5), bulbs.Bulbs);
        Assert.False(bulbs.RowsAreAll);
        Assert.Equal(bulbs.Bulbs, bulbs.Counts[500]);
        Assert.Equal(50.04, bulbs.Grams.Mean, 1e-9);
    }

    [Theory]
    [InlineData(FaultRule.NoRows, "weight_g\n", null, null)]
    [InlineData(FaultRule.Range, "weight_g\n50\n5001\n", 3, "weight_g")]
    [InlineData(FaultRule.FieldCount, "weight_g,diameter_mm\n50,40,3,9\n", 2, null)]
    [InlineData(FaultRule.Separator, "weight_g;diameter_mm\n50;40\n", 1, null)]
    public void Weights_at_fault(FaultRule rule, string text, int? line, string? column) => Same(rule, line, column, WeightFile.Read(Put(text), TextLanguage.English));

    [Fact]
    public void A_file_that_is_not_there() => Same(FaultRule.FileNotThere, null, null, WeightFile.Read(Path.Combine(folder, "none.csv"), TextLanguage.English));

    [Theory]
    [InlineData(FaultRule.NoRows, "class,min_mm\n", null, null)]
    [InlineData(FaultRule.SizeGap, "class,min_mm,max_mm\nS,30,40\nL,41,\n", 3, "min_mm")]
    [InlineData(FaultRule.SizeOpenEnd, "class,min_mm,max_mm\nS,30,\nL,41,50\n", 2, "max_mm")]
    public void Charts_at_fault(FaultRule rule, string text, int? line, string? column)
    {
        FileReading<IReadOnlyList<SizeClass>> reading = ChartFile.Read(Put(text), TextLanguage.English);
        Same(rule, line, column, reading);
        Assert.EndsWith("file.csv", reading.Faults[0].File, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(FaultRule.OneColumnOf, "class\nS\n", 1, null)]
    [InlineData(FaultRule.OneCellOf, "class,price\nS,\nL,1\n", 2, "price")]
    [InlineData(FaultRule.PriceMissing, "class,price_per_kg\nS,1\n", null, "class")]
    [InlineData(FaultRule.Unknown, "class,price_per_kg\nS,1\nL,2\nX,3\n", 4, "class")]
    [InlineData(FaultRule.KeyTwice, "class,price_per_kg\nS,1\nL,2\nL,3\n", 4, "class")]
    public void Prices_at_fault(FaultRule rule, string text, int? line, string? column) => Same(rule, line, column, PriceFile.Read(Put(text), Chart, TextLanguage.English));

    [Fact]
    public void Prices_come_in_the_order_of_the_chart() =>
        Assert.Equal([1.5, 2.5], PriceFile.Read(Put("price,class\n2.5,L\n1.5,S\n"), Chart, TextLanguage.English).Value!);

    [Theory]
    [InlineData(FaultRule.OneColumnOf, "count\n5\n", 1, null)]
    [InlineData(FaultRule.OneCellOf, "width_mm,weight_g\n,\"\"\n10,2\n", 2, "weight_g")]
    [InlineData(FaultRule.NoRows, "width_mm\n", null, null)]
    public void Cloves_at_fault(FaultRule rule, string text, int? line, string? column)
    {
        // A row of empty cells alone is blank, not a clove without figures; the second row shows that the file goes on.
        FileReading<IReadOnlyList<SampledClove>> reading = CloveFile.Read(Put(rule == FaultRule.OneCellOf ? "width_mm,weight_g,count\n,,4\n10,2,1\n" : text), TextLanguage.English);
        Same(rule, line, column, reading);
    }

    [Theory]
    [InlineData(FaultRule.OneColumnOf, "grade\na\n", 1, null)]
    [InlineData(FaultRule.SplitByBoth, "grade,min_mm,share\na,8,\nb,,0.5\n", 3, "min_mm")]
    [InlineData(FaultRule.SplitSum, "grade,share\na,0.6\nb,0.6\n", 3, "share")]
    [InlineData(FaultRule.GradesOverlap, "grade,min_mm,max_mm\na,8,12\nb,10,14\n", 3, "min_mm")]
    [InlineData(FaultRule.MinNotBelowMax, "grade,min_mm,max_mm\na,12,8\n", 2, "max_mm")]
    [InlineData(FaultRule.NoRows, "grade,share\n", null, null)]
    public void Splits_at_fault(FaultRule rule, string text, int? line, string? column) => Same(rule, line, column, SplitFile.Read(Put(text), TextLanguage.English));

    [Fact]
    public void Grades_by_width_stand_small_to_large_and_end_where_the_next_begins() =>
        Assert.Equal(
            [new GradeWanted("a", 8, 12, null, 0.1), new GradeWanted("b", 12, null, null, null)],
            SplitFile.Read(Put("grade,min_mm,contamination\nb,12,\na,8,0.1\n"), TextLanguage.English).Value!);

    private static void Same<T>(FaultRule rule, int? line, string? column, FileReading<T> reading) where T : class
    {
        Assert.Null(reading.Value);
        Fault fault = reading.Faults[0];
        Assert.Equal((rule, line, column), (fault.Rule, fault.Line, fault.Column));
        Assert.EndsWith(".", fault.Remedy, StringComparison.Ordinal);
        Assert.DoesNotContain("{0}", fault.ToString(), StringComparison.Ordinal);
        (string expected, string remedy) = FaultTexts.Of(rule, TextLanguage.Spanish);
        Assert.NotEqual(FaultTexts.Of(rule, TextLanguage.English), (expected, remedy));
    }
}
