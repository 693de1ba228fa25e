using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using Cloveshed.Core.Tests.Handbook;
using Cloveshed.Core.Tests.Lots;

namespace Cloveshed.Core.Tests.Sizes;

/// <summary>
/// Lots whose truth is known, of five kinds of which the fitted curve made one: how often the 80% bands hold, and the error beside that of the
/// raw sample. The page prints this table; the test makes it again. (The requirement is ours; the protocol is plain simulation.)
/// </summary>
public class CurveCalibrationTests
{
    private const int Crops = 4, LotsInCrop = 30, Draws = 150;

    [Theory]
    [InlineData(30)]
    [InlineData(60)]
    [InlineData(120)]
    public void The_page_prints_what_simulated_lots_show(int bulbs)
    {
        Random random = new(bulbs);
        IReadOnlyList<SizeClass> chart = [.. SmallSeason.Of([]).Sizes];
        int all = 0, own = 0, pooled = 0;
        double rawSquares = 0, ownSquares = 0, pooledSquares = 0;
        for (int crop = 0; crop < Crops; crop++)
        {
            List<LotRow> rows = [];
            List<SampleBulb> samples = [];
            List<(LotId Id, TrueLot Lot, SampledBulb[] Bulbs)> lots = [];
            while (lots.Count < LotsInCrop)
            {
                foreach ((int k, TrueLot lot) in TrueLot.Others(chart, random).Index())
                {
                    LotId id = new($"L{lots.Count}");
                    SampledBulb[] sample = lot.Sample(bulbs, random);
                    rows.Add(SmallSeason.Lot(id.Text, k < 3 ? "Pale" : "Violet"));
                    samples.AddRange(sample.Select(b => SmallSeason.Bulb(id.Text, b.WeightG, b.DiameterMm, Defect.None)));
                    lots.Add((id, lot, sample));
                }
            }

            LotsKnown known = LotKnowing.Know(SmallSeason.Of(rows, samples));
            foreach ((LotId id, TrueLot lot, SampledBulb[] sample) in lots)
            {
                Moments grams = default;
                foreach (SampledBulb b in sample)
                    grams.Add(b.WeightG);
                SizeAnswer answer = SizeReading.Read(new(WeightCells.OfWeights([.. sample.Select(b => b.WeightG)]), grams, Allometry.Of(sample), chart, Draws, lots.Count));
                double[] raw = TrueLot.Raw(sample, chart);
                LotKnowledge lotKnown = known.Lots[id];
                for (int c = 0; c < chart.Count; c++)
                {
                    double truth = lot.Truth[c];
                    if (truth < 0.005)
                        continue; // a class that hardly is there is easily right
                    all++;
                    rawSquares += Math.Pow(raw[c] - truth, 2);
                    ownSquares += Math.Pow(answer.Classes[c].Share - truth, 2);
                    pooledSquares += Math.Pow(lotKnown.ClassShares[c] - truth, 2);
                    own += answer.Classes[c].Low80 <= truth && truth <= answer.Classes[c].High80 ? 1 : 0;
                    pooled += lotKnown.ClassBands[c].Low <= truth && truth <= lotKnown.ClassBands[c].High ? 1 : 0;
                }
            }
        }

        double Error(double squares) => 100 * Math.Sqrt(squares / all);
        string row = string.Create(Invariant, $"| {bulbs} | {Error(rawSquares):0.0} | {Error(ownSquares):0.0} | {Error(pooledSquares):0.0} | {100.0 * own / all:0}% | {100.0 * pooled / all:0}% |");
        Assert.True(FormulaPage.Read("size-curve.md").Contains(row, StringComparison.Ordinal), "The page should print " + row);
        Assert.InRange(own / (double)all, 0.75, 0.85);
        Assert.InRange(pooled / (double)all, 0.75, 0.85);
        Assert.True(ownSquares < 0.75 * rawSquares);
        Assert.True(pooledSquares < 0.6 * rawSquares);
    }
}
