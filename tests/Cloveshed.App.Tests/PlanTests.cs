using System.Text.Json;

namespace Cloveshed.App.Tests;

/// <summary>plan, whole: files in, files out.</summary>
public sealed class PlanTests : IDisposable
{
    private readonly Trial trial = new();

    public void Dispose() => trial.Dispose();

    [Fact]
    public void A_season_is_planned_checked_and_written_with_its_report()
    {
        string season = SmallShed.In(trial), into = trial.At("plan");
        Ended ended = trial.Run("plan", season, "--out", into);
        Assert.Equal((0, ""), (ended.Code, ended.Error));
        Assert.Contains("This plan is worth $600.", ended.Output, StringComparison.Ordinal);
        Assert.Contains("100.0% of units on time: 30 of 30", ended.Output, StringComparison.Ordinal);
        Assert.Contains("To run in the week of 1 Jul 2030", ended.Output, StringComparison.Ordinal);
        Assert.Contains(Path.Combine(into, "report.html"), ended.Output, StringComparison.Ordinal);
        Assert.Equal(16, Directory.GetFiles(into).Length); // 14 CSV files, summary.json, report.html: season-files.md, Out
        Assert.Equal(0, trial.Run("check-plan", season, into).Code);
        Assert.Equal([into, season], Directory.GetFileSystemEntries(trial.At()).Order());
    }

    [Fact]
    public void With_json_the_summary_is_all_that_is_on_standard_output()
    {
        string season = SmallShed.In(trial);
        SmallShed.Change(season, "lots.csv", "cv\nA", "cv,colour\nA");
        SmallShed.Change(season, "lots.csv", "0.02\n", "0.02,white\n");
        Ended ended = trial.Run("plan", season, "--out", trial.At("plan"), "--json");
        Assert.Equal(0, ended.Code);
        Assert.Equal(File.ReadAllText(trial.At("plan", "summary.json")), ended.Output);
        using JsonDocument summary = JsonDocument.Parse(ended.Output);
        Assert.Equal(SmallShed.Worth, summary.RootElement.GetProperty("value").GetDouble(), 1e-6);
        Assert.Equal("0.1.0", summary.RootElement.GetProperty("version").GetString());
        Assert.Contains("colour", summary.RootElement.GetProperty("warnings")[0].GetString(), StringComparison.Ordinal);
        Assert.StartsWith("Warning: lots.csv", ended.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Faults_are_all_named_and_the_former_answer_stays()
    {
        string season = SmallShed.In(trial), into = trial.At("plan");
        Assert.Equal(0, trial.Run("plan", season, "--out", into).Code);
        Dictionary<string, byte[]> before = Directory.GetFiles(into).ToDictionary(file => file, File.ReadAllBytes);
        SmallShed.Change(season, "lots.csv", ",1000,", ",a ton,");
        SmallShed.Change(season, "orders.csv", "M30", "M31");
        Ended ended = trial.Run("plan", season, "--out", into, "--json");
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        Assert.Contains("was refused for 2 faults", ended.Error, StringComparison.Ordinal);
        Assert.Contains("lots.csv, line 2, column net: found \"a ton\"; expected a number", ended.Error, StringComparison.Ordinal);
        Assert.Contains("orders.csv, line 2, column product: found \"M31\"", ended.Error, StringComparison.Ordinal);
        Assert.Equal(before.Keys.Order(), Directory.GetFiles(into).Order());
        Assert.All(before, file => Assert.Equal(file.Value, File.ReadAllBytes(file.Key)));
    }

    /// <summary>Someone edits the season while it is planned: the check reads the files as they are then, and must not let the plan pass.</summary>
    [Fact]
    public void A_plan_that_does_not_hold_never_comes_into_OUT()
    {
        string season = SmallShed.In(trial), into = trial.At("plan");
        bool edited = false;
        trial.Meanwhile = () =>
        {
            if (!edited)
            {
                edited = true;
                SmallShed.Change(season, "lots.csv", ",1000,", ",500,");
            }
        };
        Ended ended = trial.Run("plan", season, "--out", into, "--json");
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        Assert.Contains("MUST NOT BE USED", ended.Error, StringComparison.Ordinal);
        Assert.Contains("lot-balance", ended.Error, StringComparison.Ordinal);
        Assert.Contains(into + ".failed", ended.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(into));
        Assert.Contains("lot-balance", File.ReadAllText(trial.At("plan.failed", "DO-NOT-USE.txt")), StringComparison.Ordinal);
        Assert.True(File.Exists(trial.At("plan.failed", "runs.csv")));
        Assert.False(File.Exists(trial.At("plan.failed", "report.html")));
    }

    [Fact]
    public void Stopped_by_hand_it_still_writes_a_plan_and_says_so()
    {
        trial.StoppedAtOnce = true;
        Ended ended = trial.Run("plan", SmallShed.In(trial), "--out", trial.At("plan"), "--verbose");
        Assert.True(ended.Code == 0, ended.Error);
        Assert.Contains("stopped by hand", ended.Error, StringComparison.Ordinal);
        Assert.Contains("\"cancelled\"", File.ReadAllText(trial.At("plan", "summary.json")), StringComparison.Ordinal);
    }

    [Fact]
    public void Out_may_not_hold_a_season_or_be_a_file()
    {
        string season = SmallShed.In(trial);
        Ended onSeason = trial.Run("plan", season, "--out", season), onFile = trial.Run("plan", season, "--out", Path.Combine(season, "lots.csv"));
        Assert.Equal((1, 1), (onSeason.Code, onFile.Code));
        Assert.Contains("holds a season's files", onSeason.Error, StringComparison.Ordinal);
        Assert.Contains("is a file", onFile.Error, StringComparison.Ordinal);
        Assert.Equal(9, Directory.GetFiles(season).Length);
    }

    [Fact]
    public void Progress_is_drawn_on_a_terminal_and_nowhere_else()
    {
        string season = SmallShed.In(trial);
        Assert.Equal("", trial.Run("plan", season, "--out", trial.At("quiet")).Error);
        trial.Terminal = true;
        string drawn = trial.Run("plan", season, "--out", trial.At("drawn")).Error;
        Assert.Contains("\r\u001b[K", drawn, StringComparison.Ordinal);
        Assert.Contains("value $600", drawn, StringComparison.Ordinal);
        Assert.EndsWith("\r\u001b[K", drawn, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', drawn);
    }

    [Fact]
    public void It_speaks_Spanish_when_asked_or_when_the_environment_does()
    {
        string season = SmallShed.In(trial);
        Assert.Contains("Este plan vale $600.", trial.Run("plan", season, "--out", trial.At("a"), "--lang", "es", "--mass", "kg").Output, StringComparison.Ordinal);
        Assert.Contains("lang=\"es\"", File.ReadAllText(trial.At("a", "report.html")), StringComparison.Ordinal);
        trial.With("LANG", "es_MX.UTF-8");
        Assert.Contains("A correr en la semana del", trial.Run("plan", season, "--out", trial.At("b")).Output, StringComparison.Ordinal);
        Assert.Contains("To run in the week of", trial.Run("plan", season, "--out", trial.At("c"), "--lang=en").Output, StringComparison.Ordinal);
        trial.With("LC_ALL", "en_US.UTF-8");
        Assert.Contains("To run in the week of", trial.Run("plan", season, "--out", trial.At("d")).Output, StringComparison.Ordinal);
    }
}
