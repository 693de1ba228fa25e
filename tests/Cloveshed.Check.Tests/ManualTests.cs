using System.Reflection;
using System.Text.RegularExpressions;

namespace Cloveshed.Check.Tests;

public class ManualTests
{
    private static string[] RulesInCode =>
        [.. typeof(RuleNames).GetFields(BindingFlags.Public | BindingFlags.Static).Select(rule => (string)rule.GetRawConstantValue()!)];

    [Fact]
    public void Every_rule_stands_in_the_manual_and_no_other()
    {
        string manual = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "check-plan.md"));
        IEnumerable<string> documented = manual.Split('\n').Where(line => line.StartsWith("| `", StringComparison.Ordinal))
            .SelectMany(line => Regex.Matches(line.Split('|')[1], "`([a-z-]+)`").Select(match => match.Groups[1].Value));
        Assert.Equal(RulesInCode.Order(), documented.Order());
    }

    [Fact]
    public void Rule_names_are_kebab_case_and_differ() =>
        Assert.All(RulesInCode, name => Assert.Matches("^[a-z]+(-[a-z]+)*$", Assert.Single(RulesInCode, other => other == name)));

    [Fact]
    public void The_check_shares_no_code_with_what_plans() =>
        Assert.DoesNotContain(
            typeof(PlanCheck).Assembly.GetReferencedAssemblies(), reference => reference.Name!.StartsWith("Cloveshed", StringComparison.Ordinal));

    [Fact]
    public void The_answer_in_JSON_has_the_keys_of_the_command()
    {
        CheckResult result = Scenarios.FreshRun().Change("runs.csv", "990,1000", "1000,1000").Check();
        System.Text.Json.Nodes.JsonObject json = result.ToJson();
        Assert.Equal(["breaches", "value"], json.Select(pair => pair.Key));
        System.Text.Json.Nodes.JsonObject first = json["breaches"]![0]!.AsObject();
        Assert.Equal(["rule", "where", "found", "allowed"], first.Select(pair => pair.Key));
        Assert.Equal("mass-weighed", (string?)first["rule"]);
        Assert.Equal("runs.csv line 2 (run r1)", (string?)first["where"]);
        Assert.Equal(329, (double?)json["value"]);
    }
}
