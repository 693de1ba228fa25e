using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Sections;

/// <summary>What one more line hour, hour of people or bin place would add to the season: where money is lost for want of room.</summary>
internal static class WorthsSection
{
    /// <summary>Kinds shown here. Products are in the promise strip, lots in the board's table.</summary>
    private static readonly string[] Kinds = ["line", "people", "place", "seed"];

    public static MarkupText Write(PlanAnswer answer, Reader reader)
    {
        MarkupText section = Section.Begin("worths", reader.Say(Say.WorthsTitle));
        section.Lead(reader.Say(Say.WorthsLead));
        var names = answer.Worths.Where(w => Kinds.Contains(w.Kind)).GroupBy(w => (w.Kind, w.Name))
            .Select(g => (g.Key.Kind, g.Key.Name, Rows: g.OrderBy(w => w.Week).ToList()))
            .OrderBy(g => Array.IndexOf(Kinds, g.Kind)).ThenByDescending(g => g.Rows.Max(w => w.Value)).ToList();
        if (names.Count == 0)
        {
            return section.Element("p", reader.Say(Say.WorthsNone)).End();
        }
        section.Add(new DataTable(reader.Say(Say.WorthsCaption),
            [new(reader.Say(Say.KindHead)), new(reader.Say(Say.NameHead)), new(reader.Say(Say.OneMoreHead)), new(reader.Say(Say.WeeksBindingHead), true), new(reader.Say(Say.MostHead), true), new(reader.Say(Say.MostInHead))],
            [.. names.Select(n => (IReadOnlyList<Cell>)[Kind(n.Kind, reader), n.Name, Unit(n.Kind, reader), reader.Number(n.Rows.Count(r => r.Value > 0.005), 0),
                Value(n.Kind, n.Rows.Max(r => r.Value), reader), n.Rows.MaxBy(r => r.Value)!.Week is { } w ? reader.Week(w) : "–"])]).Write("worths"));
        WorthRow[] byWeek = [.. names.SelectMany(n => n.Rows).Where(r => r.Week is not null && r.Value > 0.005)];
        if (byWeek.Length > 0)
        {
            section.Fold(reader.Say(Say.WorthsFold, byWeek.Length), new DataTable(reader.Say(Say.WorthsByWeekCaption),
                [new(reader.Say(Say.KindHead)), new(reader.Say(Say.NameHead)), new(reader.Say(Say.WeekHead)), new(reader.Say(Say.OneMoreHead), true)],
                [.. byWeek.Select(r => (IReadOnlyList<Cell>)[Kind(r.Kind, reader), r.Name, reader.Week(r.Week!.Value), Value(r.Kind, r.Value, reader)])]).Write("worths-by-week"));
        }
        return section.End();
    }

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

    private static string Value(string kind, double value, Reader reader) => kind == "seed" ? reader.PricePerMass(value) : reader.Price(value);
}
