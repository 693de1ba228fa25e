using Cloveshed.Core.Planning;
using NodaTime;

namespace Cloveshed.Pictures.Reading;

/// <summary>What a part of a run's reason is about.</summary>
public enum WhyKind
{
    /// <summary>What it is for: the orders that it serves, the seed, the market.</summary>
    Serves,

    /// <summary>The clock that it beats.</summary>
    Clock,

    /// <summary>What is full in its week.</summary>
    Binds,

    /// <summary>The next best choice, and what that would have cost.</summary>
    Next,
}

/// <summary>What a run takes, and where else there would be hours for it.</summary>
/// <param name="Mass">In the season's unit.</param>
/// <param name="Free">Hours that a line has free in the week of a Monday, overtime included.</param>
public sealed record RunElsewhere(double Mass, double Hours, Func<string, LocalDate, double> Free);

/// <summary>The planner's reason for a run, told in its four parts, each in the reader's language.</summary>
public static class RunWhy
{
    /// <summary>Money below which a choice is no worse in the eyes of a shed: plans are not good to a few dollars. Our own figure.</summary>
    private const double FewDollars = 5;

    /// <summary>Hours below which nothing is begun. Our own figure.</summary>
    private const double FewHours = 0.5;

    /// <summary>A reason for a list: that something else would do as well, or for a few dollars less, is said of every other run and helps nobody to read it.</summary>
    public static string Short(string reason)
    {
        string[] parts = [.. reason.Split(Remarks.Between).Where(part => PlannerWords.Told(part) is not { } told || !Alike(told))];
        return parts.Length > 0 ? string.Join(Remarks.Between, parts) : reason;
    }

    /// <summary>The parts in their order, empty texts where the plan says nothing of one; null where a remark is not the planner's.</summary>
    /// <param name="elsewhere">With it, a choice that is as good says how much of the run could go there.</param>
    public static IReadOnlyList<(WhyKind Kind, string Text)>? Of(string reason, Reader reader, RunElsewhere? elsewhere = null)
    {
        Dictionary<WhyKind, List<string>> parts = Enum.GetValues<WhyKind>().ToDictionary(kind => kind, _ => new List<string>());
        foreach (string part in reason.Split(Remarks.Between))
        {
            if (PlannerWords.Told(part) is not { } told || PlannerWords.Told(part, reader) is not { } text)
            {
                return null;
            }

            if (elsewhere is not null && told.Remark is (Remark.AlikeLine or Remark.NextLine) && Alike(told))
            {
                text = Said(told.Values[0].Text, PlannerWords.DayOf(told.Values[1].Text), elsewhere, reader);
            }

            if (!parts[KindOf(told.Remark)].Contains(text))
            {
                parts[KindOf(told.Remark)].Add(text);
            }
        }

        return [.. parts.OrderBy(pair => pair.Key).Select(pair => (pair.Key, string.Join(Remarks.Between, pair.Value)))];
    }

    private static bool Alike((Remark Remark, IReadOnlyList<(string Text, string Kind)> Values) told) =>
        told.Remark is Remark.AlikeLine or Remark.AlikeSold or Remark.AlikeKept
        || (told.Remark is Remark.NextLine or Remark.NextSold or Remark.NextKept && PlannerWords.Number(told.Values[^1].Text) < FewDollars);

    private static string Said(string line, LocalDate week, RunElsewhere run, Reader reader)
    {
        double free = run.Free(line, week);
        return free < Math.Min(FewHours, run.Hours) ? reader.Say(Say.AlikeNone, line, reader.DayYear(week))
            : free >= run.Hours ? reader.Say(Say.AlikeAll, line, reader.DayYear(week), reader.Hours(free))
            : reader.Say(Say.AlikePart, line, reader.DayYear(week), reader.Hours(free), reader.Mass(run.Mass * free / run.Hours));
    }

    private static WhyKind KindOf(Remark remark) => remark switch
    {
        Remark.PastLife or Remark.LifeUntil or Remark.LifeUsed or Remark.LookedAt => WhyKind.Clock,
        Remark.HandsShort or Remark.LineFullWithOvertime or Remark.LineFull or Remark.PlaceFull or Remark.RoomOpened => WhyKind.Binds,
        Remark.NextLine or Remark.NextSold or Remark.NextKept or Remark.NextGone or Remark.AlikeLine or Remark.AlikeSold or Remark.AlikeKept
            or Remark.BetterLine or Remark.BetterSold or Remark.BetterKept => WhyKind.Next,
        _ => WhyKind.Serves,
    };
}
