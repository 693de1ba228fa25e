using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Sections;

/// <summary>Seed kept back against each need, opening into the runs that make it.</summary>
public static class SeedSection
{
    public static MarkupText Write(Season season, PlanAnswer answer, Reader reader)
    {
        MarkupText section = Section.Begin("seed", reader.Say(Say.SeedTitle));
        if (season.SeedNeeds.Count == 0)
        {
            return section.Lead(reader.Say(Say.FigureSeedNone)).End();
        }
        double missing = season.SeedNeeds.Sum(n => Missing(n, Kept(n, answer)));
        section.Lead(missing <= 0 ? reader.Say(Say.SeedAllKept) : reader.Say(Say.SeedMissing, reader.Mass(missing)));
        section.Add(Needs(season, answer, reader).Write("seed-needs"));
        if (answer.Seed.Count > 0)
        {
            section.Fold(reader.Say(Say.SeedRunsFold, answer.Seed.Count), new DataTable(reader.Say(Say.SeedRunsCaption),
                [new(reader.Say(Say.WeekHead)), new(reader.Say(Say.Lot)), new(reader.Say(Say.SeedClassHead)), new(reader.Say(Say.Variety)), new(reader.Say(Say.ByHead)), new(reader.Say(Say.KeptHead, reader.MassUnitName), true)],
                [.. answer.Seed.OrderBy(s => s.Week).Select(s => (IReadOnlyList<Cell>)[reader.Week(s.Week), s.Lot.Text, s.SeedClass.ToString(), s.Variety.Text, reader.DayYear(s.By), reader.MassNumber(s.Cloves)])],
                [reader.Say(Say.Total), "", "", "", "", reader.MassNumber(answer.Seed.Sum(s => s.Cloves))]).Write("seed-runs"));
        }
        return section.End();
    }

    /// <summary>Each need with what is kept for it.</summary>
    public static DataTable Needs(Season season, PlanAnswer answer, Reader reader) => new(
        reader.Say(Say.SeedCaption),
        [new(reader.Say(Say.Variety)), new(reader.Say(Say.ByHead)), new(reader.Say(Say.SeedClassHead)), new(reader.Say(Say.NeedHead, reader.MassUnitName), true),
            new(reader.Say(Say.KeptHead, reader.MassUnitName), true), new(reader.Say(Say.MissingHead, reader.MassUnitName), true), new(reader.Say(Say.MissingCostHead), true)],
        [.. season.SeedNeeds.Select(n => (IReadOnlyList<Cell>)[n.Variety.Text, reader.DayYear(n.By), n.Class.ToString(), reader.MassNumber(n.Net), reader.MassNumber(Kept(n, answer)),
            reader.MassNumber(Missing(n, Kept(n, answer))), reader.Money(Missing(n, Kept(n, answer)) * (double)n.ShortCost)])],
        [reader.Say(Say.Total), "", "", reader.MassNumber(season.SeedNeeds.Sum(n => n.Net)), reader.MassNumber(season.SeedNeeds.Sum(n => Kept(n, answer))),
            reader.MassNumber(season.SeedNeeds.Sum(n => Missing(n, Kept(n, answer)))), reader.Money(season.SeedNeeds.Sum(n => Missing(n, Kept(n, answer)) * (double)n.ShortCost))], Stacking.Phone);

    /// <summary>Of all needs, what is served: more than a need asks for does not make up for another.</summary>
    public static double Served(Season season, PlanAnswer answer) => season.SeedNeeds.Sum(n => n.Net - Missing(n, Kept(n, answer)));

    private static double Kept(SeedNeed need, PlanAnswer answer) =>
        answer.Seed.Where(s => s.Variety == need.Variety && s.By == need.By && s.NeedClass == need.Class).Sum(s => s.Cloves);

    // Under a millionth of the need is the rounding of the written rows, not a shortfall.
    private static double Missing(SeedNeed need, double kept) => need.Net - kept <= need.Net * 1e-6 ? 0 : need.Net - kept;
}
