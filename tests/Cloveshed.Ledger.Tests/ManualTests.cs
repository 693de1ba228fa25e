using System.Text.RegularExpressions;
using Cloveshed.Ledger.Appending;

namespace Cloveshed.Ledger.Tests;

/// <summary>docs/manual/ledger.md lists every kind of fact, every rule of refusal and everything that verify names, and nothing else.</summary>
public sealed class ManualTests
{
    private static readonly string Page = SourceTree.Manual("ledger.md");

    private static string Section(string title) => Page.Split($"\n## {title}\n")[1].Split("\n## ")[0];

    private static IEnumerable<string> Coded(string text) => Regex.Matches(text, "`([^`\n]+)`").Select(match => match.Groups[1].Value);

    [Fact]
    public void Every_kind_of_fact_is_listed()
    {
        string[] listed = [.. Coded(Section("Kinds of facts")).Distinct().Where(code => FactKinds.All.Contains(code) || Regex.IsMatch(code, @"^[a-z-]+\.(entered|changed|dropped)$"))];
        Assert.Equal(FactKinds.All.Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Every_rule_of_refusal_is_listed()
    {
        string[] listed = [.. Regex.Matches(Section("Why a fact is refused"), "(?m)^\\| `([^`]+)`").Select(match => match.Groups[1].Value).Where(rule => rule != "season-…")];
        Assert.Equal(RefusalTexts.Rules.Order(StringComparer.Ordinal), listed.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Everything_that_verify_names_is_listed()
    {
        string source = File.ReadAllText(Path.Combine(SourceTree.Root, "src", "Cloveshed.Ledger", "Proofs", "LedgerProof.cs"));
        string[] named = [.. Regex.Matches(source, "new(?: LedgerFlaw)?\\(\"([a-z]+)\"").Select(match => match.Groups[1].Value).Distinct()];
        Assert.NotEmpty(named);
        Assert.Equal(named.Order(StringComparer.Ordinal), Coded(Section("What verify names")).Where(code => !code.Contains(' ')).Distinct().Order(StringComparer.Ordinal));
    }

    /// <summary>A kind's body keys are those that its maker writes.</summary>
    [Fact]
    public void Bodies_are_listed_with_their_keys()
    {
        using Shed shed = Shed.WithSeason();
        string[] opened = [.. shed.Ledger.Read(most: 1).Single().Body.EnumerateObject().Select(member => member.Name).Where(key => key != "v")];
        string row = Regex.Match(Section("Kinds of facts"), @"(?m)^\| `season\.opened` \| ([^|]+) \|").Groups[1].Value;
        Assert.Equal(opened.Order(StringComparer.Ordinal), row.Split(", ").Order(StringComparer.Ordinal));
    }
}
