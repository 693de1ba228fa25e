using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Plan.Compare;

/// <summary>A run, and a change of one, in words.</summary>
internal static class RunWords
{
    /// <summary>A lot, or what was sorted out of it.</summary>
    public static string Lot(string lot, bool fromSorted, Reader reader) => fromSorted ? reader.Say(Say.SortedOf, lot) : lot;

    /// <summary>"Pack 1: 26-005 12,000 lb instead of 9,000 lb", or new, or no longer.</summary>
    public static string Told(RunChange change, Words<PlanWord> words, Reader reader)
    {
        string lot = Lot(change.Lot.Text, change.FromSorted, reader);
        return change.Before <= 0 ? words.Say(PlanWord.ChangeNew, change.Line, lot, reader.Mass(change.After))
            : change.After <= 0 ? words.Say(PlanWord.ChangeGone, change.Line, lot, reader.Mass(change.Before))
            : words.Say(PlanWord.ChangeOther, change.Line, lot, reader.Mass(change.After), reader.Mass(change.Before));
    }
}
