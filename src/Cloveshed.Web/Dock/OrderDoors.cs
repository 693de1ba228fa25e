using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Dock;

/// <summary>POST /dock-orders/…: orders and lines added, changed and cancelled, a due day moved.</summary>
internal static class OrderDoors
{
    public const string RowField = "row", SeenField = "seen", File = "orders.csv";

    internal const string Place = "dock";

    /// <summary>The cells of a line that its form asks for, in the order of the form.</summary>
    public static IReadOnlyList<(string Column, DockWord Name)> Columns { get; } =
    [
        ("product", DockWord.ProductHead), ("units", DockWord.UnitsHead), ("price", DockWord.PriceHead), ("ship_from", DockWord.ShipFrom), ("due", DockWord.DueHead),
        ("firm", DockWord.Firm), ("late_cost", DockWord.LateCost), ("short_cost", DockWord.ShortCost), ("larger_ok", DockWord.LargerOk), ("whole", DockWord.Whole),
    ];

    /// <summary>Likewise with what a season of contract 2 asks for besides.</summary>
    public static IReadOnlyList<(string Column, DockWord Name)> ColumnsOf(int contract) =>
        contract == 1 ? Columns : [.. Columns, (OrderDraft.PriceList, DockWord.PriceListName), (OrderDraft.Destination, DockWord.DestinationName)];

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/dock-orders/add", Add);
        routes.MapPost("/dock-orders/change", Change);
        routes.MapPost("/dock-orders/cancel", Cancel);
        routes.MapPost("/dock-orders/due", MoveDue);
        routes.MapPost("/dock-orders/back", LoadDoor.CameBack);
    }

    private static IResult Add(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, SaidOnce said)
    {
        Words<DockWord> words = Words.Of<DockWord>(shed.Viewer.Language);
        if (FactDesk.Id(form) is not { } id)
        {
            return TypedResults.BadRequest();
        }

        OrderDraft draft = OrderDraft.Of(form, id);
        string order = draft.Order ?? draft["order"];
        Dictionary<string, string>[] lines = [.. draft.LineCells()];
        // What this form made when it was sent before does not count for the numbers of its lines.
        HashSet<Guid> own = [.. Enumerable.Range(0, OrderDraft.Lines).Select(at => FactDesk.Following(id, at))];
        SeasonRow[] there = [.. Rows(shed, order).Where(row => !own.Contains(row.Fact))];
        List<FormFault> faults = [];
        if (lines.Length == 0)
        {
            faults.Add(new FormFault(null, words[DockWord.NoLines]));
        }

        if (draft.Order is null && there.Length > 0)
        {
            faults.Add(new FormFault(null, words.Say(DockWord.OrderThere, order)));
        }

        if (draft.Order is not null && there.Length == 0)
        {
            faults.Add(new FormFault(null, words.Say(DockWord.NoOrderLead, order)));
        }

        if (shed.Viewer.AsOf is not null)
        {
            Words<ShellWord> shell = Words.Of<ShellWord>(shed.Viewer.Language);
            faults.Add(new FormFault(null, shell[ShellWord.AsOfReadOnly], shell[ShellWord.AsOfReadOnlyRemedy]));
        }

        if (faults.Count == 0)
        {
            int next = there.Select(row => int.TryParse(row.Cells["line"], CultureInfo.InvariantCulture, out int number) ? number : 0).DefaultIfEmpty(0).Max();
            string customer = draft.Order is null ? draft["customer"] : there[0].Cells["customer"];
            Dictionary<string, string> head = new() { ["order"] = order, ["customer"] = customer, ["due"] = draft["due"], ["firm"] = draft["firm"] == "yes" ? "yes" : "no" };
            foreach ((string column, string text) in new[] { ("ship_from", draft["ship_from"]), ("whole", draft["whole"] == "yes" ? "yes" : "") })
            {
                if (text.Length > 0)
                {
                    head[column] = text;
                }
            }

            FactOrigin origin = desk.Origin(Place);
            NewFact[] batch = [.. lines.Select((cells, at) => origin.RowEntered(
                File, new Dictionary<string, string>(head.Concat(cells)) { ["line"] = (next + at + 1).ToString(CultureInfo.InvariantCulture) }, FactDesk.Following(id, at), Reason(form)))];
            if (desk.Append(batch) is not Appended.Refused refused)
            {
                said.Say(context, new Said(false, words.Say(DockWord.Added, order, lines.Length)));
                return new SeeOther(Paths.Of(new OrderId(order)));
            }

            faults.AddRange(FormFault.Of(refused));
        }

        return ShownAgain.As<OrderAgain>(new Dictionary<string, object> { [nameof(OrderAgain.Draft)] = draft, [nameof(OrderAgain.Faults)] = faults });
    }

    private static IResult Change(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        Words<DockWord> words = Words.Of<DockWord>(shed.Viewer.Language);
        if (Seen(shed, form) is not { } row)
        {
            return desk.Back(context, form, new Said(true, words[DockWord.LineMoved]));
        }

        Dictionary<string, string> cells = With(row, ColumnsOf(2).Where(column => form.ContainsKey(column.Column)).Select(column => (column.Column, form[column.Column].ToString().Trim())));
        return desk.Put(context, form, Place, (origin, id) => origin.RowChanged(row, cells, id, Reason(form)), words.Say(DockWord.LineChanged, row.Cells["order"], row.Cells["line"]));
    }

    private static IResult Cancel(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        Words<DockWord> words = Words.Of<DockWord>(shed.Viewer.Language);
        // A line that is gone may have gone by this very form: then the ledger gives the same answer.
        SeasonRow? row = Seen(shed, form) ?? (Asked(form) is var (number, seen) ? new SeasonRow(File, number, new Dictionary<string, string> { ["order"] = "", ["line"] = "" }, seen, 0) : null);
        return row is null ? desk.Back(context, form, new Said(true, words[DockWord.LineMoved]))
            : desk.Put(context, form, Place, (origin, id) => origin.RowDropped(row, id, Reason(form)), words.Say(DockWord.LineCancelled, form["name"].ToString()));
    }

    /// <summary>All lines of an order to another day; a ship-from that would come after it goes with it.</summary>
    private static IResult MoveDue(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        Words<DockWord> words = Words.Of<DockWord>(shed.Viewer.Language);
        string order = form["order"].ToString(), due = form["due"].ToString().Trim(), from = form["ship_from"].ToString().Trim();
        SeasonRow[] rows = [.. Rows(shed, order)];
        string[] seen = [.. form[SeenField].OfType<string>()];
        if (rows.Length == 0 || seen.Length != rows.Length || !seen.All(id => Guid.TryParse(id, out _)))
        {
            return desk.Back(context, form, new Said(true, words[DockWord.LineMoved]));
        }

        return desk.PutAll(
            context, form, Place,
            (origin, id) => [.. rows.Select((row, at) => origin.RowChanged(row with { Fact = Guid.Parse(seen[at]) }, With(row, [("due", due), ("ship_from", from)]), FactDesk.Following(id, at), Reason(form)))],
            words.Say(DockWord.DueMoved, order, due));
    }

    /// <summary>The rows of an order in the season as it is.</summary>
    internal static IEnumerable<SeasonRow> Rows(ShedReading shed, string order) => (shed.State.Rows?.Of(File) ?? []).Where(row => row.Cells["order"] == order);

    /// <summary>The row of a form as it is now, named by the fact that the page showed; null where it is gone.</summary>
    internal static SeasonRow? Seen(ShedReading shed, IFormCollection form) =>
        Asked(form) is var (number, seen) && shed.State.Rows?.Find(File, number) is { } row ? row with { Fact = seen } : null;

    internal static Dictionary<string, string> With(SeasonRow row, IEnumerable<(string Column, string Text)> changed)
    {
        Dictionary<string, string> cells = new(row.Cells, StringComparer.Ordinal);
        foreach ((string column, string text) in changed)
        {
            if (text.Length > 0 || cells.ContainsKey(column))
            {
                cells[column] = text;
            }
        }

        return cells;
    }

    internal static string? Reason(IFormCollection form) => form["reason"].ToString().Trim() is { Length: > 0 } reason ? reason : null;

    private static (int Row, Guid Seen)? Asked(IFormCollection form) =>
        int.TryParse(form[RowField], CultureInfo.InvariantCulture, out int number) && Guid.TryParse(form[SeenField], out Guid seen) ? (number, seen) : null;
}
