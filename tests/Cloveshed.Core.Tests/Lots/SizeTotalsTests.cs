using Cloveshed.Core.Lots;
using Cloveshed.Core.Lots.Trials;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Tests.Lots;

using Chance = Cloveshed.Core.Sizes.Chance;

/// <summary>Sums over lots are as sure as they say: held to made-up seasons whose truth is known. (The requirement is ours; the protocol is plain simulation.)</summary>
public class SizeTotalsTests
{
    private const int Seasons = 40, Lots = 20, Fields = 8, Bulbs = 40;

    [Fact]
    public void Four_in_five_true_totals_lie_in_their_bands_where_half_the_lots_were_never_sampled()
    {
        Chance chance = new(17);
        int held = 0, asked = 0, heldApart = 0;
        for (int season = 0; season < Seasons; season++)
        {
            double[] variety = [0.2 * chance.Normal(), 0.2 * chance.Normal()], field = [.. Enumerable.Range(0, Fields).Select(_ => 0.08 * chance.Normal())];
            var rows = new List<LotRow>();
            var samples = new List<SampleBulb>();
            var truths = new List<double[]>();
            IReadOnlyList<SizeClass> chart = SmallSeason.Of([]).Sizes;
            for (int k = 0; k < Lots; k++)
            {
                (int v, int f) = (k % 2, k * 5 % Fields);
                var lot = new SimulatedLot(
                    (BulbKind)(k % 5), 55 * Math.Exp(variety[v] + field[f] + 0.12 * chance.Normal()), 0.33 * Math.Exp(0.1 * chance.Normal()), SmallSeason.Law with { A = SmallSeason.Law.A + 0.03 * chance.Normal() });
                rows.Add(SmallSeason.Lot($"{k}", v == 0 ? "Pale" : "Violet") with { Field = $"{f}" });
                // Every other pair of lots, so that both varieties have lots that were sampled and lots that were not.
                if (k / 2 % 2 == 0)
                    samples.AddRange(Enumerable.Range(0, Bulbs).Select(line => lot.Bulb(chance, line)).Select(b => SmallSeason.Bulb($"{k}", b.WeightG, b.DiameterMm)));
                truths.Add(lot.Truth(chart, chance));
            }

            Season made = SmallSeason.Of(rows, samples);
            LotsKnown known = LotKnowing.Know(made);
            LotMass[] masses = [.. rows.SelectMany(row => chart.Select((_, c) => new LotMass(row.Lot, c, 1000 * known.Lots[row.Lot].ClassShares[c])))];
            // The same lots with their kinds taken to be known: what they are off by together is then missing.
            LotsKnown apart = known with { Lots = known.Lots.ToDictionary(lot => lot.Key, lot => lot.Value with { OfKind = 0 }) };
            foreach ((SizeTotal total, SizeTotal alone) in SizeTotals.Of(made, known, masses).Zip(SizeTotals.Of(made, apart, masses)))
            {
                int c = chart.Index().First(size => size.Item.Id == total.Class).Index;
                double truth = 1000 * truths.Sum(shares => shares[c]);
                asked++;
                held += truth >= total.Low80 && truth <= total.High80 ? 1 : 0;
                heldApart += truth >= alone.Low80 && truth <= alone.High80 ? 1 : 0;
            }
        }

        Assert.Equal(Seasons * 4, asked);
        Assert.InRange((double)held / asked, 0.75, 0.87);
        Assert.True(heldApart < held, $"{heldApart} and {held} of {asked}");
    }

    [Fact]
    public void One_lot_is_as_sure_as_its_own_band_and_lots_of_one_field_even_out_less_than_lots_apart()
    {
        LotRow Row(string lot, string variety, string field) => SmallSeason.Lot(lot, variety) with { Field = field };
        LotRow[] rows = [Row("A", "Pale", "Sand"), Row("B", "Pale", "Sand"), Row("C", "Pale", "Loam"), Row("D", "Violet", "Loam"), Row("S", "Pale", "Clay"), Row("T", "Violet", "Clay")];
        SampleBulb[] samples = [.. new[] { "S", "T" }.SelectMany(lot => Enumerable.Range(0, 40).Select(k => SmallSeason.Bulb(lot, 35 + k)))];
        Season season = SmallSeason.Of(rows, samples);
        LotsKnown known = LotKnowing.Know(season);
        LotKnowledge a = known.Lots[new("A")];
        double Off(params string[] lots)
        {
            SizeTotal total = Assert.Single(SizeTotals.Of(season, known, [.. lots.Select(lot => new LotMass(new(lot), 3, 100))]));
            Assert.Equal(100.0 * lots.Length, total.Mass);
            return total.High80 - total.Mass;
        }

        Assert.Equal(100 * (a.ClassBands[3].High - a.ClassBands[3].Low) / (2 * a.ClassShares[3]), Off("A"), 1e-9);
        Assert.InRange(Off("A", "C"), 1.01 * Math.Sqrt(Off("A") * Off("A") + Off("C") * Off("C")), Off("A") + Off("C"));
        Assert.True(Off("A", "B") > 1.01 * Off("A", "C"), "One field, one variety.");
        Assert.True(Off("A", "C") > 1.01 * Off("A", "D"), "One variety.");
    }
}
