using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots.Trials;

/// <summary>
/// A season's own lots as their own test, since nobody knows their truth: bulbs are held out, the lots are known by the rest, and what is
/// believed is held to the bulbs held out. These are a sample too, so each band is widened by what a sample of that size is off by chance.
/// </summary>
public static class HeldOutBulbs
{
    private const double Z80 = 1.2815515655446004;

    // A lot takes part with at least this many measured bulbs, and half of them speak for each side.
    private const int FewestBulbs = 30;
    private const int Folds = 5;

    /// <summary>How often both trials together know the lots anew: as often as they say so, or less.</summary>
    public const int Knowings = 1 + Folds;

    /// <summary>Every second bulb of each lot is held out. Raw is what the other half's own diameters say. Null where no lot has bulbs enough.</summary>
    /// <param name="known">Told each time the lots were known; what it throws ends the trial.</param>
    public static BandScore? HalfOfEachLot(Season season, Action? known = null)
    {
        ILookup<LotId, SampleBulb> bulbs = Measured(season);
        var kept = new List<SampleBulb>();
        var seen = new Dictionary<LotId, (SampleBulb[] Kept, SampleBulb[] Held)>();
        foreach (IGrouping<LotId, SampleBulb> lot in season.Samples.GroupBy(s => s.Lot))
        {
            if (!Tries(season, bulbs, lot.Key))
            {
                kept.AddRange(lot);
                continue;
            }

            SampleBulb[] all = [.. bulbs[lot.Key]], even = [.. all.Where((_, k) => k % 2 == 0)];
            kept.AddRange(even);
            seen.Add(lot.Key, (even, [.. all.Where((_, k) => k % 2 == 1)]));
        }

        var scoring = new Scoring();
        LotsKnown believed = LotKnowing.Know(season with { Samples = kept, SizerCounts = [] });
        IReadOnlyList<double[]> counted = CountsAlone.Shares([.. seen.Select(lot => Counted(season, lot.Key, lot.Value.Kept))]);
        foreach ((int at, (LotId lot, (SampleBulb[] own, SampleBulb[] held))) in seen.Index())
            Compare(scoring, season.Sizes, held, Shares(own, season.Sizes), counted[at], believed.Lots[lot]);
        known?.Invoke();
        return scoring.Score;
    }

    /// <summary>
    /// Whole lots are held out, a fifth of them at a time: they are known by their variety, field and season alone. Raw is the mean of the
    /// other lots' samples, whatever they are of. Null where there are not two lots with bulbs enough.
    /// </summary>
    /// <param name="known">As for the other trial.</param>
    public static BandScore? WholeLots(Season season, Action? known = null)
    {
        ILookup<LotId, SampleBulb> bulbs = Measured(season);
        LotId[] lots = [.. season.Samples.Select(s => s.Lot).Distinct().Where(lot => Tries(season, bulbs, lot))];
        if (lots.Length < 2)
            return null;
        int folds = Math.Min(Folds, lots.Length);
        var scoring = new Scoring();
        for (int fold = 0; fold < folds; fold++)
        {
            HashSet<LotId> held = [.. lots.Where((_, k) => k % folds == fold)];
            LotsKnown believed = LotKnowing.Know(season with { Samples = [.. season.Samples.Where(s => !held.Contains(s.Lot))], SizerCounts = [] });
            LotId[] told = [.. lots.Where(l => !held.Contains(l))], asked = [.. held];
            double[][] others = [.. told.Select(l => Shares([.. bulbs[l]], season.Sizes))];
            double[] raw = [.. season.Sizes.Select((_, c) => others.Average(o => o[c]))];
            IReadOnlyList<double[]> counted = CountsAlone.Unseen([.. told.Select(l => Counted(season, l, [.. bulbs[l]]))], [.. asked.Select(l => Counted(season, l, []))]);
            foreach ((int at, LotId lot) in asked.Index())
                Compare(scoring, season.Sizes, [.. bulbs[lot]], raw, counted[at], believed.Lots[lot]);
            known?.Invoke();
        }

        return scoring.Score;
    }

    private static void Compare(Scoring scoring, IReadOnlyList<SizeClass> chart, SampleBulb[] held, double[] raw, double[] counted, LotKnowledge known)
    {
        scoring.Lot();
        double[] truth = Shares(held, chart);
        double mass = held.Sum(b => b.WeightG), worth = mass * mass / held.Sum(b => b.WeightG * b.WeightG);
        for (int c = 0; c < chart.Count; c++)
        {
            // By what is believed, not by what turned out: else empty classes would be left out exactly where they are wrong.
            if (known.ClassShares[c] >= BandScore.LeastShare)
                scoring.Share(truth[c], raw[c], counted[c], known.ClassShares[c], Widened(known.ClassShares[c], known.ClassBands[c], worth));
        }
    }

    // A share of a sample worth so many bulbs, its mean itself only believed: a beta of both variances together, as shares can be 0.
    private static Band Widened(double share, Band band, double worth)
    {
        double sd = (band.High - band.Low) / (2 * Z80), variance = sd * sd + share * (1 - share) / worth;
        return DefectPooling.BandOf(share, Math.Max(0.1, share * (1 - share) / variance - 1));
    }

    private static CountedLot Counted(Season season, LotId lot, SampleBulb[] bulbs)
    {
        LotRow row = season.Lots.First(r => r.Lot == lot);
        return new(row.Variety, row.Field, CountsAlone.Of([.. bulbs.Select(b => (b.WeightG, b.DiameterMm!.Value))], season.Sizes));
    }

    private static double[] Shares(SampleBulb[] bulbs, IReadOnlyList<SizeClass> chart)
    {
        double mass = bulbs.Sum(b => b.WeightG);
        return [.. chart.Select(c => bulbs.Where(b => b.DiameterMm >= c.MinMm && b.DiameterMm < (c.MaxMm ?? double.PositiveInfinity)).Sum(b => b.WeightG) / mass)];
    }

    // A lot whose cells are given is known by them whatever its sample says.
    private static bool Tries(Season season, ILookup<LotId, SampleBulb> bulbs, LotId lot) =>
        bulbs[lot].Count() >= FewestBulbs && season.Lots.FirstOrDefault(r => r.Lot == lot) is { MeanG: null, Cv: null };

    private static ILookup<LotId, SampleBulb> Measured(Season season) =>
        season.Samples.Where(s => s.DiameterMm is not null && s.Defect is not (Defect.Mold or Defect.Decay)).ToLookup(s => s.Lot);
}
