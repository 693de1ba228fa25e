using System.Globalization;
using Cloveshed.Core.Planning.Promises;
using NodaTime.Text;

namespace Cloveshed.Web.Promises;

/// <summary>
/// A question put to a standing plan, and what came of it. It is worked on as long as somebody looks at it: a page that was left holds up no other question. A hand can stop it.
/// </summary>
public sealed class PromiseAsk(PromiseQuestion question, Func<double> elapsed)
{
    /// <summary>A page looks every second or so, without script every three; a program is told to ask again.</summary>
    public const double PageSeconds = 15, ProgramSeconds = 120;

    private static long last;

    private readonly TaskCompletionSource done = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile PromiseAnswer? answer;
    private volatile string? why;
    private volatile bool stopped, left;
    private double until = elapsed() + PageSeconds;

    /// <summary>The same for the same question.</summary>
    public string Key { get; } = KeyOf(question);

    /// <summary>Later ones have higher numbers.</summary>
    internal long Number { get; } = Interlocked.Increment(ref last);

    public PromiseQuestion Question => question;

    /// <summary>Null until it is answered, and where it could not be.</summary>
    public PromiseAnswer? Answer => answer;

    /// <summary>Why it was not answered: what failed, or empty where the model was stopped or let go.</summary>
    public string? Why => why;

    /// <summary>A hand has stopped it; it stays so until it is asked anew.</summary>
    public bool Stopped => stopped && answer is null;

    /// <summary>It was given up because nobody looked: who comes back asks anew.</summary>
    internal bool Left => left;

    /// <summary>Whether to work on it no further.</summary>
    internal bool GivenUp => stopped || elapsed() > Volatile.Read(ref until);

    public bool Ended => answer is not null || why is not null;

    /// <summary>Done when it has ended.</summary>
    public Task Done => done.Task;

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

    internal void Answered(PromiseAnswer? told)
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

    internal static string KeyOf(PromiseQuestion question) => string.Join('\n', question.Lines
        .Select(line => string.Create(CultureInfo.InvariantCulture, $"{line.Product}\t{line.Units}\t{line.Price}\t{line.LargerOk}"))
        .Prepend($"{LocalDatePattern.Iso.Format(question.ShipFrom)} {LocalDatePattern.Iso.Format(question.Due)}"));
}
