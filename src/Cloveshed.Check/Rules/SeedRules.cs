using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>seed.csv: cloves from seed runs of fit lots, for a need of the season, in time, no more than the run gives.</summary>
internal static class SeedRules
{
    public static void Check(SeasonData season, AnswerData answer, RunSums runs, Findings findings)
    {
        var cloves = new Dictionary<RunLot, double>();
        foreach (SeedRow row in answer.Seed)
        {
            Lot lot = season.Lots[row.Lot];
            Fit(row, lot, findings);
            if (!season.SeedNeeds.ContainsKey((row.Variety, row.By, row.NeedClass)) || row.Variety != lot.Variety)
            {
                findings.Add(
                    RuleNames.SeedNeed, row.Where, $"variety {row.Variety} by {Figures.Show(row.By)}, class {row.NeedClass}, from lot {lot.Name} of variety {lot.Variety}",
                    "a row of seed-needs.csv, of the lot's variety");
            }

            if (row.Week > season.Calendar.WeekOf(row.By))
            {
                findings.Add(
                    RuleNames.SeedLate, row.Where, $"week {season.Calendar.Show(row.Week)}", $"at latest {season.Calendar.Show(season.Calendar.WeekOf(row.By))}");
            }

            if (runs.Find(row.Run, row.Lot) is { Mode: "seed" } run && run.Week == row.Week)
            {
                cloves[run] = cloves.GetValueOrDefault(run) + row.Cloves;
            }
            else
            {
                findings.Add(
                    RuleNames.SeedRun, row.Where, $"run {row.Run}, lot {row.Lot}, week {season.Calendar.Show(row.Week)}", "a seed run of runs.csv with that lot in that week");
            }
        }

        foreach ((RunLot run, double mass) in cloves)
        {
            double most = run.Fresh * season.Kept("seed");
            if (!Tolerance.AtMost(mass, most, run.MassIn))
            {
                findings.Over(RuleNames.SeedAmount, $"seed.csv run {run.Run}, lot {run.Lot.Name}", "cloves", mass, most);
            }
        }
    }

    // The classes' names are in order: A before B before C.
    private static void Fit(SeedRow row, Lot lot, Findings findings)
    {
        if (row.SeedClass != lot.SeedClass || string.CompareOrdinal(lot.SeedClass, row.NeedClass) > 0)
        {
            findings.Add(
                RuleNames.SeedClass, row.Where, $"class {row.SeedClass} for a need of {row.NeedClass}",
                lot.SeedClass.Length == 0 ? $"nothing: lot {lot.Name} is not fit for seed" : $"the lot's class {lot.SeedClass}, for a need of that or below");
        }

        if (lot.Inhibitor)
        {
            findings.Add(RuleNames.SeedInhibitor, row.Where, $"lot {lot.Name}, with a sprout inhibitor", "a lot without");
        }
    }
}
