using System.Globalization;
using Cloveshed.Core.Planning.Promises;
using NodaTime.Text;

namespace Cloveshed.Web.Promises;

/// <summary>A question put to a standing plan, and what came of it.</summary>
public sealed class PromiseAsk(PromiseQuestion question)
{
    private static long last;

    private readonly TaskCompletionSource done = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile PromiseAnswer? answer;
    private volatile string? why;

    /// <summary>The same for the same question.</summary>
    public string Key { get; } = KeyOf(question);

    /// <summary>Later ones have higher numbers.</summary>
    internal long Number { get; } = Interlocked.Increment(ref last);

    public PromiseQuestion Question => question;

    /// <summary>Null until it is answered, and where it could not be.</summary>
    public PromiseAnswer? Answer => answer;

    /// <summary>Why it was not answered: what failed, or empty where the model was stopped or let go.</summary>
    public string? Why => why;

    public bool Ended => answer is not null || why is not null;

    /// <summary>Done when it has ended.</summary>
    public Task Done => done.Task;

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

    private static string KeyOf(PromiseQuestion question) => string.Join('\n', question.Lines
        .Select(line => string.Create(CultureInfo.InvariantCulture, $"{line.Product}\t{line.Units}\t{line.Price}\t{line.LargerOk}"))
        .Prepend($"{LocalDatePattern.Iso.Format(question.ShipFrom)} {LocalDatePattern.Iso.Format(question.Due)}"));
}
