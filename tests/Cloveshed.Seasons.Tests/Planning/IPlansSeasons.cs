using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>How hard to look: seconds at most, and the gap at which to stop.</summary>
public sealed record PlanEffort(double Seconds, double Gap);

/// <summary>What these tests need of the program.</summary>
public interface IPlansSeasons
{
    /// <summary>The plan of a season that the reader would accept.</summary>
    PlanAnswer Plan(Season season, PlanEffort effort);
}

/// <summary>The planner under test.</summary>
public static class Planner
{
    /// <summary>The shipped engine.
    public static IPlansSeasons? Current { get; } = new EnginePlanner();

    internal static IPlansSeasons Need()
    {
        Assert.SkipWhen(Current is null, "the program has no planning entry yet");
        return Current!;
    }

    /// <summary>A plan that passed the independent check.</summary>
    internal static PlanAnswer Checked(Season season, PlanEffort effort)
    {
        PlanAnswer answer = Need().Plan(season, effort);
        Judge.Holds(season, answer);
        return answer;
    }
}
