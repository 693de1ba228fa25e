using Cloveshed.Check;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.Seasons.Tests.Odd;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>The independent check, over folders as it works: the season written by our own hand, the answer by the program's.</summary>
internal static class Judge
{
    public static CheckResult Of(Season season, PlanAnswer answer)
    {
        string folder = Path.Combine(Path.GetTempPath(), $"odd-{Guid.NewGuid():N}");
        try
        {
            OddFolder.Write(season, Path.Combine(folder, "in"), null);
            AnswerWriter.Write(answer, season, Path.Combine(folder, "out"));
            return PlanCheck.Check(Path.Combine(folder, "in"), Path.Combine(folder, "out"));
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    /// <summary>The check finds nothing and recomputes the value.</summary>
    public static void Holds(Season season, PlanAnswer answer)
    {
        CheckResult result = Of(season, answer);
        Assert.Empty(result.Breaches);
        Assert.NotNull(result.Value);
        Assert.Equal(result.Value.Value, answer.Summary.Value, 0.01 + 1e-6 * Math.Max(Math.Abs(answer.Summary.Value), answer.Summary.Revenue));
    }
}
