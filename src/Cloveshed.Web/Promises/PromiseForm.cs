using System.Globalization;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Dock;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Http;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Web.Promises;

/// <summary>
/// A question as it stands in an address: the fields are those of a new order at the dock, so that taking the order sends them on. The address can be kept and sent to someone; it
/// asks again.
/// </summary>
/// <param name="Question">Null where nothing was asked, or where something is wrong with it.</param>
public sealed record PromiseForm(OrderDraft Draft, PromiseQuestion? Question, IReadOnlyList<FormFault> Faults)
{
    /// <summary>Units of one line that can be asked for.</summary>
    public const int MostUnits = 10_000_000;

    public static PromiseForm Of(IQueryCollection query, Season season, Words<PromiseWord> words)
    {
        OrderDraft draft = new(null, query.ToDictionary(field => field.Key, field => field.Value.ToString().Trim()), null);
        List<FormFault> faults = [];
        List<PromiseLine> lines = [];
        for (int at = 1; at <= OrderDraft.Lines; at++)
        {
            if (draft.Line(OrderDraft.Units, at).Length + draft.Line(OrderDraft.Price, at).Length > 0 && Line(draft, at, season, words, faults) is { } line)
            {
                lines.Add(line);
            }
        }

        if (lines.Count + faults.Count == 0 && draft["asked"].Length == 0)
        {
            return new PromiseForm(draft, null, []);
        }

        if (lines.Count + faults.Count == 0)
        {
            faults.Add(new FormFault("units-1", words[PromiseWord.FaultNoLines]));
        }

        LocalDate? due = Day(draft["due"]), from = draft["ship_from"].Length == 0 ? season.Settings.AsOf : Day(draft["ship_from"]);
        if (due is null)
        {
            faults.Add(new FormFault("due", words[PromiseWord.FaultDue]));
        }

        if (from is null || (due is not null && draft["ship_from"].Length > 0 && from > due))
        {
            faults.Add(new FormFault("ship_from", words[PromiseWord.FaultFrom]));
        }

        return new PromiseForm(draft, faults.Count == 0 ? new PromiseQuestion(lines, from!.Value, due!.Value) : null, faults);
    }

    /// <summary>The address of a question of one line.</summary>
    public static string Path(string product, double units, LocalDate due) =>
        Paths.Query(PromiseDoors.Page, ("asked", "yes"), ("due", Paths.Day(due)), ("product-1", product), ("units-1", Paths.Number(units))) + "#answer";

    private static PromiseLine? Line(OrderDraft draft, int at, Season season, Words<PromiseWord> words, List<FormFault> faults)
    {
        string product = draft.Line(OrderDraft.Product, at), number = at.ToString(CultureInfo.InvariantCulture);
        int faulty = faults.Count;
        Product? known = season.Products.FirstOrDefault(one => one.Id.Text == product);
        if (known is null)
        {
            faults.Add(new FormFault($"{OrderDraft.Product}-{number}", words.Say(PromiseWord.FaultProduct, number)));
        }

        if (!int.TryParse(draft.Line(OrderDraft.Units, at), NumberStyles.None, CultureInfo.InvariantCulture, out int units) || units is < 1 or > MostUnits)
        {
            faults.Add(new FormFault($"{OrderDraft.Units}-{number}", words.Say(PromiseWord.FaultUnits, number)));
        }

        decimal? price = null;
        if (draft.Line(OrderDraft.Price, at) is { Length: > 0 } text)
        {
            if (decimal.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out decimal offered) && offered <= 100_000_000)
            {
                price = offered;
            }
            else
            {
                faults.Add(new FormFault($"{OrderDraft.Price}-{number}", words.Say(PromiseWord.FaultPrice, number)));
            }
        }

        return faults.Count > faulty ? null : new PromiseLine(known!.Id, units, price, draft.Line(OrderDraft.Larger, at) == "yes");
    }

    private static LocalDate? Day(string text) => LocalDatePattern.Iso.Parse(text) is { Success: true, Value: var day } ? day : null;
}
