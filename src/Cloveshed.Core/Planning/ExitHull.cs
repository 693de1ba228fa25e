namespace Cloveshed.Core.Planning;

/// <summary>
/// The ways out of a row in a week that are the best for some sound share between 0 and 1: each is worth, per mass as weighed,
/// Level + Slope x sound share. Discarding, worth nothing, is always among them.
/// </summary>
internal readonly struct ExitHull
{
    private readonly (double Level, double Slope, int Exit)[] _lines;

    private ExitHull((double, double, int)[] lines) => _lines = lines;

    internal ReadOnlySpan<(double Level, double Slope, int Exit)> Lines => _lines;

    /// <summary>Exit is an index into the exits given, -1 for discarding.</summary>
    internal static ExitHull Of(InstanceRow row, PricedExit[] exits)
    {
        Span<(double Level, double Slope, int Exit)> kept = stackalloc (double, double, int)[exits.Length + 1];
        kept[0] = (0, 0, -1);
        int count = 1;
        for (int e = 0; e < exits.Length; e++)
        {
            double level = exits[e].PerMass, slope = row.Fresh * exits[e].PerFresh + row.Crack * exits[e].PerCrack;
            if (Beaten(kept[..count], level, slope)) continue;
            int left = 0;
            for (int k = 0; k < count; k++)
                if (kept[k].Exit < 0 || !(level >= kept[k].Level && level + slope >= kept[k].Level + kept[k].Slope)) kept[left++] = kept[k];
            count = left;
            kept[count++] = (level, slope, e);
        }
        return new ExitHull(kept[..count].ToArray());
    }

    private static bool Beaten(ReadOnlySpan<(double Level, double Slope, int Exit)> kept, double level, double slope)
    {
        foreach ((double l, double s, _) in kept)
            if (l >= level && l + s >= level + slope) return true;
        return false;
    }
}
