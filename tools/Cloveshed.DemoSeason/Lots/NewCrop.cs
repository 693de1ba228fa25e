using Cloveshed.DemoSeason.Basin;
using Cloveshed.DemoSeason.Draws;
using Cloveshed.DemoSeason.Shed;
using NodaTime;

namespace Cloveshed.DemoSeason.Lots;

/// <summary>The lots of this year's crop, drawn planting by planting; they are numbered when they are known.</summary>
public static class NewCrop
{
    // Which lots of each planting, counted in the order of digging, are grown organic, treated, graded for seed or held.
    private static readonly Dictionary<string, int[]> Organic = new()
    {
        ["Early Pale"] = [4, 15], ["Kiln Red"] = [6], ["Late Pale"] = [3, 11, 19], ["Barn White"] = [4],
    };

    private static readonly Dictionary<string, int[]> Inhibitor = new()
    {
        ["Late Pale"] = [1, 5, 7, 9, 12, 14, 16, 18, 21, 23, 24], ["Barn White"] = [1, 3, 5, 7, 8],
    };

    // Two of the treated Late Pale carry a class as well: they were graded before they were sprayed, and may not serve.
    private static readonly Dictionary<string, (int[] A, int[] B, int[] C)> Seed = new()
    {
        ["Early Pale"] = ([2, 8, 12], [6, 10, 17], [13, 19]), ["Streak"] = ([], [1, 4, 7], [5]),
        ["Kiln Red"] = ([], [2, 5, 9], [7]), ["Late Pale"] = ([2, 6, 10, 14], [4, 8, 13, 17, 21], [15, 20]),
    };

    public static IReadOnlyList<Lot> Draw(ulong seed)
    {
        Draw draw = Draws.Draw.For(seed, "crop");
        Dictionary<string, double> fields = Crop.Plantings.SelectMany(p => p.Fields).Distinct()
            .ToDictionary(f => f, _ => draw.Factor(0.06), StringComparer.Ordinal);
        List<Lot> lots = [];
        foreach (Planting planting in Crop.Plantings)
        {
            double year = draw.Factor(0.03);
            for (int i = 0; i < planting.Lots; i++)
            {
                string field = planting.Fields[i * planting.Fields.Count / planting.Lots];
                lots.Add(One(draw, planting, i, field, year * fields[field]));
            }
        }

        return lots;
    }

    private static Lot One(Draw draw, Planting planting, int index, string field, double size)
    {
        Variety v = planting.Variety;
        bool organic = Has(Organic, v, index);
        int days = Period.DaysBetween(planting.First, planting.Last);
        LocalDate day = planting.First.PlusDays((index * days / Math.Max(1, planting.Lots - 1)) + draw.Whole(-1, 1));
        day = day.DayOfWeek == IsoDayOfWeek.Sunday ? day.PlusDays(1) : day;

        int bins = (int)Math.Clamp(156 * draw.Factor(0.30) * (organic ? 0.85 : 1), 70, 340);
        double mean = v.MeanG * size * draw.Factor(0.05) * (organic ? 0.93 : 1);
        BulbTruth bulbs = Bulbs(draw, mean, v.Cv * draw.Factor(0.08));
        double waste = Math.Clamp(v.WasteShare * draw.Factor(0.35), 0.015, 0.20);
        double crack = Math.Clamp(v.CrackShare * draw.Factor(0.30), 0.05, 0.45);
        (int[] a, int[] b, int[] c) = Seed.GetValueOrDefault(v.Name, ([], [], []));
        string? seedClass = a.Contains(index) ? "A" : b.Contains(index) ? "B" : c.Contains(index) ? "C" : null;
        // What is dug before the season begins has cured in the windrow; later, one lot in three comes in green.
        bool cured = draw.Chance(0.67) || day < Scenario.FirstWeek.PlusDays(5);
        return new Lot(
            "", v, field, day, [new Standing(Places.Yard, bins)], Math.Clamp(draw.Normal(cured ? 1000 : 1035, 42), 905, 1110),
            bulbs, draw.Normal(0, 0.025), 1 - waste - crack, crack,
            new KeepingTruth(draw.Factor(0.20), draw.Factor(0.30), draw.Factor(0.10)),
            organic, cured, Has(Inhibitor, v, index), seedClass, v == Varieties.KilnRed && index == 4, CarriedOver: false);
    }

    /// <summary>Two kinds of bulbs with the wanted mean and about the wanted spread.</summary>
    internal static BulbTruth Bulbs(Draw draw, double mean, double cv)
    {
        double share = draw.Between(0.08, 0.24);
        double ratio = draw.Between(0.46, 0.62);
        double main = mean / (1 - share + (share * ratio));
        // Spread between the kinds, taken off the whole: what is left is the spread within them.
        double between = share * (1 - share) * (1 - ratio) * (1 - ratio) * main * main;
        double within = Math.Sqrt(Math.Max(0.20 * 0.20, ((cv * cv * mean * mean) - between) / (mean * mean)));
        return new BulbTruth(share, main, within * mean / main, main * ratio, within * 1.1);
    }

    private static bool Has(Dictionary<string, int[]> of, Variety v, int index) => of.TryGetValue(v.Name, out int[]? list) && list.Contains(index);
}
