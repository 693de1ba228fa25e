using System.Globalization;
using Cloveshed.Core.Planning.Promises;
using NodaTime.Text;

namespace Cloveshed.Web.Promises;

/// <summary>A question put to a standing plan, and what came of it.</summary>
public sealed class PromiseAsk(PromiseQuestion question, Func<double> elapsed) : StandAsk<PromiseAnswer>(KeyOf(question), elapsed)
{
    /// <summary>A page looks every second or so, without script every three; a program is told to ask again.</summary>
    public const double PageSeconds = 15, ProgramSeconds = 120;

    public PromiseQuestion Question => question;

    internal static string KeyOf(PromiseQuestion question) => string.Join('\n', question.Lines
        .Select(line => string.Create(CultureInfo.InvariantCulture, $"{line.Product}\t{line.Units}\t{line.Price}\t{line.LargerOk}"))
        .Prepend($"{LocalDatePattern.Iso.Format(question.ShipFrom)} {LocalDatePattern.Iso.Format(question.Due)}"));
}
