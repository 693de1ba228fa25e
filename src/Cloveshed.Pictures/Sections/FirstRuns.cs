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
        MarkupText section = Section.Begin("first", reader.Say(Say.FirstTitle), "runs");
        RunRow[] runs = [.. answer.Runs.Where(r => r.Week >= from && r.Week < from + WeeksAhead)];
        if (runs.Length == 0)
        {
            return section.Lead(reader.Say(Say.FirstNone, reader.WeekYear(from), reader.WeekYear(from + 1))).End();
        }
        section.Lead(reader.Say(Say.FirstLead, reader.Week(from), reader.Week(from + 1)));
        ILookup<(string, LotId), MadeRow> made = answer.Made.ToLookup(m => (m.Run, m.Lot));
        ILookup<(string, LotId), SeedRow> seed = answer.Seed.ToLookup(s => (s.Run, s.Lot));
        // A run may take one lot from several paths or places: one line to do, with all its pounds.
        var rows = runs.GroupBy(r => (r.Week, r.Run, r.Line, r.Mode, r.Lot, r.FromSorted))
            .OrderBy(g => g.Key.Week).ThenBy(g => g.Key.Line.Text, StringComparer.Ordinal).ThenByDescending(g => g.Sum(r => r.MassIn))
            .Select(g => (IReadOnlyList<Cell>)
            [
                reader.Week(g.Key.Week), g.Key.Line.Text, g.Key.FromSorted ? reader.Say(Say.SortedOf, g.Key.Lot) : g.Key.Lot.Text,
                string.Join(", ", g.Select(r => r.Place?.Text).Where(p => p is not null).Distinct()), reader.Mode(g.Key.Mode), reader.MassNumber(g.Sum(r => r.MassIn)),
                reader.Number(g.Sum(r => r.Hours + r.OvertimeHours), 1), Into(made[(g.Key.Run, g.Key.Lot)], seed[(g.Key.Run, g.Key.Lot)], reader),
                reader.Planner(string.Join("; ", g.Select(r => r.Reason).Where(r => r.Length > 0).Distinct())),
            ]);
        section.Add(new DataTable(reader.Say(Say.FirstCaption, reader.DayYear(season.Settings.Monday(from + WeeksAhead).PlusDays(-1))),
            [new(reader.Say(Say.WeekHead)), new(reader.Say(Say.LineHead)), new(reader.Say(Say.Lot)), new(reader.Say(Say.FromPlaceHead)), new(reader.Say(Say.WorkHead)),
                new(reader.Say(Say.MassHead, reader.MassUnitName), true), new(reader.Say(Say.HoursHead), true), new(reader.Say(Say.IntoHead), Wide: true), new(reader.Say(Say.ReasonHead), Wide: true)],
            [.. rows], [reader.Say(Say.Total), "", "", "", "", reader.MassNumber(runs.Sum(r => r.MassIn)), reader.Number(runs.Sum(r => r.Hours + r.OvertimeHours), 1), "", ""], Stacks: Stacking.Tablet).Write("first"));
        return section.End();
    }

    private static string Into(IEnumerable<MadeRow> made, IEnumerable<SeedRow> seed, Reader reader) => string.Join(", ",
        made.GroupBy(m => m.Product).Where(g => g.Sum(m => m.Units) >= 0.5).OrderByDescending(g => g.Sum(m => m.Mass)).Select(g => reader.Say(Say.IntoUnits, reader.Number(g.Sum(m => m.Units), 0), g.Key))
            .Concat(seed.GroupBy(s => s.Variety).Select(g => reader.Say(Say.IntoSeed, reader.Mass(g.Sum(s => s.Cloves)), g.Key))));
}
