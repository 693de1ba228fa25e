using Microsoft.AspNetCore.Http;

namespace Cloveshed.Web.Dock;

/// <summary>An order as it is typed, so that it can be shown again with what was wrong.</summary>
/// <param name="Order">Lines are added to this order; null: a new one.</param>
/// <param name="Values">By the names of the fields.</param>
/// <param name="Id">The form's fact id; null makes a new one.</param>
public sealed record OrderDraft(string? Order, IReadOnlyDictionary<string, string> Values, Guid? Id)
{
    /// <summary>Lines that one form takes; more are added to the order afterwards.</summary>
    public const int Lines = 6;

    /// <summary>What a line's fields are called, before a dash and its number from 1.</summary>
    public const string Product = "product", Units = "units", Price = "price", Late = "late_cost", Short = "short_cost", Larger = "larger_ok", PriceList = "price_list", Destination = "destination";

    public static OrderDraft Empty(string? order = null) => new(order, new Dictionary<string, string>(), null);

    public static OrderDraft Of(IFormCollection form, Guid id) =>
        new(form["added"].ToString() is { Length: > 0 } order ? order : null, form.ToDictionary(field => field.Key, field => field.Value.ToString().Trim()), id);

    public string this[string field] => Values.GetValueOrDefault(field, "");

    public string Line(string field, int at) => this[$"{field}-{at}"];

    /// <summary>A tick that was never asked about is as given.</summary>
    public bool Ticked(string field, bool otherwise) => Values.Count == 0 ? otherwise : this[field] == "yes";

    /// <summary>The lines that say anything, with their cells as the season's file has them.</summary>
    public IEnumerable<Dictionary<string, string>> LineCells()
    {
        for (int at = 1; at <= Lines; at++)
        {
            if (Line(Product, at).Length + Line(Units, at).Length + Line(Price, at).Length == 0)
            {
                continue;
            }

            Dictionary<string, string> cells = new() { ["product"] = Line(Product, at), ["units"] = Line(Units, at), ["price"] = Line(Price, at) };
            foreach (string optional in new[] { Late, Short, PriceList, Destination })
            {
                if (Line(optional, at).Length > 0)
                {
                    cells[optional] = Line(optional, at);
                }
            }

            if (Line(Larger, at) == "yes")
            {
                cells[Larger] = "yes";
            }

            yield return cells;
        }
    }
}
