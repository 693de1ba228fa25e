namespace Cloveshed.Web.Promises;

/// <summary>
/// Something put to a standing plan, and what came of it. It is worked on as long as somebody looks at it: a page that was left holds up no other question. A hand can stop it.
/// </summary>
/// <param name="key">The same for the same question.</param>
public abstract class StandAsk<TAnswer>(string key, Func<double> elapsed)
    where TAnswer : class
{
    private static long last;

    private volatile bool stopped, left;
    private double until = elapsed() + PromiseAsk.PageSeconds;

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

    /// <summary>A hand has stopped it; it stays so until it is asked anew.</summary>
    public bool Stopped => stopped && Answer is null;

    /// <summary>It was given up because nobody looked: who comes back asks anew.</summary>
    internal bool Left => left;

    /// <summary>Whether to work on it no further.</summary>
    internal bool GivenUp => stopped || elapsed() > Volatile.Read(ref until);

    /// <summary>Ends the work at its next step.</summary>
    public void Stop() => stopped = true;

    /// <summary>Somebody looks, and will again within so many seconds.</summary>
    internal void Looked(double seconds) => Volatile.Write(ref until, Math.Max(Volatile.Read(ref until), elapsed() + seconds));

    /// <summary>Nobody works on it any more.</summary>
    internal void GaveUp()
    {
        left = !stopped;
        NotAnswered("");
    }

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
