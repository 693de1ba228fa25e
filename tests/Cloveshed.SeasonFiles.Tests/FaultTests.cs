using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>Each trial gives its one fault, with file, line, column, value, what was expected and what to do, in both languages.</summary>
public sealed class FaultTests
{
    public static TheoryData<string> Names => [.. Trials.All.Select(trial => trial.Name)];

    [Theory, MemberData(nameof(Names))]
    public void One_thing_wrong_is_one_fault_that_says_all(string name)
    {
        Trial trial = Trials.All.Single(it => it.Name == name);
        SeasonReading reading = trial.Spoil(new SmallSeason()).Read();

        Fault fault = Assert.Single(reading.Faults);
        Assert.Null(reading.Season);
        Assert.Equal(1, reading.FaultCount);
        Assert.Equal(
            (trial.Rule, trial.File, trial.Line, trial.Column, trial.Value), (fault.Rule, fault.File, fault.Line, fault.Column, fault.Value));
        Assert.NotEmpty(fault.Expected);
        Assert.EndsWith(".", fault.Remedy.TrimEnd('"'), StringComparison.Ordinal);
        Assert.DoesNotContain('\n', fault.ToString());
        Assert.DoesNotContain("{0}", fault.ToString(), StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Names))]
    public void It_says_the_same_in_Spanish(string name)
    {
        Trial trial = Trials.All.Single(it => it.Name == name);
        Fault english = trial.Spoil(new SmallSeason()).Read().Faults[0];
        Fault spanish = trial.Spoil(new SmallSeason()).Read(TextLanguage.Spanish).Faults[0];

        Assert.Equal(english, spanish with { Expected = english.Expected, Remedy = english.Remedy, Language = TextLanguage.English });
        Assert.NotEqual(english.Expected, spanish.Expected);
        Assert.NotEqual(english.Remedy, spanish.Remedy);
    }

    /// <summary>A rule that nothing provokes is a rule that nobody has seen work.</summary>
    [Fact]
    public void Every_rule_is_provoked()
    {
        FaultRule[] elsewhere = [FaultRule.FolderMissing, FaultRule.FolderEmpty, FaultRule.FileUnreadable, FaultRule.FileTooLarge]; // FolderTests

        FaultRule[] ofTheLine = [FaultRule.FileNotThere, FaultRule.NoRows, FaultRule.OneColumnOf, FaultRule.OneCellOf, FaultRule.PriceMissing, FaultRule.SplitByBoth, FaultRule.SplitSum]; // WeighingTests

        Assert.Empty(Enum.GetValues<FaultRule>().Except(Trials.All.Select(trial => trial.Rule)).Except(elsewhere).Except(ofTheLine).Except([FaultRule.Moment, FaultRule.MomentAhead])); // ReadingsTests
    }

    [Fact]
    public void A_fault_is_one_plain_line()
    {
        Fault fault = new SmallSeason().Replace("lots.csv", "54000,weighed", "-54000,weighed").Read().Faults[0];

        Assert.Equal(
            "lots.csv, line 2, column net: found \"-54000\"; expected a number above 0 and at most 100000000. Check sign, decimal point and unit.",
            fault.ToString());
    }

    [Fact]
    public void The_remedies_are_plain_where_spreadsheets_go_wrong()
    {
        Assert.Contains("The fields look separated by ';': save the file with commas", Remedy("semicolons"), StringComparison.Ordinal);
        Assert.Contains("write 1.5 for one and a half", Remedy("decimal comma in quotes"), StringComparison.Ordinal);
        Assert.Contains("Write 2026-09-07, the Monday of that week", Remedy("a week that starts on a Tuesday"), StringComparison.Ordinal);
        Assert.Contains("yes or no", Remedy("true for yes"), StringComparison.Ordinal);
        Assert.Contains("UTF-8", Remedy("not UTF-8"), StringComparison.Ordinal);
    }

    private static string Remedy(string name) => Trials.All.Single(trial => trial.Name == name).Spoil(new SmallSeason()).Read().Faults[0].Remedy;
}
