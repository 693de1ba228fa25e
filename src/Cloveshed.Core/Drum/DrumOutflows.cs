namespace Cloveshed.Core.Drum;

/// <summary>A stretch of widths between two holes: what should come out of one section.</summary>
public readonly record struct Zone(GradeWanted? Grade, double FromMm, double? ToMm);

/// <summary>The zones of a question and what given holes send into them.</summary>
public static class DrumOutflows
{
    /// <summary>
    /// Zones small to large. Grades with widths keep them, with a zone of no grade under, between and over them as needed; grades with
    /// shares only get the widths that a perfect drum would give, what is left over (shares under 1 in all) being the smallest.
    /// </summary>
    public static IReadOnlyList<Zone> Zones(CloveWidths cloves, IReadOnlyList<GradeWanted> grades)
    {
        var zones = new List<Zone>();
        if (grades.Any(g => g.MinMm is null))
        {
            double at = Math.Max(0, 1 - grades.Sum(g => g.Share ?? 0));
            if (at < 1e-9)
                at = 0;
            if (at > 0)
                zones.Add(new(null, 0, cloves.Quantile(at)));
            for (int k = 0; k < grades.Count; k++)
            {
                double from = at > 0 ? cloves.Quantile(at) : 0;
                at += grades[k].Share ?? 0;
                zones.Add(new(grades[k], from, k + 1 < grades.Count ? cloves.Quantile(Math.Min(1, at)) : null));
            }

            return zones;
        }

        double end = 0;
        foreach (GradeWanted grade in grades)
        {
            if (grade.MinMm > end)
                zones.Add(new(null, end, grade.MinMm));
            zones.Add(new(grade, grade.MinMm!.Value, grade.MaxMm));
            end = grade.MaxMm ?? double.PositiveInfinity;
        }

        if (!double.IsPositiveInfinity(end))
            zones.Add(new(null, end, null));
        return zones;
    }

    /// <summary>What comes out where, small to large, for holes small to large, one fewer than zones.</summary>
    public static IReadOnlyList<Outflow> Of(CloveWidths cloves, IReadOnlyList<Zone> zones, IReadOnlyList<Partition> holes, HoleOrder order)
    {
        int n = zones.Count;
        var share = new double[n];
        var right = new double[n];
        var smaller = new double[n];
        var belongs = new double[n];
        var part = new double[n];
        for (int i = 0; i < cloves.Share.Length; i++)
        {
            double mass = cloves.Share[i], width = cloves.WidthMm[i];
            if (mass <= 0)
                continue;
            Spread(width, holes, order, part);
            for (int z = 0; z < n; z++)
            {
                double own = CloveWidths.Inside(width, zones[z].FromMm, zones[z].ToMm), got = mass * part[z];
                share[z] += got;
                right[z] += got * own;
                belongs[z] += mass * own;
                smaller[z] += width < zones[z].FromMm ? got * (1 - own) : 0;
            }
        }

        return
        [
            .. Enumerable.Range(0, n).Select(z =>
            {
                double contamination = share[z] > 1e-12 ? Math.Max(0, 1 - right[z] / share[z]) : 0;
                return new Outflow(
                    zones[z].Grade?.Name, zones[z].FromMm, zones[z].ToMm, share[z], contamination, share[z] > 1e-12 ? smaller[z] / share[z] : 0,
                    belongs[z] > 1e-12 ? right[z] / belongs[z] : 1, zones[z].Grade?.Share,
                    zones[z].Grade?.MostContamination is not { } most || contamination <= most + 1e-9);
            }),
        ];
    }

    // Which part of the cloves of one width comes out of each zone.
    private static void Spread(double width, IReadOnlyList<Partition> holes, HoleOrder order, double[] part)
    {
        double left = 1;
        if (order == HoleOrder.SmallestFirst)
        {
            for (int h = 0; h < holes.Count; h++)
            {
                double over = holes[h].Over(width);
                part[h] = left * (1 - over);
                left *= over;
            }

            part[holes.Count] = left;
            return;
        }

        for (int h = holes.Count - 1; h >= 0; h--)
        {
            double over = holes[h].Over(width);
            part[h + 1] = left * over;
            left *= 1 - over;
        }

        part[0] = left;
    }
}
