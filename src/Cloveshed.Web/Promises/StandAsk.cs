namespace Cloveshed.Web.Promises;

/// <summary>Something put to a standing plan, and what came of it.</summary>
/// <param name="key">The same for the same question.</param>
public abstract class StandAsk<TAnswer>(string key)
    where TAnswer : class
{
    private static long last;

    private readonly TaskCompletionSource done = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile TAnswer? answer;
    private volatile string? why;

    public string Key => key;

    /// <summary>Null until it is answered, and where it could not be.</summary>
    public TAnswer? Answer => answer;

    /// <summary>Why it was not answered: what failed, or empty where the model was stopped or let go.</summary>
    public string? Why => why;

    public bool Ended => answer is not null || why is not null;

    /// <summary>Done when it has ended.</summary>
    public Task Done => done.Task;

    /// <summary>Later ones have higher numbers.</summary>
    internal long Number { get; } = Interlocked.Increment(ref last);

    /// <summary>It was given up because nobody looked: who comes back asks anew.</summary>
    internal virtual bool Left => false;

    internal void Answered(TAnswer? told)
    {
        answer = told;
        why = told is null ? "" : null;
        done.TrySetResult();
    }

    internal void NotAnswered(string problem)
    {
        why = problem;
        done.TrySetResult();
    }
}
