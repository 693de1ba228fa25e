using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;

namespace Cloveshed.Core.Lots.Trials;

/// <summary>What to try: seasons made up around a season's own size chart, varieties and mass laws.</summary>
/// <param name="Like">Whose chart and varieties.</param>
/// <param name="Known">What is known of its lots: where the made-up lots' means and spreads lie.</param>
/// <param name="Bulbs">Bulbs sampled of each lot, a score for each; the smaller samples are the first bulbs of the largest.</param>
/// <param name="Seasons">Made-up seasons.</param>
/// <param name="LotsEach">Lots in each.</param>
public sealed record SimulatedQuestion(Season Like, LotsKnown Known, IReadOnlyList<int> Bulbs, int Seasons = 4, int LotsEach = 30, long Seed = 1)
{
    /// <summary>How often lots are known anew.</summary>
    public int Knowings => Seasons * Bulbs.Count;
}

/// <summary>
/// Whole seasons made up, sampled, and known as a season's own lots are; what is then believed is held to what was made up. Varieties,
/// fields and lots differ by the usual sds; bulbs are of five kinds, of which the curve assumes one. The same seed gives the same scores.
/// </summary>
public static class SimulatedSeasons
{
    private const int Fields = 8;

    // A lot is as flat or tall as this beside its variety's mass law (sd of ln g).
    private const double ShiftSd = 0.03;

    /// <summary>A score for each number of bulbs; none where the season has no class or variety to make lots of.</summary>
    /// <param name="known">Told each time lots were known; what it throws ends the trial.</param>
    public static IReadOnlyList<BandScore> Scores(SimulatedQuestion q, Action? known = null)
    {
        if (q.Like.Sizes.Count == 0 || q.Like.Varieties.Count == 0)
            return [];
        var chance = new Chance(q.Seed);
        Scoring[] scorings = [.. q.Bulbs.Select(_ => new Scoring())];
        int most = q.Bulbs.Max();
        HistorySpread apart = HistorySpread.Usual;
        double middle = q.Known.Lots.Count > 0 ? q.Known.Lots.Values.Average(l => l.MeanG) : LotDefaults.Default.MeanG;
        double cv = q.Known.Lots.Count > 0 ? q.Known.Lots.Values.Average(l => l.Cv) : LotDefaults.Default.Cv;
        for (int season = 0; season < q.Seasons; season++)
        {
            double[] variety = [.. q.Like.Varieties.Select(_ => apart.Variety * chance.Normal())], field = [.. Enumerable.Range(0, Fields).Select(_ => apart.Field * chance.Normal())];
            var rows = new List<LotRow>();
            var made = new List<(LotId Id, SampledBulb[] Sample, double[] Truth)>();
            for (int k = 0; k < q.LotsEach; k++)
            {
                (int v, int f) = (k % variety.Length, k * 5 % Fields);
                MassLaw law = q.Like.Varieties[v].BulbLaw;
                var lot = new SimulatedLot(
                    (BulbKind)(k % 5), middle * Math.Exp(variety[v] + field[f] + apart.Lot * chance.Normal()), cv * Math.Exp(0.1 * chance.Normal()), law with { A = law.A + ShiftSd * chance.Normal() });
                LotId id = new($"{k + 1}");
                SampledBulb[] sample = [.. Enumerable.Range(0, most).Select(line => lot.Bulb(chance, line))];
                rows.Add(new(
                    id, new(""), q.Like.Varieties[v].Id, $"{f + 1}", q.Like.Settings.FirstWeek, 1, 1, null, null, null, false, null, false, null, null, null, null, null, null, false));
                made.Add((id, sample, lot.Truth(q.Like.Sizes, chance)));
            }

            for (int s = 0; s < scorings.Length; s++)
            {
                SampleBulb[] samples =
                [
                    .. made.SelectMany(m => m.Sample.Take(q.Bulbs[s]).Select(b => new SampleBulb(m.Id, q.Like.Settings.FirstWeek, b.WeightG, b.DiameterMm, Defect.None))),
                ];
                LotsKnown believed = LotKnowing.Know(q.Like with { Lots = rows, Samples = samples, SizerCounts = [] });
                IReadOnlyList<double[]> counted = CountsAlone.Shares(
                    [.. made.Zip(rows, (m, row) => new CountedLot(row.Variety, row.Field, CountsAlone.Of([.. m.Sample.Take(q.Bulbs[s]).Select(b => (b.WeightG, b.DiameterMm!.Value))], q.Like.Sizes)))]);
                foreach ((int at, (LotId id, SampledBulb[] sample, double[] truth)) in made.Index())
                    Compare(scorings[s], q.Like.Sizes, [.. sample.Take(q.Bulbs[s])], truth, counted[at], believed.Lots[id]);
                known?.Invoke();
            }
        }

        return [.. scorings.Select(s => s.Score).OfType<BandScore>()];
    }

    private static void Compare(Scoring scoring, IReadOnlyList<SizeClass> chart, SampledBulb[] sample, double[] truth, double[] counted, LotKnowledge known)
    {
        scoring.Lot();
        double mass = sample.Sum(b => b.WeightG);
        for (int c = 0; c < chart.Count; c++)
        {
            if (truth[c] < BandScore.LeastShare)
                continue;
            double raw = sample.Where(b => b.DiameterMm >= chart[c].MinMm && b.DiameterMm < (chart[c].MaxMm ?? double.PositiveInfinity)).Sum(b => b.WeightG) / mass;
            scoring.Share(truth[c], raw, counted[c], known.ClassShares[c], known.ClassBands[c]);
        }
    }
}
