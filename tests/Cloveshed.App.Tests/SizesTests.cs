using System.Text.Json;

namespace Cloveshed.App.Tests;

/// <summary>sizes on the command line; the curve itself is tested with the core.</summary>
public sealed class SizesTests : IDisposable
{
    private readonly Trial trial = new();

    public void Dispose() => trial.Dispose();

    [Fact]
    public void Json_has_the_keys_of_the_contract_and_nothing_else_is_on_the_output()
    {
        Ended ended = trial.Run("sizes", LotFiles.Bulbs(trial, "lot.csv", 400, 1), "--json");
        Assert.Equal(0, ended.Code);
        using JsonDocument answer = JsonDocument.Parse(ended.Output);
        JsonElement root = answer.RootElement;
        Assert.Equal(400, root.GetProperty("n").GetInt64());
        Assert.InRange(root.GetProperty("mean_g").GetDouble(), 50, 60);
        Assert.InRange(root.GetProperty("cv").GetDouble(), 0.28, 0.38);
        Assert.InRange(root.GetProperty("components").GetInt32(), 1, 3);
        JsonElement[] classes = [.. root.GetProperty("classes").EnumerateArray()];
        Assert.Equal(9, classes.Length);
        Assert.Equal("Small tube", classes[0].GetProperty("class").GetString());
        Assert.All(classes, c =>
        {
            double share = c.GetProperty("share").GetDouble();
            Assert.InRange(share, c.GetProperty("low80").GetDouble(), c.GetProperty("high80").GetDouble());
            Assert.True(c.GetProperty("count_per_30_lb").GetDouble() > 0);
        });
        Assert.Equal(1, classes.Sum(c => c.GetProperty("share").GetDouble()) + root.GetProperty("under").GetProperty("share").GetDouble(), 1e-9);
    }

    /// <summary>Plain arithmetic on three rows, one of them of two bulbs.</summary>
    [Fact]
    public void Mean_and_cv_are_those_of_the_bulbs_as_written()
    {
        using JsonDocument answer = JsonDocument.Parse(trial.Run("sizes", LotFiles.Put(trial, "few.csv", "count,weight_g\n1,40.25\n2,50\n,61.75\n"), "--json").Output);
        double mean = (40.25 + 50 + 50 + 61.75) / 4, squares = (40.25 - mean) * (40.25 - mean) + 2 * (50 - mean) * (50 - mean) + (61.75 - mean) * (61.75 - mean);
        Assert.Equal(4, answer.RootElement.GetProperty("n").GetInt64());
        Assert.Equal(mean, answer.RootElement.GetProperty("mean_g").GetDouble(), 1e-12);
        Assert.Equal(Math.Sqrt(squares / 3) / mean, answer.RootElement.GetProperty("cv").GetDouble(), 1e-12);
    }

    [Fact]
    public void The_same_seed_gives_the_same_answer_and_another_other_bands_about_the_same_shares()
    {
        string lot = LotFiles.Bulbs(trial, "lot.csv", 60, 2);
        Assert.Equal(trial.Run("sizes", lot, "--json", "--seed", "5").Output, trial.Run("sizes", lot, "--json", "--seed", "5").Output);
        using JsonDocument one = JsonDocument.Parse(trial.Run("sizes", lot, "--json", "--seed", "5").Output), two = JsonDocument.Parse(trial.Run("sizes", lot, "--json", "--seed", "6").Output);
        JsonElement Jumbo(JsonDocument of) => of.RootElement.GetProperty("classes")[4];
        Assert.Equal(Jumbo(one).GetProperty("share").GetDouble(), Jumbo(two).GetProperty("share").GetDouble());
        Assert.NotEqual(Jumbo(one).GetProperty("low80").GetDouble(), Jumbo(two).GetProperty("low80").GetDouble());
    }

