namespace Cloveshed.Check.Tests;

public class MutationTests
{
    public static TheoryData<string> Names => [.. Mutations.All.Keys];

    public static TheoryData<string> Files => [.. Folders.AnswerColumns.Keys, "summary.json"];

    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_wrong_is_named_by_its_rule(string name)
    {
        (string rule, Func<Folders> folders) = Mutations.All[name];
        Assert.Contains(folders().Check().Breaches, breach => breach.Rule == rule);
    }

    [Theory]
    [MemberData(nameof(Files))]
    public void A_missing_file_is_a_breach_and_leaves_no_value_unless_it_is_the_summary(string file)
    {
        CheckResult result = Scenarios.FreshRun().Without(file).Check();
        Assert.Contains(new Breach("file-missing", file, "no such file", $"a file {file}"), result.Breaches);
        Assert.Equal(file == "summary.json" ? 329 : null, result.Value);
    }

    [Fact]
    public void Every_rule_is_broken_by_some_mutation()
    {
        IEnumerable<string> broken = Mutations.All.Values.Select(mutation => mutation.Rule).Append("file-missing").Append("shares-curve");
        IEnumerable<string> rules = typeof(RuleNames).GetFields().Select(rule => (string)rule.GetRawConstantValue()!);
        Assert.Empty(rules.Except(broken));
    }

    [Fact]
    public void No_folder_at_all_is_a_breach() => Assert.NotEmpty(PlanCheck.Check("no-such-season", "no-such-answer").Breaches);

    [Fact]
    public void A_breach_names_the_line_the_figure_and_what_is_allowed()
    {
        CheckResult result = Scenarios.FreshRun().Change("runs.csv", "990,1000", "many,1000").Check();
        Assert.Contains(new Breach("number", "runs.csv line 2", "mass_in many", "a finite number"), result.Breaches);
        Assert.Null(result.Value);
    }
}
