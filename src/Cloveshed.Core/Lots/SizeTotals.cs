using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots;

/// <summary>Mass of one size class out of one lot, as expected.</summary>
/// <param name="Class">Index in the season's chart.</param>
public readonly record struct LotMass(LotId Lot, int Class, double Mass);

/// <summary>Mass of a size class out of many lots, with its 80% band.</summary>
public sealed record SizeTotal(SizeClassId Class, double Mass, double Low80, double High80);

/// <summary>
/// How sure sums over lots are. Lots are off each for itself and together: what their variety, field and season are believed wrongly moves all of
/// them, and so does what their variety's spread and shape are off by, as far as each one's own sample does not correct it. So a class's variance is the
/// sum of the lots' own, that of the weighted sum of their kinds, and for each variety that of its shape. What fails grade and what keeping takes
/// are not in it. Formulas: docs/formulas/lot-knowledge.md.
/// </summary>
public static class SizeTotals
{
    private const double Z80 = 1.2815515655446004, Step = 0.005;

    /// <summary>A total for each class of the chart that anything is expected of, in the chart's order, in the masses' unit.</summary>
    public static IReadOnlyList<SizeTotal> Of(Season season, LotsKnown known, IReadOnlyList<LotMass> masses)
    {
        var laws = season.Varieties.ToDictionary(v => v.Id, v => v.BulbLaw);
        var rows = season.Lots.GroupBy(row => row.Lot).ToDictionary(lot => lot.Key, lot => lot.First());
        return [.. masses.GroupBy(m => m.Class).OrderBy(c => c.Key).Where(c => c.Sum(m => m.Mass) > 0).Select(c => Total(season.Sizes[c.Key], c.Key, c, known, laws, rows))];
    }

    private static SizeTotal Total(SizeClass size, int at, IEnumerable<LotMass> masses, LotsKnown known, Dictionary<VarietyId, MassLaw> laws, Dictionary<LotId, LotRow> rows)
    {
        double mass = 0, variance = 0;
        var shapes = new Dictionary<VarietyId, double>();
        var kinds = new List<(string Variety, string Field, int Season, double Weight)>();
        foreach (IGrouping<LotId, LotMass> lot in masses.GroupBy(m => m.Lot))
        {
            LotKnowledge k = known.Lots[lot.Key];
            LotRow row = rows[lot.Key];
            double here = lot.Sum(m => m.Mass), share = k.ClassShares[at];
            mass += here;
            if (share <= 0)
                continue;
            // The band is not even around its share; its half width is the sd that a sum of many needs.
            double per = here / share, sd = per * (k.ClassBands[at].High - k.ClassBands[at].Low) / (2 * Z80), slope = Slope(k, laws[k.Variety], size), ofShape = per * ShapeSd(k, known, share, slope);
            (string, string, int, double Weight) kind = (row.Variety.Text, row.Field, row.Harvested.Year, per * k.OfKind * slope);
            double shared = OfKinds(known, [kind]) + ofShape * ofShape;
            // What a lot has in common with others is within its own band, also where the lognormal answers to the mean more steeply than its curve does.
            double within = shared > sd * sd ? sd / Math.Sqrt(shared) : 1;
            variance += Math.Max(0, sd * sd - shared);
            kinds.Add(kind with { Weight = kind.Weight * within });
            shapes[k.Variety] = shapes.GetValueOrDefault(k.Variety) + within * ofShape;
        }

        double off = Z80 * Math.Sqrt(variance + OfKinds(known, kinds) + shapes.Values.Sum(sum => sum * sum));
        return new(size.Id, mass, Math.Max(0, mass - off), mass + off);
    }

    // What a variety's spread and shape leave a class's share unsure by, once the mean is known (its part of a share's variance is taken out): it
    // is known by the variety's bulbs, and as far as its lots differ by so many lots only. A lot's own bulbs speak beside it.
    private static double ShapeSd(LotKnowledge lot, LotsKnown known, double share, double slope)
    {
        LotKnowledge[] alike = [.. known.Lots.Values.Where(other => other.Variety == lot.Variety && other.Sources.SampledBulbs > 0)];
        double strength = known.Learned.ShapeBulbs, bulbs = LotDefaults.Default.NormalStrength + alike.Sum(other => other.Sources.SampledBulbs);
        double variance = Math.Max(0, share * (1 - share) - slope * slope * Math.Log(1 + lot.Cv * lot.Cv)) * (1 / bulbs + 1 / (strength * Math.Max(1, alike.Length)));
        return strength / (strength + lot.Sources.SampledBulbs) * Math.Sqrt(variance);
    }

    // Without any lot seen all lots are of one default: nobody knows how far the season is from it.
    private static double OfKinds(LotsKnown known, List<(string Variety, string Field, int Season, double Weight)> kinds) =>
        known.History?.SumVariance(kinds) ?? Math.Pow(kinds.Sum(kind => kind.Weight), 2) * Math.Pow(LotDefaults.Default.BetweenVarietySd, 2);

    // What the share gains for each unit of the lot's mean of ln g, on the lognormal of its mean and spread.
    private static double Slope(LotKnowledge lot, MassLaw law, SizeClass size)
    {
        double At(double step) => new SizeCurve(lot.MeanG * Math.Exp(step), lot.Cv).MassShare(law, size.MinMm, size.MaxMm);
        return (At(Step) - At(-Step)) / (2 * Step);
    }
}
