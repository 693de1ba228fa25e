using System.Text.Json;

namespace Cloveshed.App.Tests;

/// <summary>cuts and holes on the command line; the searches themselves are tested with the core.</summary>
public sealed class CutsAndHolesTests : IDisposable
{
    private const string Three = "class,min_mm,max_mm\nSmall,37,47\nMedium,47,57\nLarge,57,\n";
    private readonly Trial trial = new();

    public void Dispose() => trial.Dispose();

    private JsonElement Answer(params string[] line)
    {
        Ended ended = trial.Run([.. line, "--json"]);
        Assert.Equal(0, ended.Code);
        return JsonDocument.Parse(ended.Output).RootElement;
    }

    private static string[] Texts(JsonElement list, string? key = null) => [.. list.EnumerateArray().Select(e => (key is null ? e : e.GetProperty(key)).GetString()!)];

    [Theory]
    [InlineData(0.03, 0.05)]
    [InlineData(0.1, 0.05)]
    [InlineData(0.1, 0.1)]
    [InlineData(0.1, 0.02)]
    public void Cuts_rise_boxes_hold_and_every_class_is_packed_or_named(double scatter, double tolerance)
    {
        JsonElement answer = Answer("cuts", LotFiles.Bulbs(trial, "lot.csv", 1500, 1, scatter), "--tolerance", tolerance.ToString(System.Globalization.CultureInfo.InvariantCulture));
        string[] packed = Texts(answer.GetProperty("cuts"), "class"), merged = Texts(answer.GetProperty("merged"));
        double[] grams = [.. answer.GetProperty("cuts").EnumerateArray().Select(c => c.GetProperty("min_g").GetDouble())];
        Assert.Equal(grams.Order(), grams);
        Assert.Equal(9, packed.Concat(merged).Distinct().Count());
        Assert.Equal(9, packed.Length + merged.Length);
        Assert.Equal(packed, Texts(answer.GetProperty("off_size"), "class"));
        Assert.All(answer.GetProperty("off_size").EnumerateArray(), o => Assert.InRange(o.GetProperty("below").GetDouble() + o.GetProperty("above").GetDouble(), 0, tolerance + 1e-9));
        Assert.True(answer.GetProperty("value").GetDouble() > 0);
        Assert.True(answer.GetProperty("nominal_value").GetDouble() > 0);
    }

    /// <summary>What was promised for the lot is found again in fresh bulbs of the same lot, measured with the ring.</summary>
    [Fact]
    public void Promised_off_size_is_found_in_other_bulbs_of_the_same_lot()
    {
        JsonElement answer = Answer("cuts", LotFiles.Bulbs(trial, "lot.csv", 4000, 1, 0.03), "--chart", LotFiles.Put(trial, "three.csv", Three));
        Assert.Equal(["Small", "Medium", "Large"], Texts(answer.GetProperty("cuts"), "class"));
        double[] from = [.. answer.GetProperty("cuts").EnumerateArray().Select(c => c.GetProperty("min_g").GetDouble())];
        (double G, double Mm)[] fresh = [.. File.ReadLines(LotFiles.Bulbs(trial, "other.csv", 40_000, 2, 0.03)).Skip(1).Select(row => row.Split(',')).Select(c => (double.Parse(c[0], System.Globalization.CultureInfo.InvariantCulture), double.Parse(c[1], System.Globalization.CultureInfo.InvariantCulture)))];
        (double Min, double Max)[] window = [(37, 47), (47, 57), (57, 1e9)];
        for (int k = 0; k < 3; k++)
        {
            (double G, double Mm)[] box = [.. fresh.Where(b => b.G >= from[k] && b.G < (k < 2 ? from[k + 1] : 1e9))];
            double off = box.Where(b => b.Mm < window[k].Min || b.Mm >= window[k].Max).Sum(b => b.G) / box.Sum(b => b.G);
            JsonElement promised = answer.GetProperty("off_size")[k];
            Assert.Equal(promised.GetProperty("below").GetDouble() + promised.GetProperty("above").GetDouble(), off, 0.012);
        }
    }

    /// <summary>By hand: with no limit on what is off size, everything is sold as the dearest class.</summary>
    [Fact]
    public void Without_a_tolerance_everything_is_sold_as_the_dearest_class()
    {
        string prices = LotFiles.Put(trial, "prices.csv", "class,price_per_kg\nLarge,3\nSmall,1\nMedium,2\n");
        JsonElement answer = Answer("cuts", LotFiles.Bulbs(trial, "lot.csv", 300, 1), "--chart", LotFiles.Put(trial, "three.csv", Three), "--prices", prices, "--tolerance", "1");
        Assert.Equal(["Large"], Texts(answer.GetProperty("cuts"), "class"));
        Assert.Equal(3, answer.GetProperty("value").GetDouble(), 1e-9);
    }

    [Fact]
    public void More_outlets_and_more_tolerance_are_never_worth_less_and_an_inspector_never_more()
    {
        string lot = LotFiles.Bulbs(trial, "lot.csv", 1500, 1, 0.03), chart = LotFiles.Put(trial, "three.csv", Three);
        double Worth(params string[] more) => Answer(["cuts", lot, "--chart", chart, .. more]).GetProperty("value").GetDouble();
        double free = Worth();
        Assert.True(Worth("--outlets", "1") <= Worth("--outlets", "2"));
        Assert.True(Worth("--outlets", "2") <= free);
        Assert.True(free <= Worth("--tolerance", "0.1"));
        Assert.True(Worth("--inspected-lb", "20") < free);
        Assert.True(Worth("--inspected-lb", "20", "--risk", "0.05") <= Worth("--inspected-lb", "20", "--risk", "0.5"));
    }

