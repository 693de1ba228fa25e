namespace Cloveshed.Core.Drum;

/// <summary>A cracker whose half-cracked bulbs go round again.</summary>
/// <param name="FeedKgPerHour">Fresh bulbs dumped.</param>
/// <param name="UncrackedFirst">Share by mass of a first pass that comes out uncracked or half-cracked.</param>
/// <param name="UncrackedAgain">The same of what comes round again: mostly harder nuts.</param>
/// <param name="CaughtShare">Of the uncracked, the share that the screen sends back; the rest goes on among the cloves.</param>
/// <param name="WasteShare">Skins, roots and plates of what cracks, by mass.</param>
/// <param name="HurtPerPass">Share of sound cloves hurt in each pass that their bulb takes.</param>
public sealed record LoopQuestion(double FeedKgPerHour, double UncrackedFirst, double UncrackedAgain, double CaughtShare, double WasteShare, double HurtPerPass);

/// <summary>The loop as it runs on for hours, kg per hour.</summary>
/// <param name="Recirculating">Coming round again.</param>
/// <param name="CrackerLoad">Fed and coming round.</param>
/// <param name="RecirculatingShare">Coming round over fed.</param>
/// <param name="Cloves">Cracked out, hurt ones among them.</param>
/// <param name="Uncaught">Uncracked pieces that go on among the cloves.</param>
/// <param name="MeanPasses">Passes of a kilogram fed.</param>
public sealed record LoopAnswer(double Recirculating, double CrackerLoad, double RecirculatingShare, double Cloves, double Waste, double Uncaught, double Hurt, double MeanPasses);

/// <summary>
/// Steady state of the loop, in closed form: R = F c u1 / (1 - c u2), since what comes back in an hour is what the screen catches of
/// a first pass and of the passes after it. What goes in comes out: cloves + waste + uncaught = feed.
/// </summary>
public static class CrackerLoop
{
    /// <summary>The steady state; a loop that would fill without end (all comes back) is refused.</summary>
    public static LoopAnswer At(LoopQuestion q)
    {
        if (q.CaughtShare * q.UncrackedAgain >= 1)
            throw new ArgumentException("Nothing that comes round again is ever cracked: the loop fills without end.", nameof(q));
        double round = q.FeedKgPerHour * q.CaughtShare * q.UncrackedFirst / (1 - q.CaughtShare * q.UncrackedAgain);
        double crackedFirst = q.FeedKgPerHour * (1 - q.UncrackedFirst), crackedAgain = round * (1 - q.UncrackedAgain), cracked = crackedFirst + crackedAgain;
        double uncaught = (1 - q.CaughtShare) * (q.FeedKgPerHour * q.UncrackedFirst + round * q.UncrackedAgain);
        double cloves = cracked * (1 - q.WasteShare);
        // What cracks in its nth pass, n from 2, is F c u1 (c u2)^(n-2) (1 - u2); of it (1 - h)^n is unhurt: a geometric sum again.
        double sound = 1 - q.HurtPerPass, back = q.CaughtShare * q.UncrackedAgain;
        double unhurtAgain = q.FeedKgPerHour * q.CaughtShare * q.UncrackedFirst * (1 - q.UncrackedAgain) * sound * sound / (1 - back * sound);
        double hurt = (1 - q.WasteShare) * (crackedFirst * q.HurtPerPass + crackedAgain - unhurtAgain);
        return new(
            round, q.FeedKgPerHour + round, q.FeedKgPerHour > 0 ? round / q.FeedKgPerHour : 0, cloves, cracked * q.WasteShare, uncaught, hurt,
            q.FeedKgPerHour > 0 ? (q.FeedKgPerHour + round) / q.FeedKgPerHour : 0);
    }
}
