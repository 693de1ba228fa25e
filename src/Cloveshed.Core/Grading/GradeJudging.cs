using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Grading;

/// <summary>Whether a lot makes a grade.</summary>
public enum GradeVerdict
{
    /// <summary>Every limit lies above its interval.</summary>
    Makes,

    /// <summary>The observed shares are within the limits, but the sample is too small to be sure.</summary>
    Likely,

    /// <summary>An observed share is beyond its limit, but the sample is too small to be sure.</summary>
    Unlikely,

    /// <summary>A limit lies under its interval.</summary>
    Fails,
}

/// <summary>One limit of a grade against what was found.</summary>
/// <param name="What">defects or decay.</param>
/// <param name="Found">By weight, with its interval (Wilson).</param>
/// <param name="MoreBulbs">Further bulbs to look at, should they be as those so far, until the interval leaves the limit; 0: sure already; null: over a hundred thousand.</param>
public sealed record LimitFound(string What, double Limit, ShareInterval Found, ShareInterval Exact, int? MoreBulbs);

/// <summary>Verdict over all limits.</summary>
public sealed record GradeAnswer(GradeRule Rule, double Bulbs, GradeVerdict Verdict, IReadOnlyList<LimitFound> Limits);

/// <summary>
/// Judges a lot by its sampled bulbs. Limits are by weight, so a sample counts as (sum w)^2 / sum w^2 bulbs. Intervals are two-sided:
/// with 90% confidence a lot that is called sure is wrong once in twenty.
/// </summary>
public static class GradeJudging
{
    private const int MostMore = 100_000;

    /// <summary>Of sampled bulbs, none left out.</summary>
    public static GradeAnswer Of(IReadOnlyList<SampleBulb> bulbs, GradeRule rule, double confidence)
    {
        double mass = 0, squares = 0, faulty = 0, decayed = 0;
        foreach (SampleBulb bulb in bulbs)
        {
            mass += bulb.WeightG;
            squares += bulb.WeightG * bulb.WeightG;
            faulty += bulb.Defect == Defect.None ? 0 : bulb.WeightG;
            decayed += bulb.Defect is Defect.Decay or Defect.Mold ? bulb.WeightG : 0;
        }

        double worth = squares > 0 ? mass * mass / squares : 0, perBulb = bulbs.Count > 0 ? worth / bulbs.Count : 1;
        double Share(double part) => mass > 0 ? part / mass : 0;
        var limits = new List<LimitFound> { Against("defects", rule.Defects, Share(faulty), worth, perBulb, confidence) };
        if (rule.Decay is { } decay)
            limits.Add(Against("decay", decay, Share(decayed), worth, perBulb, confidence));
        return new(rule, worth, limits.Select(VerdictOf).Max(), limits);
    }

    /// <summary>The verdict of one limit.</summary>
    public static GradeVerdict VerdictOf(LimitFound limit) =>
        limit.Found.High <= limit.Limit ? GradeVerdict.Makes
        : limit.Found.Low > limit.Limit ? GradeVerdict.Fails
        : limit.Found.Share <= limit.Limit ? GradeVerdict.Likely : GradeVerdict.Unlikely;

    private static LimitFound Against(string what, double limit, double share, double worth, double perBulb, double confidence)
    {
        ShareInterval found = ShareInterval.Wilson(share * worth, worth, confidence);
        return new(what, limit, found, ShareInterval.Exact(share * worth, worth, confidence), More(limit, share, worth, perBulb, confidence));
    }

    // The interval only narrows with bulbs of the same share, so the first number that settles it is found by halving.
    private static int? More(double limit, double share, double worth, double perBulb, double confidence)
    {
        bool Sure(int more)
        {
            double all = worth + more * perBulb;
            if (all <= 0)
                return false;
            ShareInterval then = ShareInterval.Wilson(share * all, all, confidence);
            return then.High <= limit || then.Low > limit;
        }

        if (Sure(0))
            return 0;
        if (!Sure(MostMore))
            return null;
        int low = 0, high = MostMore;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            if (Sure(middle))
                high = middle;
            else
                low = middle;
        }

        return high;
    }
}
