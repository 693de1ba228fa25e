using System.Text.Json;

namespace Cloveshed.App.Tests;

/// <summary>check-plan: an answer is taken at its files' word and no other.</summary>
public sealed class CheckPlanTests : IDisposable
{
    private readonly Trial trial = new();
    private readonly string season, plan;

    public CheckPlanTests()
    {
        (season, plan) = (SmallShed.In(trial), trial.At("plan"));
        Assert.Equal(0, trial.Run("plan", season, "--out", plan).Code);
    }

    public void Dispose() => trial.Dispose();

    [Fact]
    public void A_plan_that_holds_is_worth_what_it_says()
    {
        Ended ended = trial.Run("check-plan", season, plan, "--json");
        Assert.Equal((0, ""), (ended.Code, ended.Error));
        using JsonDocument answer = JsonDocument.Parse(ended.Output);
        Assert.Equal(0, answer.RootElement.GetProperty("breaches").GetArrayLength());
        Assert.Equal(SmallShed.Worth, answer.RootElement.GetProperty("value").GetDouble(), 1e-6);
        Assert.Contains("The plan holds. Its value, worked out from the files, is ", trial.Run("check-plan", season, plan).Output, StringComparison.Ordinal);
    }

    /// <summary>One carton more than was made is shipped.</summary>
    [Fact]
    public void A_plan_that_was_tampered_with_is_refused_with_rule_place_and_figures()
    {
        SmallShed.Change(plan, "fills.csv", ",30\r\n", ",31\r\n");
        Ended told = trial.Run("check-plan", season, plan), json = trial.Run("check-plan", season, plan, "--json");
        Assert.Equal((1, 1), (told.Code, json.Code));
        Assert.Contains("fill-over: ", told.Output, StringComparison.Ordinal);
        Assert.Contains("must not be used", told.Error, StringComparison.Ordinal);
        using JsonDocument answer = JsonDocument.Parse(json.Output);
        JsonElement over = Assert.Single(answer.RootElement.GetProperty("breaches").EnumerateArray(), breach => breach.GetProperty("rule").GetString() == "fill-over");
        Assert.Contains("31", over.GetProperty("found").GetString(), StringComparison.Ordinal);
        Assert.Contains("30", over.GetProperty("allowed").GetString(), StringComparison.Ordinal);
        Assert.Contains("fills.csv", over.GetProperty("where").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Folders_that_are_not_there_are_refused()
    {
        Assert.Equal(1, trial.Run("check-plan", trial.At("none"), plan).Code);
        Assert.Equal(1, trial.Run("check-plan", season, trial.At("none")).Code);
    }
}
