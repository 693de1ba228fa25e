using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots;

/// <summary>
/// Cloves of a bulb: mean mass = bulb's x kept_share(crack) / cloves per bulb, so that skins and plate are not cloves; by
/// width as bulbs are by diameter.
/// </summary>
internal sealed class CloveCurves(Season season, LotDefaults defaults)
{
    private readonly double? given = season.Yields.FirstOrDefault(y => y.Mode == LineMode.Crack)?.KeptShare;

    /// <summary>Shares by mass of each grade, and of all that no grade holds.</summary>
    public (double[] Grades, double Ungraded) Of(Variety variety, double bulbG)
    {
        double cloves = variety.ClovesPerBulb ?? defaults.ClovesPerBulb;
        var curve = new SizeCurve(bulbG * (given ?? defaults.CrackKeptShare) / cloves, variety.CloveCv ?? defaults.CloveCv);
        MassLaw law = variety.CloveLaw ?? defaults.CloveLaw;
        double[] grades = [.. season.CloveGrades.Select(g => curve.MassShare(law, g.MinMm, g.MaxMm))];
        return (grades, Math.Max(0, 1 - grades.Sum()));
    }

    /// <summary>Of the varieties that have lots; nothing where no clove grade is wanted.</summary>
    public IEnumerable<DefaultTaken> DefaultsTaken()
    {
        if (season.CloveGrades.Count == 0)
            yield break;
        Variety[] grown = [.. season.Varieties.Where(v => season.Lots.Any(l => l.Variety == v.Id))];
        (string Name, int Count)[] taken =
        [
            ("cloves_per_bulb", grown.Count(v => v.ClovesPerBulb is null)),
            ("clove_cv", grown.Count(v => v.CloveCv is null)),
            ("clove_g", grown.Count(v => v.CloveLaw is null)),
            ("clove_width_mm", grown.Count(v => v.CloveLaw is null)),
            ("clove_slope", grown.Count(v => v.CloveLaw is null)),
            ("clove_scatter", grown.Count(v => v.CloveLaw is null)),
            ("crack_kept_share", given is null ? grown.Length : 0),
        ];
        foreach ((string name, int count) in taken)
        {
            if (count > 0)
                yield return defaults.Taken(name, count);
        }
    }
}
