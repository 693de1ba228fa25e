using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Sections;

/// <summary>Seed kept back against each need, opening into the runs that make it.</summary>
internal static class SeedSection
{
    public static MarkupText Write(Season season, PlanAnswer answer, Reader reader)
    {
        MarkupText section = Section.Begin("seed", reader.Say(Say.SeedTitle));
        if (season.SeedNeeds.Count == 0)
        {
            return section.Lead(reader.Say(Say.FigureSeedNone)).End();
        }
        double Kept(SeedNeed need) => answer.Seed.Where(s => s.Variety == need.Variety && s.By == need.By && s.NeedClass == need.Class).Sum(s => s.Cloves);
        double missing = season.SeedNeeds.Sum(n => Missing(n, Kept(n)));
        section.Lead(missing <= 0 ? reader.Say(Say.SeedAllKept) : reader.Say(Say.SeedMissing, reader.Mass(missing)));
        section.Add(new DataTable(reader.Say(Say.SeedCaption),
            [new(reader.Say(Say.Variety)), new(reader.Say(Say.ByHead)), new(reader.Say(Say.SeedClassHead)), new(reader.Say(Say.NeedHead, reader.MassUnitName), true),
                new(reader.Say(Say.KeptHead, reader.MassUnitName), true), new(reader.Say(Say.MissingHead, reader.MassUnitName), true), new(reader.Say(Say.MissingCostHead), true)],
            [.. season.SeedNeeds.Select(n => (IReadOnlyList<Cell>)[n.Variety.Text, reader.DayYear(n.By), n.Class.ToString(), reader.MassNumber(n.Net), reader.MassNumber(Kept(n)),
                reader.MassNumber(Missing(n, Kept(n))), reader.Money(Missing(n, Kept(n)) * (double)n.ShortCost)])],
            [reader.Say(Say.Total), "", "", reader.MassNumber(season.SeedNeeds.Sum(n => n.Net)), reader.MassNumber(season.SeedNeeds.Sum(Kept)), reader.MassNumber(missing),
                reader.Money(season.SeedNeeds.Sum(n => Missing(n, Kept(n)) * (double)n.ShortCost))]).Write("seed-needs"));
        if (answer.Seed.Count > 0)
        {
            section.Fold(reader.Say(Say.SeedRunsFold, answer.Seed.Count), new DataTable(reader.Say(Say.SeedRunsCaption),
                [new(reader.Say(Say.WeekHead)), new(reader.Say(Say.Lot)), new(reader.Say(Say.SeedClassHead)), new(reader.Say(Say.Variety)), new(reader.Say(Say.ByHead)), new(reader.Say(Say.KeptHead, reader.MassUnitName), true)],
                [.. answer.Seed.OrderBy(s => s.Week).Select(s => (IReadOnlyList<Cell>)[reader.Week(s.Week), s.Lot.Text, s.SeedClass.ToString(), s.Variety.Text, reader.DayYear(s.By), reader.MassNumber(s.Cloves)])],
                [reader.Say(Say.Total), "", "", "", "", reader.MassNumber(answer.Seed.Sum(s => s.Cloves))]).Write("seed-runs"));
        }
        return section.End();
    }

    // Under a millionth of the need is the rounding of the written rows, not a shortfall.
    private static double Missing(SeedNeed need, double kept) => need.Net - kept <= need.Net * 1e-6 ? 0 : need.Net - kept;
}
