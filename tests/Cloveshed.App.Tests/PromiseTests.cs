using System.Text.Json;

namespace Cloveshed.App.Tests;

/// <summary>promise on a season where every figure can be reckoned by hand: 30 cartons can be packed, and all are ordered at 20.</summary>
public sealed class PromiseTests : IDisposable
{
    private readonly Trial trial = new();
    private readonly string season, plan;

    public PromiseTests()
    {
        (season, plan) = (SmallShed.In(trial), trial.At("plan"));
        Assert.Equal(0, trial.Run("plan", season, "--out", plan).Code);
    }

    public void Dispose() => trial.Dispose();

    /// <summary>Ten cartons can only be had from the order that brings 20 each (arithmetic).</summary>
    [Fact]
    public void Cartons_that_are_sold_cost_what_they_bring_there()
    {
        Ended ended = trial.Run("promise", season, plan, "--line", "M30=10@25", "--due", "2030-07-05", "--json");
        Assert.Equal(0, ended.Code);
        using JsonDocument answer = JsonDocument.Parse(ended.Output);
        Assert.Equal("yes", answer.RootElement.GetProperty("verdict").GetString());
        Assert.Equal(200, answer.RootElement.GetProperty("cost").GetDouble(), 0.01);
        Assert.Equal(250, answer.RootElement.GetProperty("paid").GetDouble(), 1e-9);
        JsonElement line = Assert.Single(answer.RootElement.GetProperty("lines").EnumerateArray()), expense = Assert.Single(answer.RootElement.GetProperty("expenses").EnumerateArray());
        Assert.Equal((10, 10), (line.GetProperty("by_due").GetInt32(), line.GetProperty("worth").GetInt32()));
        Assert.Equal(20, line.GetProperty("cost").GetDouble(), 0.001);
        Assert.Equal(("order-line", "o 1"), (expense.GetProperty("kind").GetString(), expense.GetProperty("name").GetString()));
        Assert.Equal(10, expense.GetProperty("less").GetDouble(), 0.001);
    }

    [Fact]
    public void What_is_offered_must_cover_it_and_more_than_there_is_cannot_be_had()
    {
        Assert.StartsWith("All of it can be had by the day asked, but it costs more than is offered.", trial.Run("promise", season, plan, "--line", "M30=10@15", "--due", "2030-07-05").Output, StringComparison.Ordinal);
        string all = trial.Run("promise", season, plan, "--line", "M30=40", "--due", "2030-07-05", "--lang", "es").Output;
        Assert.StartsWith("En parte: algo para el día pedido, y todo en ningún momento de esta temporada.", all, StringComparison.Ordinal);
        Assert.Contains("M30: 30 de 40 para el día pedido", all, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("M30")]
    [InlineData("M30=1.5")]
    [InlineData("M30=0")]
    [InlineData("M30=10@1,5")]
    public void A_line_says_a_product_and_whole_units(string line)
    {
        Ended ended = trial.Run("promise", season, plan, "--line", line, "--due", "2030-07-05");
        Assert.Equal((2, ""), (ended.Code, ended.Output));
        Assert.Contains($"found \"{line}\"", ended.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_there_is_refused()
    {
        Ended product = trial.Run("promise", season, plan, "--line", "X=1", "--due", "2030-07-05"), folder = trial.Run("promise", season, trial.At("none"), "--line", "M30=1", "--due", "2030-07-05");
        Assert.Equal((1, 1), (product.Code, folder.Code));
        Assert.Contains("\"X\"; it is one of M30", product.Error, StringComparison.Ordinal);
        Assert.Equal(2, trial.Run("promise", season, plan, "--line", "M30=1", "--due", "5.7.2030").Code);
    }
}
