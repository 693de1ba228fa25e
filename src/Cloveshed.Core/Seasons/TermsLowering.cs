using System.Globalization;
using NodaTime.Text;

namespace Cloveshed.Core.Seasons;

/// <summary>What keeps a row's terms from coming to a price.</summary>
public enum TermsFaultKind
{
    /// <summary>The list has no price for the product in the week.</summary>
    NoListPrice,

    /// <summary>The destination has no freight for the product, nor for any.</summary>
    NoFreight,

    /// <summary>Promotions and freight take more than the price.</summary>
    BelowNothing,

    /// <summary>orders.csv has an order that is called as the program's week is.</summary>
    NameTaken,
}

/// <summary>One such fault of a row, in the first week in which it has it.</summary>
/// <param name="OfProgram">Of <see cref="BuyerTerms.Programs"/>; else of <see cref="BuyerTerms.Orders"/>.</param>
/// <param name="Row">Its place there.</param>
/// <param name="Origin">Where there is a price, how it came to be.</param>
public sealed record TermsFault(TermsFaultKind Kind, bool OfProgram, int Row, int Week, PriceOrigin? Origin);

/// <summary>Buyers' terms as order lines, which plans know: the rows of orders.csv first, then the programs week by week.</summary>
public sealed record LoweredTerms(
    IReadOnlyList<OrderLine> Orders, IReadOnlyDictionary<(OrderId Order, string Number), PriceOrigin> Origins, IReadOnlyList<TermsFault> Faults,
    IReadOnlyList<Promotion> IdlePromotions);

/// <summary>
/// Lowers buyers' terms to order lines. A list's price is the one of the week in which a line is due. A program's week is an order named after
/// the program and the week's Monday, with a firm line of the least and a line of the rest up to the most that may go unfilled; both are
/// numbered by the row's place among the program's rows, 1 and 2 for the first, 3 and 4 for the next. Weeks before the one that the
/// files describe are over, and no line is made of them.
/// </summary>
public static class TermsLowering
{
    public static LoweredTerms Of(SeasonSettings settings, BuyerTerms terms) => new Lowering(settings, terms).Run();

    /// <summary>What the order of a program's week is called.</summary>
    public static OrderId OrderOf(ProgramId program, SeasonSettings settings, int week) => new($"{program.Text} {LocalDatePattern.Iso.Format(settings.Monday(week))}");

    /// <summary>
    /// What a missed unit loses, and a hundredth more: a unit a week late then brings less than a missing one, so that none is ever shipped late, and what reckons with
    /// lateness (the order of a week's runs, what a run behind costs) reckons with about what is lost.
    /// </summary>
    public static decimal NeverLate(decimal price, decimal shortCost) => 1.01m * (price + shortCost) + 0.01m;

    private sealed class Lowering(SeasonSettings settings, BuyerTerms terms)
    {
        private readonly ILookup<(PriceListId, ProductId), ListPrice> lists = terms.PriceLists.ToLookup(row => (row.List, row.Product));
        private readonly ILookup<ProductId, Promotion> promotions = terms.Promotions.ToLookup(row => row.Product);
        private readonly ILookup<DestinationId, Freight> freight = terms.Freight.ToLookup(row => row.Destination);
        private readonly List<OrderLine> orders = [];
        private readonly Dictionary<(OrderId, string), PriceOrigin> origins = [];
        private readonly List<TermsFault> faults = [];
        private readonly HashSet<Promotion> used = [];

        internal LoweredTerms Run()
        {
            foreach ((int row, OrderTerms order) in terms.Orders.Index())
            {
                int week = settings.WeekOf(order.Line.Due);
                if (Price(order.Price, order.PriceList, order.PriceList is null ? null : order.Line.Customer, order.Line.Product, order.Destination, week, null, (false, row)) is { } origin)
                    Add(order.Line with { Price = origin.AtDock }, origin);
            }

            HashSet<OrderId> taken = [.. terms.Orders.Select(order => order.Line.Order)];
            Dictionary<ProgramId, int> rows = [];
            foreach ((int row, BuyerProgram program) in terms.Programs.Index())
            {
                int place = rows[program.Program] = rows.GetValueOrDefault(program.Program) + 1, faulty = faults.Count;
                for (int week = Math.Max(program.From, settings.AsOfWeek); week <= program.To && week < settings.Weeks && faults.Count == faulty; week++)
                    Week(program, week, row, place, taken);
            }

            return new LoweredTerms(orders, origins, faults, [.. terms.Promotions.Where(promotion => !used.Contains(promotion))]);
        }

        private void Week(BuyerProgram program, int week, int row, int place, HashSet<OrderId> taken)
        {
            OrderId order = OrderOf(program.Program, settings, week);
            if (taken.Contains(order))
            {
                // All rows of the program have the name; one of them says so.
                taken.ExceptWith(Enumerable.Range(0, settings.Weeks).Select(other => OrderOf(program.Program, settings, other)));
                faults.Add(new TermsFault(TermsFaultKind.NameTaken, true, row, week, null));
                return;
            }

            ProgramWeek least = new(program.Program, week, IsLeast: true, program.LateCost is null);
            if (Price(program.Price, program.PriceList, program.Customer, program.Product, program.Destination, week, least, (true, row)) is not { } origin)
                return;
            OrderLine line = new(
                order, Number(2 * place - 1), program.Customer, program.Product, settings.Monday(week), settings.Monday(week).PlusDays(6), program.Least, origin.AtDock,
                Firm: true, program.LateCost ?? NeverLate(origin.AtDock, program.ShortCost), program.ShortCost, program.LargerOk, Whole: false);
            if (line.Units > 0)
                Add(line, origin);
            int more = (program.Most ?? program.Least) - program.Least + origin.Promotions.Sum(one => one.Extra);
            if (more > 0)
                Add(
                    line with { Number = Number(2 * place), Units = more, Firm = false, LateCost = program.LateCost ?? NeverLate(origin.AtDock, 0), ShortCost = 0 },
                    origin with { Program = least with { IsLeast = false } });
        }

        /// <param name="customer">Whose promotions count; null: none does.</param>
        private PriceOrigin? Price(
            decimal? written, PriceListId? list, string? customer, ProductId product, DestinationId? destination, int week, ProgramWeek? program, (bool OfProgram, int Row) at)
        {
            decimal? price = list is { } named ? lists[(named, product)].FirstOrDefault(one => one.Holds(week))?.Price : written;
            decimal? cost = destination is { } to ? (freight[to].FirstOrDefault(one => one.Product == product) ?? freight[to].FirstOrDefault(one => one.Product is null))?.Cost : null;
            if (price is null || (destination is not null && cost is null))
            {
                faults.Add(new TermsFault(price is null ? TermsFaultKind.NoListPrice : TermsFaultKind.NoFreight, at.OfProgram, at.Row, week, null));
                return null;
            }

            Promotion[] covers = customer is null ? [] : [.. promotions[product].Where(one => one.Covers(customer, product, week))];
            used.UnionWith(covers);
            PriceOrigin origin = new(price.Value, list, covers, destination, cost, program);
            if (origin.AtDock >= 0)
                return origin;
            faults.Add(new TermsFault(TermsFaultKind.BelowNothing, at.OfProgram, at.Row, week, origin));
            return null;
        }

        private void Add(OrderLine line, PriceOrigin origin)
        {
            orders.Add(line);
            origins[(line.Order, line.Number)] = origin;
        }

        private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
    }
}
