using Cloveshed.Core.Answers;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Sections;

/// <summary>What the plan rests on: defaults with what a fifth more or less of each would change, and warnings.</summary>
public static class BasisSection
{
    /// <summary>Those that matter most, on the page; all of them are in the fold.</summary>
    private const int DefaultsShown = 10;

    public static MarkupText Write(PlanAnswer answer, Reader reader)
    {
        MarkupText section = Section.Begin("basis", reader.Say(Say.BasisTitle));
        IReadOnlyList<DefaultUsed> defaults = answer.Summary.Defaults;
        // What a fifth would change is a plan of its own each: where none was made there is nothing to rank or to show.
        bool changes = defaults.Any(d => d.MinusFifth is not null || d.PlusFifth is not null);
        section.Lead(defaults.Count == 0 ? reader.Say(Say.DefaultsNone)
            : reader.Say(Say.DefaultsLead, defaults.Count) + (changes ? " " + reader.Say(Say.DefaultsRanked) : ""));
        if (defaults.Count > 0)
        {
            string Change(double? change) => change is { } c ? (c > 0 ? "+" : "") + reader.Money(c) : reader.Say(Say.NotComputed);
            Column[] columns =
            [
                new(reader.Say(Say.DefaultHead)), new(reader.Say(Say.DefaultValueHead)), new(reader.Say(Say.WhyHead), Wide: true),
                .. changes ? new Column[] { new(reader.Say(Say.MinusFifthHead), true), new(reader.Say(Say.PlusFifthHead), true) } : [],
                new(reader.Say(Say.DefaultNameHead)),
            ];
            DefaultUsed[] ranked = [.. defaults.OrderByDescending(d => Math.Max(Math.Abs(d.MinusFifth ?? 0), Math.Abs(d.PlusFifth ?? 0)))];
            DataTable Table(IEnumerable<DefaultUsed> shown) => new(reader.Say(Say.DefaultsCaption), columns,
                [.. shown.Select(d => (IReadOnlyList<Cell>)[
                    reader.Default(d.Name), reader.Assumed(d.Value), reader.Assumed(d.Why), .. changes ? new Cell[] { Change(d.MinusFifth), Change(d.PlusFifth) } : [], new Cell(d.Name, reader.PlannerLanguage)])], Stacks: Stacking.Tablet);
            section.Add(Table(ranked.Take(DefaultsShown)).Write("defaults"));
            if (ranked.Length > DefaultsShown)
            {
                section.Fold(reader.Say(Say.DefaultsFold, ranked.Length), Table(ranked).Write("defaults-all"));
            }
        }
        section.Element("h3", reader.Say(Say.WarningsTitle));
        if (answer.Summary.Warnings.Count == 0)
        {
            return section.Element("p", reader.Say(Say.WarningsNone)).End();
        }
        section.Open("ul", ("class", "warnings"));
        foreach (string warning in answer.Summary.Warnings)
        {
            section.Element("li", warning, ("lang", reader.PlannerLanguage));
        }
        return section.Close("ul").End();
    }
}
