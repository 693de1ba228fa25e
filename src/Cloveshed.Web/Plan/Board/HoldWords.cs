using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Plan.Since;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Plan.Board;

/// <summary>Holds in words.</summary>
internal static class HoldWords
{
    /// <summary>"26-005 on Pack 1, week of 28 Sep: at least 12,000 lb", or not at all.</summary>
    public static string Told(RunHold hold, Words<PlanWord> words, Reader reader)
    {
        string week = reader.Day(hold.Week);
        if (!hold.Pinned)
        {
            return words.Say(PlanWord.HoldBarred, hold.Lot, hold.Line, week);
        }

        return hold.MassIn(reader.Options.ShowIn) is { } mass
            ? words.Say(PlanWord.HoldPinnedMass, hold.Lot, hold.Line, week, reader.Number(mass, 0) + "\u00A0" + reader.MassUnitName)
            : words.Say(PlanWord.HoldPinned, hold.Lot, hold.Line, week);
    }

    /// <summary>What the plan does about it.</summary>
    public static string Verdict(HoldKept kept, Words<PlanWord> words, Reader reader) => kept.Verdict switch
    {
        HoldVerdict.Kept => words[PlanWord.HoldKept],
        HoldVerdict.Less => words.Say(PlanWord.HoldLess, reader.Mass(kept.Run)),
        HoldVerdict.Missed => words[PlanWord.HoldMissed],
        HoldVerdict.NotYet => words[PlanWord.HoldNotYet],
        HoldVerdict.Outside => words[PlanWord.HoldOutside],
        _ => throw new ArgumentOutOfRangeException(nameof(kept)),
    };
}
