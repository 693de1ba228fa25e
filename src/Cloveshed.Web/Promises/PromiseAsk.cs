using System.Globalization;
using Cloveshed.Core.Planning.Promises;
using NodaTime.Text;

namespace Cloveshed.Web.Promises;

/// <summary>
/// A question put to a standing plan, and what came of it. It is worked on as long as somebody looks at it: a page that was left holds up no other question. A hand can stop it.
/// </summary>
public sealed class PromiseAsk(PromiseQuestion question, Func<double> elapsed) : StandAsk<PromiseAnswer>(KeyOf(question))
{
    /// <summary>A page looks every second or so, without script every three; a program is told to ask again.</summary>
    public const double PageSeconds = 15, ProgramSeconds = 120;

    private volatile bool stopped, left;
    private double until = elapsed() + PageSeconds;

    public PromiseQuestion Question => question;

    /// <summary>A hand has stopped it; it stays so until it is asked anew.</summary>
    public bool Stopped => stopped && Answer is null;

    internal override bool Left => left;

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

    internal static string KeyOf(PromiseQuestion question) => string.Join('\n', question.Lines
        .Select(line => string.Create(CultureInfo.InvariantCulture, $"{line.Product}\t{line.Units}\t{line.Price}\t{line.LargerOk}"))
        .Prepend($"{LocalDatePattern.Iso.Format(question.ShipFrom)} {LocalDatePattern.Iso.Format(question.Due)}"));
}