    [Theory]
    [InlineData("class,price_per_kg\nSmall,1\nMedium,2\n", "prices.csv, column class: expected a row for each class of the chart; Large has none.")]
    [InlineData("class,price_per_kg\nSmall,1\nMedium,2\nLarge,3\nHuge,4\n", "prices.csv, line 5, column class: found \"Huge\"; expected a name that the chart has under class.")]
    [InlineData("class,cost\nSmall,1\n", "prices.csv, line 1: expected one of the columns price_per_kg, price.")]
    [InlineData("class,price\nSmall,\nMedium,2\nLarge,3\n", "prices.csv, line 2, column price: found \"\"; expected a value in one of price_per_kg, price.")]
    public void Bad_prices_are_one_line_that_says_all(string text, string said)
    {
        Ended ended = trial.Run("cuts", LotFiles.Bulbs(trial, "lot.csv", 50, 1), "--chart", LotFiles.Put(trial, "three.csv", Three), "--prices", LotFiles.Put(trial, "prices.csv", text), "--json");
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        Assert.Contains(said, ended.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Holes_by_shares_give_the_shares()
    {
        JsonElement answer = Answer("holes", Cloves(), "--split", LotFiles.Put(trial, "split.csv", "grade,share\nsmall,0.3\nmid,0.4\nlarge,0.3\n"));
        double[] holes = [.. answer.GetProperty("holes").EnumerateArray().Select(h => h.GetProperty("mm").GetDouble())];
        Assert.Equal(2, holes.Length);
        Assert.True(holes[0] < holes[1]);
        Assert.Equal(["small", "mid", "large"], Texts(answer.GetProperty("grades"), "grade"));
        double[] shares = [.. answer.GetProperty("grades").EnumerateArray().Select(g => g.GetProperty("share").GetDouble())];
        Assert.Equal(0.3, shares[0], 0.02);
        Assert.Equal(0.4, shares[1], 0.02);
        Assert.All(answer.GetProperty("grades").EnumerateArray(), g => Assert.InRange(g.GetProperty("contamination").GetDouble(), 0.01, 0.4));
    }

    [Fact]
    public void Holes_by_widths_say_what_is_of_no_grade_and_a_limit_that_cannot_be_held()
    {
        string split = LotFiles.Put(trial, "split.csv", "grade,min_mm,max_mm,contamination\nsmall,8,10,\nlarge,12,,0.001\n");
        Ended ended = trial.Run("holes", Cloves(), "--split", split, "--json");
        Assert.Equal(0, ended.Code);
        Assert.Contains("large holds", ended.Error, StringComparison.Ordinal);
        JsonElement answer = JsonDocument.Parse(ended.Output).RootElement;
        Assert.Equal(3, answer.GetProperty("holes").GetArrayLength());
        Assert.Equal(1, answer.GetProperty("grades").EnumerateArray().Sum(g => g.GetProperty("share").GetDouble()) + answer.GetProperty("ungraded").GetDouble(), 1e-9);
    }

    [Theory]
    [InlineData("grade,share\na,0.7\nb,0.4\n", "split.csv, line 3, column share: expected shares that sum to at most 1, not 1.1.")]
    [InlineData("grade\na\n", "split.csv, line 1: expected one of the columns min_mm, share.")]
    [InlineData("grade,min_mm,share\na,8,\nb,,0.5\n", "split.csv, line 3, column min_mm: found \"\"; expected min_mm in every row")]
    [InlineData("grade,min_mm,max_mm\na,8,12\nb,10,\n", "split.csv, line 3, column min_mm: found \"10\"; expected grades that do not overlap; this one does with a on line 2.")]
    [InlineData("grade,share\na,1.4\n", "split.csv, line 2, column share: found \"1.4\"; expected a share from 0 to 1.")]
    public void A_bad_split_is_one_line_that_says_all(string text, string said)
    {
        Ended ended = trial.Run("holes", Cloves(), "--split", LotFiles.Put(trial, "split.csv", text), "--json");
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        Assert.Contains(said, ended.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("cuts lot.csv --tolerance 2", "--tolerance wants a number from 0 to 1")]
    [InlineData("holes lot.csv", "--split CSV is missing. See cloveshed holes --help.")]
    [InlineData("sizes", "FILE.csv is missing. See cloveshed sizes --help.")]
    public void Used_wrongly_ends_with_2(string line, string said)
    {
        Ended ended = trial.Run(line.Split(' '));
        Assert.Equal((2, ""), (ended.Code, ended.Output));
        Assert.Contains(said, ended.Error, StringComparison.Ordinal);
    }

    private string Cloves()
    {
        Random random = new(3);
        double Normal() => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
        return LotFiles.Put(trial, "cloves.csv", "width_mm\n" + string.Concat(Enumerable.Range(0, 300).Select(_ => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{11 * Math.Exp(0.18 * Normal()):0.0}\n"))));
    }
}
