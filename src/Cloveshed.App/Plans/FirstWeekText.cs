using Cloveshed.App.Words;
using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.App.Plans;

/// <summary>What to run in the first week with any runs: by line, with what each run makes and why.</summary>
internal static class FirstWeekText
{
    public static IEnumerable<string> Lines(PlanOutcome.Written written, Reader reader, Phrasebook phrases)
    {
        PlanAnswer answer = written.Answer;
        int asOf = written.Season.Settings.AsOfWeek;
        int[] weeks = [.. answer.Runs.Select(run => run.Week).Where(week => week >= asOf)];
        if (weeks.Length == 0)
        {
            yield return phrases[Phrase.FirstNone];
            yield break;
        }

        int first = weeks.Min();
        yield return phrases.Say(Phrase.FirstHead, reader.WeekYear(first));
        ILookup<(string, LotId), MadeRow> made = answer.Made.ToLookup(row => (row.Run, row.Lot));
        ILookup<(string, LotId), SeedRow> seed = answer.Seed.ToLookup(row => (row.Run, row.Lot));
        var byLine = answer.Runs.Where(run => run.Week == first).GroupBy(run => run.Line).OrderBy(line => line.Key.Text, StringComparer.Ordinal);
        foreach (IGrouping<LineId, RunRow> line in byLine)
        {
            yield return "  " + phrases.Say(Phrase.FirstLine, line.Key, reader.Mode(line.First().Mode), reader.Mass(line.Sum(run => run.MassIn)), reader.Hours(line.Sum(run => run.Hours)), reader.Hours(line.Sum(run => run.OvertimeHours)));
            // One lot from several places is one thing to do.
            foreach (var run in line.GroupBy(row => (row.Run, row.Lot, row.FromSorted)).OrderByDescending(run => run.Sum(row => row.MassIn)))
            {
                string lot = run.Key.FromSorted ? reader.Say(Say.SortedOf, run.Key.Lot) : run.Key.Lot.Text;
                string places = string.Join(", ", run.Select(row => row.Place?.Text).OfType<string>().Distinct());
                string[] into =
                [
                    .. made[(run.Key.Run, run.Key.Lot)].GroupBy(row => row.Product).OrderByDescending(product => product.Sum(row => row.Mass))
                        // Units are expectations: a tenth of a carton is nothing to pack.
                        .Where(product => product.Sum(row => row.Units) >= 0.5)
                        .Select(product => reader.Say(Say.IntoUnits, reader.Number(product.Sum(row => row.Units), 0), product.Key)),
                    .. seed[(run.Key.Run, run.Key.Lot)].GroupBy(row => row.Variety).Select(variety => reader.Say(Say.IntoSeed, reader.Mass(variety.Sum(row => row.Cloves)), variety.Key)),
                ];
                yield return $"    {lot}{(places.Length > 0 ? $" ({places})" : "")}, {reader.Mass(run.Sum(row => row.MassIn))}{(into.Length > 0 ? ": " + string.Join(", ", into) : "")}";
                string reason = string.Join(Remarks.Between, run.Select(row => row.Reason).Where(text => text.Length > 0).Distinct());
                if (reason.Length > 0)
                {
                    yield return "      " + reader.Reason(reason);
                }
            }
        }

        yield return "  " + reader.Say(Say.CautionMachines);
    }
}
