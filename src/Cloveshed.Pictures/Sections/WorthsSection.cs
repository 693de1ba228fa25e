using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;
using NodaTime.Text;

namespace Cloveshed.Pictures.Sections;

/// <summary>What one more line hour, hour of people or bin place would add to the season: where money is lost for want of room.</summary>
public static class WorthsSection
{
    /// <summary>Kinds shown here. Products are in the promise strip, lots in the board's table.</summary>
    private static readonly string[] Kinds = ["line", "people", "place", "seed"];

    /// <summary>Less than this in every week, in money, holds nothing back.</summary>
    private const double Least = 0.005;

    public static MarkupText Write(Season season, PlanAnswer answer, Reader reader)
    {
        MarkupText section = Section.Begin("worths", reader.Say(Say.WorthsTitle));
        section.Lead(reader.Say(Say.WorthsLead));
        var names = answer.Worths.Where(w => Kinds.Contains(w.Kind)).GroupBy(w => (w.Kind, w.Name))
            .Select(g => (g.Key.Kind, Name: Name(g.Key.Kind, g.Key.Name, season, reader), Rows: g.OrderBy(w => w.Week).ToList()))
            .OrderBy(g => Array.IndexOf(Kinds, g.Kind)).ThenByDescending(g => g.Rows.Max(w => w.Value)).ToList();
        if (names.Count == 0)
        {
            return section.Element("p", reader.Say(Say.WorthsNone)).End();
        }
        var scarce = names.Where(n => n.Rows.Any(r => r.Value > Least)).ToList();
        if (scarce.Count > 0)
        {
            section.Add(new DataTable(reader.Say(Say.WorthsCaption),
                [new(reader.Say(Say.KindHead)), new(reader.Say(Say.NameHead)), new(reader.Say(Say.OneMoreHead)), new(reader.Say(Say.WeeksBindingHead), true), new(reader.Say(Say.MostHead), true), new(reader.Say(Say.MostInHead))],
                [.. scarce.Select(n => (IReadOnlyList<Cell>)[Kind(n.Kind, reader), n.Name, Unit(n.Kind, reader), reader.Number(n.Rows.Count(r => r.Value > Least), 0),
                    Value(n.Kind, n.Rows.Max(r => r.Value), reader), n.Rows.MaxBy(r => r.Value)!.Week is { } w ? reader.Week(w) : "–"])], Stacks: Stacking.Phone).Write("worths"));
        }
        string[] never = [.. names.Except(scarce).Select(n => n.Name)];
        if (never.Length > 0)
        {
            section.Element("p", reader.Say(Say.WorthsNever, string.Join(", ", never)));
        }
        var byWeek = scarce.SelectMany(n => n.Rows.Where(r => r.Week is not null && r.Value > Least).Select(r => (n.Name, Row: r))).ToList();
        if (byWeek.Count > 0)
        {
            section.Fold(reader.Say(Say.WorthsFold, byWeek.Count), new DataTable(reader.Say(Say.WorthsByWeekCaption),
                [new(reader.Say(Say.KindHead)), new(reader.Say(Say.NameHead)), new(reader.Say(Say.WeekHead)), new(reader.Say(Say.OneMoreHead), true)],
                [.. byWeek.Select(r => (IReadOnlyList<Cell>)[Kind(r.Row.Kind, reader), r.Name, reader.Week(r.Row.Week!.Value), Value(r.Row.Kind, r.Row.Value, reader)])]).Write("worths-by-week"));
        }
        return section.End();
    }

    /// <summary>Seed is named in the answer by variety, class and ISO day; a season's people have no name.</summary>
    private static string Name(string kind, string name, Season season, Reader reader) => kind switch
    {
        "people" => reader.Say(Say.WorthAllLines),
        "seed" when season.SeedNeeds.FirstOrDefault(n => $"{n.Variety} {n.Class} {LocalDatePattern.Iso.Format(n.By)}" == name) is { } need =>
            reader.Say(Say.WorthSeedName, need.Variety, need.Class, reader.DayYear(need.By)),
        _ => name,
    };

    private static string Kind(string kind, Reader reader) => reader.Say(kind switch
    {
        "line" => Say.WorthLine,
        "people" => Say.WorthPeople,
        "place" => Say.WorthPlace,
        _ => Say.WorthSeed,
    });

    private static string Unit(string kind, Reader reader) => kind switch
    {
        "line" or "people" => reader.Say(Say.WorthPerHour),
        "place" => reader.Say(Say.WorthPerBin),
        _ => reader.Say(Say.WorthPerMass, reader.MassUnitName),
    };

    private static string Value(string kind, double value, Reader reader) => reader.Price(kind == "seed" ? value / reader.ShownPerSeasonUnit : value);
}
