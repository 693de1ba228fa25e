using Cloveshed.Core.Planning.Supposing;

namespace Cloveshed.Web.Suppose;

/// <summary>Changes put to a standing plan, and what came of it.</summary>
public sealed class SupposeAsk(IReadOnlyList<SeasonChange> changes)
{
    private static long last;

    private readonly TaskCompletionSource done = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile Supposed? answer;
    private volatile string? why;

    /// <summary>The same for the same changes in the same order.</summary>
    public string Key { get; } = string.Join('\n', changes.Select(ChangeText.Of));

    /// <summary>Later ones have higher numbers.</summary>
    internal long Number { get; } = Interlocked.Increment(ref last);

    public IReadOnlyList<SeasonChange> Changes => changes;

    /// <summary>Null until it is answered, and where it could not be.</summary>
    public Supposed? Answer => answer;

    /// <summary>Why it was not answered: what failed, or empty where the model was stopped or let go.</summary>
    public string? Why => why;

    public bool Ended => answer is not null || why is not null;

    /// <summary>Done when it has ended.</summary>
    public Task Done => done.Task;

    internal void Answered(Supposed told)
    {
        answer = told;
        done.TrySetResult();
    }

    internal void NotAnswered(string problem)
    {
        why = problem;
        done.TrySetResult();
    }
}
