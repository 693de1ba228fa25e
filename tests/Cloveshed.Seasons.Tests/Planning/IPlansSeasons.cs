using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>How hard to look: seconds at most, and the gap at which to stop.</summary>
public sealed record PlanEffort(double Seconds, double Gap);

/// <summary>What these tests need of the program: a plan of a season, and what the independent check has against it.</summary>
public interface IPlansSeasons
{
    /// <summary>The plan.</summary>
    PlanAnswer Plan(Season season, PlanEffort effort);

    /// <summary>Every breach that the check finds, as text; none for a sound plan.</summary>
    IReadOnlyList<string> Breaches(Season season, PlanAnswer answer);
}

/// <summary>The planner under test.</summary>
public static class Planner
{
    /// <summary>Null as long as the program has no planning entry: the planning tests are then skipped and say so.</summary>
    public static IPlansSeasons? Current => null;

    internal static IPlansSeasons Need()
    {
        Assert.SkipWhen(Current is null, "the program has no planning entry yet");
        return Current!;
    }

    internal static PlanAnswer Checked(Season season, PlanEffort effort)
    {
        IPlansSeasons planner = Need();
        PlanAnswer answer = planner.Plan(season, effort);
        Assert.Empty(planner.Breaches(season, answer));
        return answer;
    }
}
