namespace Cloveshed.Core.Keep.Clocks;

/// <summary>A lot to be followed: what its keeping depends on, and the life that it has used.</summary>
public sealed record ForecastLot(KeepingTraits Traits, double LifeUsed, int WeeksSinceHarvest);

/// <summary>Many lots, each along every path.</summary>
/// <param name="Paths">Each path's air, week by week, all of one length.</param>
public sealed record ForecastQuestion(IReadOnlyList<ForecastLot> Lots, IReadOnlyList<Climate[]> Paths, KeepingParameters P);

/// <summary>
/// Weight over weight now, and share of the now sound bulbs that are still sound, at each week's start and at the end, for each lot and
/// path: index ((lot x paths) + path) x (weeks + 1) + week.
/// </summary>
public sealed record ForecastAnswer(int Paths, int Weeks, float[] WeightRatio, float[] Sound)
{
    /// <summary>Where a lot's path begins.</summary>
    public int At(int lot, int path, int week) => (lot * Paths + path) * (Weeks + 1) + week;
}

/// <summary>Keeping of a whole shed at once: lots with the same traits share the path's weekly clocks, so that only soundness is worked out for each.</summary>
public static class KeepingForecast
{
    // Soundness is read by straight lines off a table that is at most 1e-6 off, up to three lives.
    private const double Step = 0.0005;
    private const int Points = 6000;

    /// <summary>Pure.</summary>
    public static ForecastAnswer Of(ForecastQuestion question)
    {
        int paths = question.Paths.Count, weeks = paths == 0 ? 0 : question.Paths[0].Length;
        if (question.Paths.Any(path => path.Length != weeks))
            throw new ArgumentException("Paths are of one length.", nameof(question));
        var answer = new ForecastAnswer(paths, weeks, new float[question.Lots.Count * paths * (weeks + 1)], new float[question.Lots.Count * paths * (weeks + 1)]);
        double[] table = [.. Enumerable.Range(0, Points + 2).Select(i => KeepingLaw.SoundShare(question.P, i * Step))];
        double SoundAt(double life)
        {
            double at = life / Step;
            if (!(at < Points))
                return KeepingLaw.SoundShare(question.P, life);
            int left = (int)at;
            return table[left] + (at - left) * (table[left + 1] - table[left]);
        }

        var shared = new Dictionary<(KeepingTraits, int), (double[] Weight, double[] Life)>();
        for (int l = 0; l < question.Lots.Count; l++)
        {
            ForecastLot lot = question.Lots[l];
            // Weeks since harvest matter to the first weeks of uncured lots only.
            int since = lot.Traits.Cured || lot.WeeksSinceHarvest >= question.P.UncuredLossWeeks ? int.MaxValue / 2 : lot.WeeksSinceHarvest;
            if (!shared.TryGetValue((lot.Traits, since), out (double[] Weight, double[] Life) along))
                shared.Add((lot.Traits, since), along = Along(question, lot.Traits, since, weeks));
            double soundNow = KeepingLaw.SoundShare(question.P, lot.LifeUsed);
            int first = answer.At(l, 0, 0);
            for (int i = 0; i < along.Life.Length; i++)
            {
                answer.WeightRatio[first + i] = (float)along.Weight[i];
                answer.Sound[first + i] = (float)(SoundAt(lot.LifeUsed + along.Life[i]) / soundNow);
            }
        }

        return answer;
    }

    private static (double[] Weight, double[] Life) Along(ForecastQuestion question, KeepingTraits traits, int since, int weeks)
    {
        double[] weight = new double[question.Paths.Count * (weeks + 1)], life = new double[weight.Length];
        int at = 0;
        foreach (Climate[] path in question.Paths)
        {
            (double w, double u) = (1, 0);
            for (int week = 0; week <= weeks; week++)
            {
                (weight[at], life[at]) = (w, u);
                at++;
                if (week == weeks)
                    break;
                WeekOfKeeping one = KeepingLaw.Week(question.P, traits, path[week], since + week);
                w *= 1 - one.WeightLoss;
                u += one.LifeUsed;
            }
        }

        return (weight, life);
    }
}
