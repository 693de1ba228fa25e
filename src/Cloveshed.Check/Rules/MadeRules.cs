using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>made.csv: no more of a class or grade than the run holds, of the right form, organic from organic only.</summary>
internal static class MadeRules
{
    public static void Check(SeasonData season, AnswerData answer, RunSums runs, ShareRules shares, Findings findings)
    {
        var made = new Dictionary<(RunLot Run, bool Bulb, string From), double>();
        foreach (MadeRow row in answer.Made)
        {
            Product product = season.Products[row.Product];
            if (!Tolerance.Same(row.Mass, row.Units * product.Net))
            {
                findings.NotSame(RuleNames.MadeMass, row.Where, "mass", row.Mass, row.Units * product.Net);
            }

            if (product.Organic && !season.Lots[row.Lot].Organic)
            {
                findings.Add(RuleNames.Organic, row.Where, $"{product.Name} from lot {row.Lot}", "an organic lot");
            }

            if (runs.Find(row.Run, row.Lot) is not RunLot run || run.Week != row.Week)
            {
                findings.Add(
                    RuleNames.MadeRun, row.Where, $"run {row.Run}, lot {row.Lot}, week {season.Calendar.Show(row.Week)}", "a run of runs.csv with that lot in that week");
                continue;
            }

            if (run.Mode != (product.IsBulb ? "fresh" : "crack"))
            {
                findings.Add(
                    RuleNames.MadeForm, row.Where, $"{product.Form}s from a {run.Mode} line", product.IsBulb ? "bulbs from a fresh line" : "cloves from a crack line");
                continue;
            }

            // The greater of the two figures counts, so that neither can hide behind the other.
            (RunLot, bool, string) key = (run, product.IsBulb, product.From);
            made[key] = made.GetValueOrDefault(key) + Math.Max(row.Mass, row.Units * product.Net);
        }

        foreach (((RunLot run, bool bulb, string from), double mass) in made)
        {
            Amount(season, run, bulb, from, mass, shares, findings);
        }
    }

    private static void Amount(SeasonData season, RunLot run, bool bulb, string from, double mass, ShareRules shares, Findings findings)
    {
        string where = $"made.csv run {run.Run}, lot {run.Lot.Name}, {(bulb ? "class" : "grade")} {from}";
        if (shares.Of(run.Lot.Name, bulb, from) is not double share)
        {
            findings.Add(RuleNames.SharesMissing, where, $"no {(bulb ? "bulb class" : "clove grade")} of lot {run.Lot.Name} in shares.csv", "the shares of every lot that is run");
            return;
        }

        double good = bulb ? run.Fresh * season.Kept("fresh") : Crackable(run) * season.Kept("crack");
        if (!Tolerance.AtMost(mass, good * share, run.MassIn))
        {
            findings.Over(bulb ? RuleNames.MadeSize : RuleNames.MadeGrade, where, "mass", mass, good * share);
        }
    }

    /// <summary>What a cracker run may make cloves of: all that is sound of a lot, and all that was sorted out, for waste was left there.</summary>
    private static double Crackable(RunLot run) => run.Sorted ? run.MassIn : run.Fresh + run.Crack;
}
