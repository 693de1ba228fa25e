using System.Globalization;
using Cloveshed.DemoSeason.Basin;
using Cloveshed.DemoSeason.Draws;
using Cloveshed.DemoSeason.Text;
using NodaTime;

namespace Cloveshed.DemoSeason.Lots;

/// <summary>
/// What the shed knows of a lot on the season's first day: lots.csv, and how many bulbs of it were sampled. Everything here is the
/// truth seen through an estimate: the net of a field still in the ground is about 7 % out, and the fields share part of it.
/// </summary>
public sealed record LotKnowledge(
    Lot Lot, LocalDate Harvested, string State, IReadOnlyList<(Standing Stands, decimal Net)> Rows, double Low, double High,
    double? FreshShare, double? CrackShare, double? MeanG, double? Cv, LocalDate? Ready, int Sampled)
{
    // Of the 90 lots, this many were not sampled; the first five of them have no size figures at all.
    private const int NotSampled = 15;
    private const int NothingKnown = 5;

    public static IReadOnlyList<LotKnowledge> Of(IReadOnlyList<Lot> lots, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(lots);
        Draw draw = Draw.For(seed, "knowledge");
        Dictionary<string, double> fields = lots.Select(l => l.Field).Distinct()
            .ToDictionary(f => f, _ => draw.Factor(0.04), StringComparer.Ordinal);
        // Late digs are the ones that the samplers had not come to: the unsampled are drawn from the second half.
        List<Lot> late = [.. lots.Where(l => !l.CarriedOver).OrderBy(l => l.Harvested).Skip(30)];
        List<Lot> unsampled = [];
        while (unsampled.Count < NotSampled)
        {
            int at = draw.Whole(0, late.Count - 1);
            unsampled.Add(late[at]);
            late.RemoveAt(at);
        }

        // Numbers follow the days on which the lots are expected: the real order is not known yet.
        IEnumerable<LotKnowledge> known = [.. lots.Select(l => One(draw, l, fields[l.Field], unsampled.IndexOf(l)))];
        return
        [
            .. known.Where(k => k.Lot.CarriedOver),
            .. known.Where(k => !k.Lot.CarriedOver).OrderBy(k => k.Harvested).ThenBy(k => k.Lot.Variety.Name, StringComparer.Ordinal)
                .ThenBy(k => k.Lot.Field, StringComparer.Ordinal)
                .Select((k, i) => k with { Lot = k.Lot with { Id = string.Create(CultureInfo.InvariantCulture, $"26-{i + 1:000}") } }),
        ];
    }

    public static string File(IReadOnlyList<LotKnowledge> known)
    {
        ArgumentNullException.ThrowIfNull(known);
        Table t = new(
            "lot", "place", "variety", "field", "harvested", "bins", "net", "state", "net_low", "net_high", "organic", "cured", "inhibitor",
            "fresh_share", "crack_share", "seed_class", "mean_g", "cv", "ready", "hold");
        foreach (LotKnowledge k in known)
        {
            Lot l = k.Lot;
            foreach ((Standing stands, decimal net) in k.Rows)
            {
                t.Row(
                    l.Id, stands.Place, l.Variety.Name, l.Field, k.Harvested, stands.Bins, net, k.State,
                    Pounds((double)net * k.Low), Pounds((double)net * k.High), l.Organic, l.Cured, l.Inhibitor,
                    Cell(k.FreshShare, 3), Cell(k.CrackShare, 3), l.SeedClass, Cell(k.MeanG, 1), Cell(k.Cv, 3), k.Ready, l.Hold ? true : null);
            }
        }

        return t.ToString();
    }

    private static LotKnowledge One(Draw draw, Lot lot, double field, int unsampledRank)
    {
        bool delayed = lot.Variety == Varieties.TallViolet;
        string state = lot.CarriedOver || lot.Harvested < Scenario.FirstWeek.PlusDays(-2) ? "weighed"
            : lot.Harvested < Scenario.FirstWeek.PlusDays(3) ? "dug" : "estimated";
        (double error, double band) = state switch
        {
            "weighed" => (0.006, 0.01),
            "dug" => (0.03, 0.05),
            _ => delayed ? (0.13, 0.22) : (0.065, 0.12),
        };
        double seen = draw.Factor(error) * (state == "estimated" ? field : 1);
        // The day is expected within a few days; rain mostly makes it later. What is in the bin has its day already.
        int later = state == "estimated" ? (int)Math.Round(draw.Normal(delayed ? 2.5 : 1, delayed ? 5 : 2.6), MidpointRounding.AwayFromZero) : 0;
        LocalDate expected = lot.Harvested.PlusDays(-later);
        LocalDate earliest = Scenario.FirstWeek.PlusDays(3);
        expected = state == "estimated" && expected < earliest ? earliest : expected;
        expected = expected.DayOfWeek == IsoDayOfWeek.Sunday ? expected.PlusDays(1) : expected;

        List<(Standing, decimal)> rows = [];
        foreach (Standing stands in lot.Stands)
        {
            double net = stands.Bins * lot.NetPerBin * seen;
            // Bins of a lot in the ground are reckoned from its expected net at the yard's usual fill.
            int bins = state == "estimated" ? (int)Math.Round(net / (lot.Cured ? 1000 : 1030), MidpointRounding.AwayFromZero) : stands.Bins;
            rows.Add((stands with { Bins = bins }, Pounds(net)));
        }

        bool sampled = unsampledRank < 0;
        bool givenSize = sampled ? draw.Chance(0.12) : unsampledRank >= NothingKnown;
        bool givenShares = !sampled || draw.Chance(0.30);
        double crack = Math.Clamp(lot.CrackShare * draw.Factor(0.15), 0.03, 0.5);
        double waste = Math.Clamp((1 - lot.FreshShare - lot.CrackShare) * draw.Factor(0.30), 0.01, 0.3);
        double mean = lot.Bulbs.MeanG * draw.Factor(0.06);
        double cv = lot.Bulbs.Cv * draw.Factor(0.10);
        int count = draw.Whole(60, 120);
        return new LotKnowledge(
            lot, expected, state, rows, 1 - band, 1 + band,
            givenShares ? 1 - crack - waste : null, givenShares ? crack : null, givenSize ? mean : null, givenSize ? cv : null,
            lot.Cured ? null : expected.PlusDays(draw.Whole(13, 22)), sampled ? count : 0);
    }

    private static decimal Pounds(double net) => Table.Round(net / 10, 0) * 10;

    private static decimal? Cell(double? value, int places) => value is { } v ? Table.Round(v, places) : null;
}
