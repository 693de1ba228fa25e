using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Sections;

/// <summary>How sure the plan is of each size: what it expects to pack, with its band, and whether its orders hold at the low end of it.</summary>
public static class SizesSection
{
    public static MarkupText Write(Season season, PlanAnswer answer, Reader reader)
    {
        MarkupText section = Section.Begin("sizes", reader.Say(Say.SizesTitle));
        IReadOnlyList<SizeTotal> totals = answer.Summary.SizeTotals;
        if (totals.Count == 0)
        {
            return section.Lead(reader.Say(Say.SizesNone)).End();
        }
        section.Lead(reader.Say(Say.SizesLead));
        SizeTotal[] shorts = [.. totals.Where(total => Short(total, season, answer) > 0)];
        section.Element("p", shorts.Length == 0 ? reader.Say(Say.SizesAllHold) : reader.Say(Say.SizesShort, string.Join(", ", shorts.Select(total => total.Class.Text))), ("class", "words"));
        return section.Add(Table(season, answer, reader).Write("sizes")).End();
    }

    private static DataTable Table(Season season, PlanAnswer answer, Reader reader) => new(
        reader.Say(Say.SizesCaption),
        [new(reader.Say(Say.SizeHead)), new(reader.Say(Say.SizeExpectedHead, reader.MassUnitName), true), new(reader.Say(Say.SizeBandHead, reader.MassUnitName), true), new(reader.Say(Say.SizeOffHead), true),
            new(reader.Say(Say.SizeShippedHead, reader.MassUnitName), true), new(reader.Say(Say.SizeLowHead))],
        [.. answer.Summary.SizeTotals.Select(total => (IReadOnlyList<Cell>)[
            total.Class.Text, reader.MassNumber(total.Mass), reader.Say(Say.SizeBand, reader.MassNumber(total.Low80), reader.MassNumber(total.High80)),
            reader.Percent((total.High80 - total.Low80) / (2 * total.Mass)), reader.MassNumber(Shipped(total.Class, season, answer)),
            Short(total, season, answer) is > 0 and var missing ? reader.Say(Say.SizeLowShort, reader.Mass(missing)) : reader.Say(Say.SizeLowEnough)])],
        Stacks: Stacking.Phone);

    /// <summary>Of a class, shipped to orders, whatever product they asked for.</summary>
    private static double Shipped(SizeClassId size, Season season, PlanAnswer answer)
    {
        Dictionary<ProductId, double> nets = season.Products.Where(p => p.Form == ProductForm.Bulb && p.From == size.Text).ToDictionary(p => p.Id, p => p.Net);
        return answer.Fills.Sum(fill => nets.GetValueOrDefault(fill.Product) * fill.Units);
    }

    /// <summary>What orders would lack if a class came out at the low end of its band; packed stock helps.</summary>
    private static double Short(SizeTotal total, Season season, PlanAnswer answer)
    {
        double stock = season.Products.Where(p => p.Form == ProductForm.Bulb && p.From == total.Class.Text).Sum(p => p.Net * season.Stock.Where(row => row.Product == p.Id).Sum(row => row.Units));
        double missing = Shipped(total.Class, season, answer) - stock - total.Low80;
        return missing > total.Mass * 1e-6 ? missing : 0;
    }
}
