using Cloveshed.Core.Planning;

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

/// <summary>The planner's reason for a run, told in its four parts, each in the reader's language.</summary>
public static class RunWhy
{
    /// <summary>The parts in their order, empty texts where the plan says nothing of one; null where a remark is not the planner's.</summary>
    public static IReadOnlyList<(WhyKind Kind, string Text)>? Of(string reason, Reader reader)
    {
        Dictionary<WhyKind, List<string>> parts = Enum.GetValues<WhyKind>().ToDictionary(kind => kind, _ => new List<string>());
        foreach (string part in reason.Split(Remarks.Between))
        {
            if (PlannerWords.Told(part) is not { } told || PlannerWords.Told(part, reader) is not { } text)
            {
                return null;
            }

            if (!parts[KindOf(told.Remark)].Contains(text))
            {
                parts[KindOf(told.Remark)].Add(text);
            }
        }

        return [.. parts.OrderBy(pair => pair.Key).Select(pair => (pair.Key, string.Join(Remarks.Between, pair.Value)))];
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