    [Fact]
    public void A_chart_of_ones_own_is_read_in_its_order()
    {
        string chart = LotFiles.Put(trial, "chart.csv", "class,min_mm,max_mm\nS,30,45\nM,45,55\nL,55,60\n");
        using JsonDocument answer = JsonDocument.Parse(trial.Run("sizes", LotFiles.Bulbs(trial, "lot.csv", 200, 3), "--chart", chart, "--json").Output);
        Assert.Equal(["S", "M", "L"], answer.RootElement.GetProperty("classes").EnumerateArray().Select(c => c.GetProperty("class").GetString()!));
        Assert.True(answer.RootElement.GetProperty("over").GetProperty("share").GetDouble() > 0.05);
    }

    [Theory]
    [InlineData("weight_g\n50\n-3\n", "lot.csv, line 3, column weight_g: found \"-3\"; expected a number above 0 and at most 5000.")]
    [InlineData("weight_g\n50\nheavy\n", "lot.csv, line 3, column weight_g: found \"heavy\"; expected a number, such as 1250.5.")]
    [InlineData("weight_g,count\n50,1.5\n", "lot.csv, line 2, column count: found \"1.5\"; expected a whole number from 0")]
    [InlineData("weight_g,diameter_mm\n50,0\n", "lot.csv, line 2, column diameter_mm: found \"0\"; expected a number above 0 and at most 500.")]
    [InlineData("weight\n50\n", "column weight_g: expected this column")]
    [InlineData("weight_g\n", "lot.csv: expected at least one bulb.")]
    [InlineData("", "lot.csv: expected a header row")]
    public void Bad_input_is_one_line_that_says_all(string text, string said)
    {
        Ended ended = trial.Run("sizes", LotFiles.Put(trial, "lot.csv", text), "--json");
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        string fault = ended.Error.Split('\n').Single(line => line.Contains("expected", StringComparison.Ordinal));
        Assert.Contains(said, fault, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there_is_said_in_both_languages()
    {
        Assert.Equal((1, "none.csv: expected a file that exists. Check the path for a slip."), (trial.Run("sizes", "none.csv").Code, trial.Run("sizes", "none.csv").Error.TrimEnd()));
        Assert.Contains("se esperaba un archivo que exista", trial.Run("sizes", "none.csv", "--lang", "es").Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Odd_bulbs_are_named_and_counted()
    {
        string lot = LotFiles.Bulbs(trial, "lot.csv", 100, 4);
        File.AppendAllText(lot, "50,5.1\n");
        Ended ended = trial.Run("sizes", lot, "--json");
        Assert.Contains("lot.csv, line 102: 50 g at 5.1 mm", ended.Error, StringComparison.Ordinal);
        using JsonDocument answer = JsonDocument.Parse(ended.Output);
        Assert.Equal(101, answer.RootElement.GetProperty("n").GetInt64());
        Assert.Contains(answer.RootElement.GetProperty("odd").EnumerateArray(), o => o.GetProperty("line").GetInt32() == 102 && o.GetProperty("why").GetString() == "far from law");
        Assert.InRange(answer.RootElement.GetProperty("law").GetProperty("b").GetDouble(), 2.1, 2.9);
    }

    [Fact]
    public void Few_bulbs_without_a_diameter_still_get_an_answer_with_its_doubt_said()
    {
        Ended ended = trial.Run("sizes", LotFiles.Put(trial, "one.csv", "weight_g\n50\n"), "--json");
        Assert.Equal(0, ended.Code);
        Assert.Contains("published table's law", ended.Error, StringComparison.Ordinal);
        using JsonDocument answer = JsonDocument.Parse(ended.Output);
        JsonElement jumbo = answer.RootElement.GetProperty("classes")[4];
        Assert.True(jumbo.GetProperty("high80").GetDouble() - jumbo.GetProperty("low80").GetDouble() > 0.2);
        // Two alike do not say that all are: other classes have their share.
        using JsonDocument two = JsonDocument.Parse(trial.Run("sizes", LotFiles.Put(trial, "two.csv", "weight_g\n50\n50\n"), "--json").Output);
        Assert.All(two.RootElement.GetProperty("classes").EnumerateArray().Take(6), c => Assert.True(c.GetProperty("share").GetDouble() > 0.01));
    }
}
