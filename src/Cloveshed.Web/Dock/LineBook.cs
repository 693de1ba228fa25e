using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Sections;
using Cloveshed.Web.Plan.Since;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Dock;

/// <summary>What the adopted plan makes of an order line. A line that is short and late is short.</summary>
public enum LineState { OnTime, Late, Short, Unplanned }

/// <summary>An order line with what becomes of it.</summary>
/// <param name="Due">The week of its due day.</param>
/// <param name="Ships">The week of its first shipment; its due week where nothing ships.</param>
/// <param name="Changed">It was entered or changed since the plan was made.</param>
public sealed record DockLine(OrderLine Line, int Due, int Ships, int OnTime, int Late, int Short, string? Why, IReadOnlyList<TracedFill> Fills, bool Changed, LineState State)
{
    public double Money => (double)(Line.Units * Line.Price);

    /// <summary>How its price came to be; null in a season of contract 1.</summary>
    public PriceOrigin? PriceOrigin { get; init; }
}

/// <summary>Every order line of a season with what becomes of it, by the week in which it ships; made once for a plan and a season.</summary>
public sealed class LineBook
{
    private readonly ILookup<OrderId, DockLine> byOrder;

    private LineBook(IReadOnlyList<DockLine> lines)
    {
        All = lines;
        byOrder = lines.ToLookup(line => line.Line.Order);
        Customers = [.. lines.Select(line => line.Line.Customer).Distinct().Order(StringComparer.OrdinalIgnoreCase)];
    }

    /// <summary>By ship week, then due day, order and line.</summary>
    public IReadOnlyList<DockLine> All { get; }

    public IReadOnlyList<string> Customers { get; }

    /// <summary>In the order of their numbers as written in the files.</summary>
    public IReadOnlyList<DockLine> Of(OrderId order) => [.. byOrder[order].OrderBy(line => line.Line.Number.Length).ThenBy(line => line.Line.Number, StringComparer.Ordinal)];

    public static LineBook Of(Season season, PlanBook? book, SincePlan since)
    {
        SeasonSettings settings = season.Settings;
        IEnumerable<OrderOutcome> outcomes = book?.Orders ?? [.. season.Orders.Select(line => new OrderOutcome(line, 0, 0, 0, line.Units, null))];
        IEnumerable<DockLine> lines = outcomes.Select(one =>
        {
            TracedFill[] fills = book is null ? [] : [.. book.Trace.Of(one.Line.Order, one.Line.Number).OrderBy(fill => fill.Fill.Week)];
            int due = settings.WeekOf(one.Line.Due);
            bool changed = book is not null && since.Has(one.Line);
            LineState state = book is null || (changed && fills.Length == 0) ? LineState.Unplanned : one.Short > 0 ? LineState.Short : one.Late > 0 ? LineState.Late : LineState.OnTime;
            return new DockLine(one.Line, due, fills.Length > 0 ? fills[0].Fill.Week : due, one.OnTime, one.Late, one.Short, one.Why, fills, changed, state)
            {
                PriceOrigin = season.PriceOrigins.GetValueOrDefault((one.Line.Order, one.Line.Number)),
            };
        });
        return new LineBook([.. lines.OrderBy(line => line.Ships).ThenBy(line => line.Line.Due).ThenBy(line => line.Line.Order.Text, StringComparer.Ordinal).ThenBy(line => line.Line.Number, StringComparer.Ordinal)]);
    }
}

/// <summary>Line books of the last few plans and seasons.</summary>
public sealed class LineShelf(BasisShelf bases)
{
    private const int Room = 4;

    private readonly Shelf<LineBook> shelf = new(Room);

    public LineBook Of(ShedReading shed)
    {
        string plan = shed.State.Adopted is { } adopted ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{adopted.Document} {adopted.Basis} ") : "";
        return shelf.Of(plan + shed.State.InputDigest, () => LineBook.Of(shed.SeasonOpen, shed.Book, bases.SinceAdopted(shed.State)));
    }
}

/// <summary>Which order lines are asked for.</summary>
/// <param name="Week">Lines that ship in this week, or are due in it.</param>
/// <param name="Find">Part of an order's name, whatever its case.</param>
/// <param name="State">ontime, late, short, unplanned; anything else: all.</param>
public sealed record LinesAsked(string? Customer, string? Product, string? Week, string? State, string? Find, int From)
{
    /// <summary>Rows on a page.</summary>
    public const int PageSize = 80;

    public bool Any => new[] { Customer, Product, Week, State, Find }.Any(value => !string.IsNullOrEmpty(value));

    public string Path(int from) => Paths.Query(
        "/dock", ("customer", Customer), ("product", Product), ("week", Week), ("state", State), ("find", Find), ("from", from > 0 ? Paths.Number(from) : null));

    public IReadOnlyList<DockLine> Of(LineBook book, SeasonSettings settings)
    {
        int? week = NodaTime.Text.LocalDatePattern.Iso.Parse(Week ?? "") is { Success: true, Value: var day } ? settings.WeekOf(day) : null;
        LineState? state = State switch { "ontime" => LineState.OnTime, "late" => LineState.Late, "short" => LineState.Short, "unplanned" => LineState.Unplanned, _ => null };
        return
        [
            .. book.All.Where(line =>
                (string.IsNullOrEmpty(Customer) || line.Line.Customer == Customer) && (string.IsNullOrEmpty(Product) || line.Line.Product.Text == Product)
                && (week is null || line.Due == week || line.Fills.Any(fill => fill.Fill.Week == week) || line.Ships == week) && (state is null || line.State == state)
                && (string.IsNullOrEmpty(Find) || line.Line.Order.Text.Contains(Find, StringComparison.OrdinalIgnoreCase))),
        ];
    }
}
