using System.Globalization;
using System.Text.Json.Nodes;

namespace Cloveshed.Check;

/// <summary>One thing in an answer that the season does not allow.</summary>
/// <param name="Rule">A stable name from <see cref="RuleNames"/>, explained in the manual page check-plan.</param>
/// <param name="Where">The file, and the line number or the row's key.</param>
/// <param name="Found">What the answer says.</param>
/// <param name="Allowed">What it may say.</param>
public sealed record Breach(string Rule, string Where, string Found, string Allowed);

/// <summary>What the check found.</summary>
/// <param name="Breaches">Empty where the answer holds.</param>
/// <param name="Value">
/// The value as recomputed from the files, in the season's currency; null where a CSV file or a row of the answer could not be
/// read, for then nothing sound could be summed.
/// </param>
public sealed record CheckResult(IReadOnlyList<Breach> Breaches, double? Value)
{
    /// <summary>Whether the answer holds: no breach at all.</summary>
    public bool Holds => Breaches.Count == 0;

    /// <summary>The answer of the command check-plan: {breaches: [{rule, where, found, allowed}], value}.</summary>
    public JsonObject ToJson()
    {
        var breaches = new JsonArray();
        foreach (Breach breach in Breaches)
        {
            breaches.Add(new JsonObject
            {
                ["rule"] = breach.Rule, ["where"] = breach.Where, ["found"] = breach.Found, ["allowed"] = breach.Allowed,
            });
        }

        return new JsonObject { ["breaches"] = breaches, ["value"] = Value };
    }
}

/// <summary>The list that every rule writes to.</summary>
internal sealed class Findings
{
    private readonly List<Breach> breaches = [];

    public IReadOnlyList<Breach> All => breaches;

    public bool None => breaches.Count == 0;

    public void Add(string rule, string where, string found, string allowed) =>
        breaches.Add(new Breach(rule, where, found, allowed));

    /// <summary>A figure that is not the figure it should be.</summary>
    public void NotSame(string rule, string where, string what, double found, double expected) =>
        Add(rule, where, $"{what} {Figures.Show(found)}", Figures.Show(expected));

    /// <summary>A figure above its limit.</summary>
    public void Over(string rule, string where, string what, double found, double limit) =>
        Add(rule, where, $"{what} {Figures.Show(found)}", $"at most {Figures.Show(limit)}");

    /// <summary>A figure below its limit.</summary>
    public void Under(string rule, string where, string what, double found, double limit) =>
        Add(rule, where, $"{what} {Figures.Show(found)}", $"at least {Figures.Show(limit)}");
}

/// <summary>Figures as they stand in a breach: ten significant digits, a point, no grouping; dates as ISO dates.</summary>
internal static class Figures
{
    public static string Show(double figure) => figure.ToString("G10", CultureInfo.InvariantCulture);

    public static string Show(DateOnly date) => date.ToString("O", CultureInfo.InvariantCulture);
}
