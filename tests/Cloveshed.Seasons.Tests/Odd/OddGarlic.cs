using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Seasons.Tests.Odd;

/// <summary>Draws charts, varieties, lots and samples.</summary>
internal static class OddGarlic
{
    public static SizeClass[] Sizes(Chart chart)
    {
        double?[] limits = chart switch
        {
            Chart.One => [20, null],
            Chart.Two => [25, 47.5, null],
            Chart.Fifteen => [22, 26, 30, 33, 36, 39, 42, 45, 48, 51, 54, 58, 63, 70, 80, null],
            Chart.BoundedLast => [28, 40, 50, 62],
            // Whole sixteenths of an inch, 25.4 mm each: 1 1/2, 1 13/16, 2 1/8, 2 7/16, 2 3/4.
            Chart.Inches => [38.1, 46.0375, 53.975, 61.9125, 69.85, null],
            _ => [30, 40, 48, 56, 66, null],
        };
        return [.. Enumerable.Range(0, limits.Length - 1).Select(i =>
            new SizeClass(new($"c{i + 1}"), i % 2 == 0 ? null : $"code {i}", limits[i]!.Value, limits[i + 1]))];
    }

    public static CloveGrade[] CloveGrades(Grades grades) => grades switch
    {
        Grades.None => [],
        Grades.Gaps => [new(new("tiny"), 8, 11), new(new("mid"), 14, 17), new(new("top"), 21, null)],
        Grades.Narrow => [new(new("exact"), 16, 16.5)],
        Grades.BoundedLast => [new(new("g1"), 9, 15), new(new("g2"), 15, 22)],
        _ => [new(new("g1"), 8, 13), new(new("g2"), 13, 18), new(new("g3"), 18, null)],
    };

    public static Variety[] Varieties(int count, Pcg pcg) => [.. Enumerable.Range(1, count).Select(i => new Variety(
        new($"var{i}"),
        new(Round(pcg.Between(-7.4, -6.6)), Round(pcg.Between(2.7, 2.9)), Round(pcg.Between(0.04, 0.15))),
        pcg.Pick<KeepClass?>([null, KeepClass.Short, KeepClass.Medium, KeepClass.Long]),
        pcg.Chance(0.7) ? pcg.Whole(6, 18) : null,
        pcg.Chance(0.7) ? Round(pcg.Between(0.15, 0.5)) : null,
        pcg.Chance(0.7) ? new(Round(pcg.Between(-6.3, -5.8)), Round(pcg.Between(2.5, 2.7)), Round(pcg.Between(0.05, 0.15))) : null))];

    public static LotRow[] Lots(OddShape shape, SeasonSettings settings, IReadOnlyList<Variety> varieties, IReadOnlyList<Place> places, Pcg pcg)
    {
        List<LotRow> rows = [];
        for (int i = 1; i <= shape.Lots; i++)
        {
            bool organic = shape.Organic == OrganicMix.All || (shape.Organic == OrganicMix.Some && pcg.Chance(0.4));
            double fresh = Round(pcg.Between(0.3, 0.95));
            bool known = pcg.Chance(0.8);
            double net = Math.Round(pcg.Factor(800, 90_000));
            LotRow row = new(
                new($"L{i:000}"), pcg.Pick(places).Id, pcg.Pick(varieties).Id, $"field {pcg.Whole(1, 9)}",
                settings.FirstWeek.PlusDays(pcg.Whole(-70, Math.Min(7 * shape.Weeks - 1, 56))),
                Math.Max(0.5, Math.Round(net / pcg.Between(900, 2000), 1)), net,
                pcg.Pick<LotState?>([null, LotState.Estimated, LotState.Dug, LotState.Weighed]),
                null, null, organic, pcg.Pick<bool?>([null, true, true, false]), !organic && pcg.Chance(0.3),
                known ? fresh : null, known ? Round(pcg.Between(0, 1 - fresh)) : null,
                pcg.Pick<SeedClass?>([null, SeedClass.A, SeedClass.B, SeedClass.C]),
                known ? Math.Round(pcg.Between(25, 95), 1) : null, known ? Round(pcg.Between(0.15, 0.6)) : null, null, false);
            rows.Add(row);
            // A lot that stands in two places: what may differ does, what may not stays.
            if (places.Count > 1 && pcg.Chance(0.2))
            {
                Place other = pcg.Pick([.. places.Where(p => p.Id != row.Place)]);
                double part = Math.Round(net * pcg.Between(0.1, 0.9));
                rows.Add(row with
                {
                    Place = other.Id, Net = part, Bins = Math.Max(0.5, Math.Round(part / 1500, 1)),
                    FreshShare = row.FreshShare is { } f ? Round(f * pcg.Between(0.5, 1)) : null,
                });
            }
        }
        return [.. rows];
    }

    /// <summary>Bulbs of those lots whose mean weight the file leaves open, and of a few others.</summary>
    public static SampleBulb[] Samples(IReadOnlyList<LotRow> lots, IReadOnlyList<Variety> varieties, Pcg pcg)
    {
        List<SampleBulb> bulbs = [];
        foreach (LotRow lot in lots.DistinctBy(l => l.Lot))
        {
            if (!pcg.Chance(lot.MeanG is null ? 0.7 : 0.1)) continue;
            MassLaw law = varieties.First(v => v.Id == lot.Variety).BulbLaw;
            double mean = lot.MeanG ?? pcg.Between(30, 80), spread = lot.Cv ?? 0.35;
            LocalDate date = lot.Harvested.PlusDays(pcg.Whole(0, 9));
            for (int n = pcg.Whole(1, 45); n > 0; n--)
            {
                double grams = Math.Max(2, Math.Round(mean * Math.Exp(spread * pcg.Normal() - spread * spread / 2), 1));
                double mm = Math.Exp((Math.Log(grams) - law.A + law.S * pcg.Normal()) / law.B);
                bulbs.Add(new(lot.Lot, date, grams, pcg.Chance(0.6) ? Math.Round(mm, 1) : null,
                    pcg.Chance(0.85) ? Defect.None : pcg.Pick(Enum.GetValues<Defect>())));
            }
        }
        return [.. bulbs];
    }

    internal static double Round(double value) => Math.Round(value, 3);
}
