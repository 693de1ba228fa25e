using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Sections;

/// <summary>What to do first: the runs of the next two weeks with what each makes and why.</summary>
internal static class FirstRuns
{
    private const int WeeksAhead = 2;

    public static MarkupText Write(Season season, PlanAnswer answer, Reader reader)
    {
        int from = season.Settings.AsOfWeek;
        ILookup<(string, LotId), MadeRow> made = answer.Made.ToLookup(m => (m.Run, m.Lot));
        ILookup<(string, LotId), SeedRow> seed = answer.Seed.ToLookup(s => (s.Run, s.Lot));
        MarkupText section = Section.Begin("first", reader.Say(Say.FirstTitle), "runs");
        section.Lead(reader.Say(Say.FirstLead, reader.Week(from), reader.Week(from + 1)));
        for (int week = from; week < from + WeeksAhead; week++)
        {
            List<IReadOnlyList<Cell>> rows = [];
            int w = week;
            // A run may take one lot from several paths or places: one line to do, with all its pounds.
            foreach (var run in answer.Runs.Where(r => r.Week == w).GroupBy(r => (r.Run, r.Line, r.Mode, r.Lot, r.FromSorted))
                .OrderBy(g => g.Key.Line.Text, StringComparer.Ordinal).ThenByDescending(g => g.Sum(r => r.MassIn)))
            {
                IEnumerable<string> into = made[(run.Key.Run, run.Key.Lot)].GroupBy(m => m.Product).OrderByDescending(g => g.Sum(m => m.Mass))
                    .Select(g => reader.Say(Say.IntoUnits, reader.Number(g.Sum(m => m.Units), 0), g.Key))
                    .Concat(seed[(run.Key.Run, run.Key.Lot)].GroupBy(s => s.Variety).Select(g => reader.Say(Say.IntoSeed, reader.Mass(g.Sum(s => s.Cloves)), g.Key)));
                rows.Add([run.Key.Line.Text, run.Key.FromSorted ? reader.Say(Say.SortedOf, run.Key.Lot) : run.Key.Lot.Text,
                    string.Join(", ", run.Select(r => r.Place?.Text).Where(p => p is not null).Distinct()), reader.Mode(run.Key.Mode),
                    reader.MassNumber(run.Sum(r => r.MassIn)), reader.Number(run.Sum(r => r.Hours + r.OvertimeHours), 1),
                    string.Join(", ", into), new Cell(string.Join(" ", run.Select(r => r.Reason).Where(r => r.Length > 0).Distinct()), reader.PlannerLanguage)]);
            }
            if (rows.Count == 0)
            {
                section.Element("p", reader.Say(Say.FirstNone, reader.WeekYear(week)));
                continue;
            }
            section.Add(new DataTable(reader.Say(Say.FirstCaption, reader.WeekYear(week)),
                [new(reader.Say(Say.LineHead)), new(reader.Say(Say.Lot)), new(reader.Say(Say.FromPlaceHead)), new(reader.Say(Say.WorkHead)), new(reader.Say(Say.MassHead, reader.MassUnitName), true),
                    new(reader.Say(Say.HoursHead), true), new(reader.Say(Say.IntoHead)), new(reader.Say(Say.ReasonHead))],
                rows).Write($"first-{week}"));
        }
        return section.End();
    }
}
