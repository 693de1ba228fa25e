using System.Text.Json;

namespace Cloveshed.App.Tests;

/// <summary>suppose on a season where every figure can be reckoned by hand: 30 cartons can be packed in an hour that costs 12, and all are ordered at 20.</summary>
public sealed class SupposeTests : IDisposable
{
    private readonly Trial trial = new();
    private readonly string season, plan;

    public SupposeTests()
    {
        (season, plan) = (SmallShed.In(trial), trial.At("plan"));
        SmallShed.Change(season, "lines.csv", "pack,fresh,1000,40,0", "pack,fresh,1000,40,12");
        Assert.Equal(0, trial.Run("plan", season, "--out", plan).Code);
    }

    public void Dispose() => trial.Dispose();

    /// <summary>Ten cartons fewer of thirty at 20, and a third of an hour at 12 spared (arithmetic).</summary>
    [Fact]
    public void An_order_that_asks_for_ten_fewer_brings_their_price_less()
    {
        Ended ended = trial.Run("suppose", season, plan, "--units", "o/1=20", "--json");
        Assert.Equal(0, ended.Code);
        using JsonDocument answer = JsonDocument.Parse(ended.Output);
        double before = answer.RootElement.GetProperty("value_before").GetDouble(), then = answer.RootElement.GetProperty("value").GetDouble();
        Assert.Equal(200 - 4, before - then, 0.01);
        Assert.InRange(answer.RootElement.GetProperty("bound").GetDouble(), then - 1e-6, then + 0.1);
        JsonElement run = Assert.Single(answer.RootElement.GetProperty("runs").EnumerateArray());
        Assert.Equal(2.0 / 3, run.GetProperty("mass").GetDouble() / run.GetProperty("mass_before").GetDouble(), 1e-6);
        Assert.Empty(answer.RootElement.GetProperty("less").EnumerateArray());
    }

    [Fact]
    public void Called_off_nothing_is_left_to_earn_and_no_run_to_make()
    {
        string told = trial.Run("suppose", season, plan, "--cancel", "o", "--lang", "es").Output;
        Assert.StartsWith("La temporada vale $588 menos:", told, StringComparison.Ordinal);
        Assert.Contains("0 lb entonces", told, StringComparison.Ordinal);
    }

    /// <summary>A fifth of the pounds is six cartons at 20, and a fifth of an hour at 12; five cartons at 25 go before five at 20; what is run already is run (arithmetic).</summary>
    [Theory]
    [InlineData("--weighs-less", "A=20", -120 + 2.4)]
    [InlineData("--add", "M30=5@25@2030-07-04", 25)]
    [InlineData("--ran", "A@pack=500", 0)]
    public void Lots_orders_and_runs_change_it_by_what_they_are_worth(string option, string said, double more)
    {
        Ended ended = trial.Run("suppose", season, plan, option, said, "--json");
        Assert.Equal((0, ""), (ended.Code, ended.Code == 0 ? "" : ended.Error));
        using JsonDocument answer = JsonDocument.Parse(ended.Output);
        Assert.Equal(more, answer.RootElement.GetProperty("value").GetDouble() - answer.RootElement.GetProperty("value_before").GetDouble(), 0.01);
    }

    [Theory]
    [InlineData("--dig-later", "A=1", "A: all of the lot is dug")]
    [InlineData("--ran", "A@pack=1001", "A@pack: so much of the lot is not there")]
    [InlineData("--keeps-less", "B=1", "B: the season has no such lot")]
    [InlineData("--open", "yard=never", "yard: the plan seals no such room")]
    [InlineData("--add", "M31=5@25@2030-07-04", "M31=5: the season has no such product")]
    public void What_cannot_be_put_is_refused_and_says_why(string option, string said, string why)
    {
        Ended ended = trial.Run("suppose", season, plan, option, said);
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        Assert.Contains(why, ended.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--units", "o/1")]
    [InlineData("--units", "o=20")]
    [InlineData("--units", "o/1=0")]
    [InlineData("--move-due", "o=5.7.2030")]
    [InlineData("--stop", "Pack 1")]
    [InlineData("--person-hours", "2030-07-05=many")]
    [InlineData("--add", "M30=5@25")]
    [InlineData("--dig-later", "A=0")]
    [InlineData("--keeps-less", "A=-1")]
    [InlineData("--weighs-less", "A=100")]
    [InlineData("--ran", "A=100")]
    [InlineData("--ran-no-more", "A@pack=NaN")]
    [InlineData("--open", "yard=soon")]
    public void What_is_supposed_is_said_in_its_form(string option, string said)
    {
        Ended ended = trial.Run("suppose", season, plan, option, said);
        Assert.Equal((2, ""), (ended.Code, ended.Output));
        Assert.Contains($"found \"{said}\"", ended.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_not_there_is_refused_and_nothing_supposed_is_no_question()
    {
        Ended order = trial.Run("suppose", season, plan, "--cancel", "x/9"), line = trial.Run("suppose", season, plan, "--stop", "x=2030-07-05"), nothing = trial.Run("suppose", season, plan);
        Assert.Equal((1, 1, 2), (order.Code, line.Code, nothing.Code));
        Assert.Contains("x/9: the season has no such order", order.Error, StringComparison.Ordinal);
        Assert.Contains("the season has no such line", line.Error, StringComparison.Ordinal);
        Assert.Contains("--cancel, --units, --move-due, --add, --stop, --person-hours, --dig-later, --keeps-less, --weighs-less, --ran, --ran-no-more, --open", nothing.Error, StringComparison.Ordinal);
    }
}
