using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Lots.Trials;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>
/// The demo season's sampled lots against the hidden truth that made them: two kinds of bulbs and a mass law of each lot's own, by a generator
/// that knows nothing of the fitted curve. The page prints the row; the test makes it again.
/// </summary>
public sealed class DemoTruthTests
{
    private const int Draws = 150;

    private static readonly int[] Bulbs = [30, 60, 120];

    [Fact]
    public void Bands_hold_the_hidden_truth_and_pooling_beats_the_sample()
    {
        Season season = SeasonReader.Read(Path.Combine(Root, "data", "demo-season")).Season!;
        LotsKnown known = LotKnowing.Know(season);
        Dictionary<string, string[]> truths = File.ReadLines(Path.Combine(Root, "data", "demo-truth", "lots.csv")).Skip(1).Select(row => row.Split(',')).DistinctBy(row => row[0]).ToDictionary(row => row[0]);
        ILookup<LotId, SampleBulb> samples = season.Samples.ToLookup(s => s.Lot);
        int all = 0, own = 0, pooled = 0, lots = 0;
        double rawSquares = 0, ownSquares = 0, pooledSquares = 0;
        foreach (IGrouping<LotId, LotRow> rows in season.Lots.GroupBy(r => r.Lot))
        {
            SampledBulb[] bulbs = [.. samples[rows.Key].Where(s => s.Defect is not (Defect.Mold or Defect.Decay)).Select((s, k) => new SampledBulb(s.WeightG, s.DiameterMm, 1, k))];
            if (bulbs.Count(b => b.DiameterMm is not null) < 30 || rows.First().MeanG is not null)
                continue;
            lots++;
            MassLaw law = season.Varieties.Single(v => v.Id == rows.First().Variety).BulbLaw;
            double[] truth = Truth(truths[rows.Key.Text], law, season.Sizes);
            Moments grams = default;
            foreach (SampledBulb b in bulbs)
                grams.Add(b.WeightG);
            SizeAnswer answer = SizeReading.Read(new(WeightCells.OfWeights([.. bulbs.Select(b => b.WeightG)]), grams, Allometry.Of(bulbs, law), season.Sizes, Draws, lots));
            SampledBulb[] measured = [.. bulbs.Where(b => b.DiameterMm is not null)];
            double mass = measured.Sum(b => b.WeightG);
            LotKnowledge lot = known.Lots[rows.Key];
            for (int c = 0; c < truth.Length; c++)
            {
                if (truth[c] < 0.005)
                    continue;
                SizeClass size = season.Sizes[c];
                all++;
                rawSquares += Math.Pow(measured.Where(b => b.DiameterMm >= size.MinMm && b.DiameterMm < (size.MaxMm ?? 1e9)).Sum(b => b.WeightG) / mass - truth[c], 2);
                ownSquares += Math.Pow(answer.Classes[c].Share - truth[c], 2);
                pooledSquares += Math.Pow(lot.ClassShares[c] - truth[c], 2);
                own += answer.Classes[c].Low80 <= truth[c] && truth[c] <= answer.Classes[c].High80 ? 1 : 0;
                pooled += lot.ClassBands[c].Low <= truth[c] && truth[c] <= lot.ClassBands[c].High ? 1 : 0;
            }
        }

        double Error(double squares) => 100 * Math.Sqrt(squares / all);
        string row = string.Create(CultureInfo.InvariantCulture, $"| {lots} | {Error(rawSquares):0.0} | {Error(ownSquares):0.0} | {Error(pooledSquares):0.0} | {100.0 * own / all:0}% | {100.0 * pooled / all:0}% |");
        Assert.True(File.ReadAllText(Path.Combine(Root, "docs", "formulas", "size-curve.md")).Contains(row, StringComparison.Ordinal), "The page should print " + row);
        Assert.InRange(pooled / (double)all, 0.72, 0.88);
        Assert.InRange(own / (double)all, 0.72, 0.88);
        Assert.True(pooledSquares < rawSquares && ownSquares < rawSquares);
    }

    /// <summary>What a shed can try of its own lots, without a truth: bulbs and lots held out, and seasons made up around its own.</summary>
    [Fact]
    public void The_page_prints_what_held_out_bulbs_and_made_up_seasons_show()
    {
        Season season = SeasonReader.Read(Path.Combine(Root, "data", "demo-season")).Season!;
        LotsKnown known = LotKnowing.Know(season);
        (string Name, BandScore Score)[] rows =
        [
            ("half of each lot's bulbs held out", HeldOutBulbs.HalfOfEachLot(season)!), ("whole lots held out", HeldOutBulbs.WholeLots(season)!),
            .. SimulatedSeasons.Scores(new(season, known, Bulbs)).Zip(Bulbs, (score, bulbs) => ($"made-up seasons, {bulbs} bulbs a lot", score)),
        ];
        string page = File.ReadAllText(Path.Combine(Root, "docs", "formulas", "size-curve.md"));
        Assert.All(rows, r =>
        {
            string row = string.Create(CultureInfo.InvariantCulture, $"| {r.Name} | {r.Score.Lots} | {100 * r.Score.RawOff:0.0} | {100 * r.Score.CountsOff:0.0} | {100 * r.Score.PooledOff:0.0} | {100 * r.Score.Held:0}% |");
            Assert.True(page.Contains(row, StringComparison.Ordinal), "The page should print " + row);
            Assert.True(r.Score.Honest && r.Score.PooledOff < r.Score.CountsOff && r.Score.CountsOff < r.Score.RawOff, row);
        });
    }

    // Columns: small_share 7, main_mean_g 8, main_cv 9, small_mean_g 10, small_cv 11, law_shift 12 (the truth's README).
    private static double[] Truth(string[] row, MassLaw law, IReadOnlyList<SizeClass> chart)
    {
        double At(int column) => double.Parse(row[column], CultureInfo.InvariantCulture);
        double small = At(7);
        SizeCurve main = new(At(8), At(9)), little = small > 0 ? new(At(10), At(11)) : main;
        MassLaw shifted = law with { A = law.A + At(12) };
        double big = (1 - small) * main.MeanG, less = small * little.MeanG;
        return [.. chart.Select(c => (big * main.MassShare(shifted, c.MinMm, c.MaxMm) + less * little.MassShare(shifted, c.MinMm, c.MaxMm)) / (big + less))];
    }

    private static string Root { get; } = FindRoot();

    private static string FindRoot()
    {
        for (DirectoryInfo? at = new(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "Cloveshed.slnx")))
                return at.FullName;
        }

        throw new DirectoryNotFoundException("The demo season is read from the source tree: run from a build inside it.");
    }
}
