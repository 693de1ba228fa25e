using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>
/// shares.csv: each kind of a lot sums to 1, and is the lot's own size curve where lots.csv gives mean_g and cv and varieties.csv the
/// law. Where they are empty the plan knows the lot from samples or from its like, and only the sum can be checked.
/// </summary>
internal sealed class ShareRules
{
    private const string Bulbs = "bulb class";
    private const string Cloves = "clove grade";

    private readonly Dictionary<(string Lot, string Kind), Dictionary<string, double>> shares = [];

    public static ShareRules Check(SeasonData season, AnswerData answer, Findings findings)
    {
        var rules = new ShareRules();
        foreach (IGrouping<(string Lot, string Kind), ShareRow> group in answer.Shares.GroupBy(row => (row.Lot, row.Kind)))
        {
            bool bulbs = group.Key.Kind == Bulbs;
            IReadOnlyList<Window> windows = bulbs ? season.Sizes : season.Grades;
            string rest = bulbs ? "under" : "ungraded";
            var byName = new Dictionary<string, double>();
            foreach (ShareRow row in group)
            {
                byName[row.Name] = byName.GetValueOrDefault(row.Name) + row.Share;
                if (row.Name != rest && !windows.Any(window => window.Name == row.Name))
                {
                    findings.Add(RuleNames.UnknownName, $"shares.csv line {row.Line}", row.Name, $"a {group.Key.Kind} of the season, or {rest}");
                }
            }

            rules.shares.Add(group.Key, byName);
            string where = $"shares.csv lot {group.Key.Lot}, {group.Key.Kind}";
            double sum = byName.Values.Sum();
            if (!(Math.Abs(sum - 1) <= Tolerance.Share))
            {
                findings.NotSame(RuleNames.SharesSum, where, "sum", sum, 1);
            }

            Lot lot = season.Lots[group.Key.Lot];
            if ((bulbs ? OfBulbs(season, lot) : OfCloves(season, lot)) is double[] expected)
            {
                for (int i = 0; i < windows.Count; i++)
                {
                    Compare($"{where} {windows[i].Name}", byName.GetValueOrDefault(windows[i].Name), expected[i], findings);
                }

                // What no window holds, also above the last where that has an end.
                Compare($"{where} {rest}", byName.GetValueOrDefault(rest), 1 - expected.Sum(), findings);
            }
        }

        return rules;
    }

    /// <summary>The share that a lot has in a size class or clove grade, as written; null where the lot has none of that kind.</summary>
    public double? Of(string lot, bool bulbs, string name) =>
        shares.TryGetValue((lot, bulbs ? Bulbs : Cloves), out Dictionary<string, double>? known) ? known.GetValueOrDefault(name) : null;

    private static void Compare(string where, double found, double expected, Findings findings)
    {
        if (Math.Abs(found - expected) > Tolerance.Share)
        {
            findings.NotSame(RuleNames.SharesCurve, where, "share", found, expected);
        }
    }

    private static double[]? OfBulbs(SeasonData season, Lot lot) =>
        lot.MeanG is double mean && lot.Cv is double cv && season.Varieties[lot.Variety].Bulb is MassLaw law
            ? SizeCurve.Shares(mean, cv, law, season.Sizes)
            : null;

    private static double[]? OfCloves(SeasonData season, Lot lot)
    {
        Variety variety = season.Varieties[lot.Variety];
        return lot.MeanG is double mean && variety.ClovesPerBulb is double count and > 0 && variety.CloveCv is double cv
            && variety.Clove is MassLaw law && season.KeptShares.TryGetValue("crack", out double kept)
            ? SizeCurve.Shares(mean * kept / count, cv, law, season.Grades)
            : null;
    }
}
