using System.Text.Json;

namespace Cloveshed.App.Tests;

/// <summary>shift and check-shift: a week of the plan in order, written, and held to its rules.</summary>
public sealed class ShiftTests : IDisposable
{
    private readonly Trial trial = new();
    private readonly string season, plan, week;

    public ShiftTests()
    {
        (season, plan, week) = (SmallShed.In(trial), trial.At("plan"), trial.At("week"));
        Assert.Equal(0, trial.Run("plan", season, "--out", plan).Code);
    }

    public void Dispose() => trial.Dispose();

    [Fact]
    public void A_week_is_put_in_order_written_and_holds()
    {
        Ended ended = trial.Run("shift", season, "--plan", plan, "--week", First, "--out", week, "--json");
        Assert.Equal((0, ""), (ended.Code, ended.Error));
        using JsonDocument answer = JsonDocument.Parse(ended.Output);
        Assert.Equal("proven", answer.RootElement.GetProperty("status").GetString());
        Assert.NotEqual(0, answer.RootElement.GetProperty("runs").GetArrayLength());
        Assert.Contains("hours of lines.csv", answer.RootElement.GetProperty("defaults").GetString(), StringComparison.Ordinal);
        Assert.Equal(["late.csv", "schedule.csv", "schedule.json"], Directory.GetFiles(week).Select(Path.GetFileName).Order(StringComparer.Ordinal));
        Assert.StartsWith("The week holds.", trial.Run("check-shift", season, plan, week).Output, StringComparison.Ordinal);
        Assert.Contains("guards on", trial.Run("shift", season, "--plan", plan, "--week", First).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_week_that_was_tampered_with_is_refused_with_rule_and_figures()
    {
        Assert.Equal(0, trial.Run("shift", season, "--plan", plan, "--week", First, "--out", week).Code);
        string path = Path.Combine(week, "schedule.csv");
        string[] rows = File.ReadAllLines(path);
        File.WriteAllLines(path, [rows[0], .. rows[1..].Select(row => row.Replace("T06:", "T05:", StringComparison.Ordinal))]);
        Ended told = trial.Run("check-shift", season, plan, week), json = trial.Run("check-shift", season, plan, week, "--json");
        Assert.Equal((1, 1), (told.Code, json.Code));
        Assert.Contains("outside a shift", told.Output, StringComparison.Ordinal);
        using JsonDocument answer = JsonDocument.Parse(json.Output);
        Assert.Contains(answer.RootElement.GetProperty("breaches").EnumerateArray(), breach => breach.GetProperty("rule").GetString() == "InShift");
        Assert.Contains("fuera de turno", trial.Run("check-shift", season, plan, week, "--lang", "es").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0")]
    [InlineData("99")]
    [InlineData("1999-01-04")]
    [InlineData("soon")]
    public void A_week_that_is_not_the_seasons_is_refused_and_nothing_is_written(string named)
    {
        Ended ended = trial.Run("shift", season, "--plan", plan, "--week", named, "--out", week);
        Assert.Equal(1, ended.Code);
        Assert.Contains(named, ended.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(week));
    }

    [Fact]
    public void Folders_that_are_not_there_are_refused()
    {
        Assert.Equal(1, trial.Run("shift", trial.At("none"), "--plan", plan, "--week", "1").Code);
        Assert.Equal(1, trial.Run("shift", season, "--plan", trial.At("none"), "--week", "1").Code);
        Assert.Equal(1, trial.Run("check-shift", season, plan, trial.At("none")).Code);
    }

    /// <summary>The first week in which the plan runs anything.</summary>
    private string First => File.ReadLines(Path.Combine(plan, "runs.csv")).Skip(1).Select(row => row.Split(',')[1]).Min(StringComparer.Ordinal)!;
}
