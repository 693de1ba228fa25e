namespace Cloveshed.Core.Seasons;

// What buyers agreed to, as a season of contract 2 has it. Weeks are indices and may lie outside the season; both ends are included.

/// <summary>price-lists.csv: what a unit costs from one week to another. To null: from then on. Key (List, Product, From); spans of one list and product do not overlap.</summary>
public sealed record ListPrice(PriceListId List, ProductId Product, int From, int? To, decimal Price)
{
    public bool Holds(int week) => From <= week && !(week > To);
}

/// <summary>
/// programs.csv: a buyer takes at least Least and at most Most units of a product in each week. Key (Program, Product, From). Price and
/// PriceList: one of the two. Destination: the price holds there, delivered. LateCost null: a week's units ship in that week or not at all.
/// </summary>
/// <param name="Most">Null: as much as Least.</param>
/// <param name="ShortCost">Per unit below Least.</param>
public sealed record BuyerProgram(
    ProgramId Program, string Customer, ProductId Product, int From, int To, int Least, int? Most, decimal? Price, PriceListId? PriceList,
    DestinationId? Destination, decimal? LateCost, decimal ShortCost, bool LargerOk);

/// <summary>
/// promotions.csv: Cut off a unit's price, and Extra units a week more than a program's most. It covers programs, and order lines that are
/// priced by a list; an agreed price stands. Customer null: any. What covers one line together adds up. Key (Name, Customer, Product, From).
/// </summary>
public sealed record Promotion(string Name, string? Customer, ProductId Product, int From, int To, decimal Cut, int Extra)
{
    public bool Covers(string customer, ProductId product, int week) =>
        product == Product && From <= week && week <= To && (Customer is null || Customer == customer);
}

/// <summary>freight.csv: what it costs to bring a unit to a destination. Product null: any product without a row of its own there. Key (Destination, Product).</summary>
public sealed record Freight(DestinationId Destination, ProductId? Product, decimal Cost);

/// <summary>A row of orders.csv with its terms. Price and PriceList: one of the two; Line's own price is nothing yet.</summary>
public sealed record OrderTerms(OrderLine Line, decimal? Price, PriceListId? PriceList, DestinationId? Destination);

/// <summary>All of it, in file order.</summary>
public sealed record BuyerTerms(
    IReadOnlyList<OrderTerms> Orders, IReadOnlyList<ListPrice> PriceLists, IReadOnlyList<BuyerProgram> Programs, IReadOnlyList<Promotion> Promotions,
    IReadOnlyList<Freight> Freight);

/// <summary>
/// How a price at the dock came to be: Price of the row or of the list, less each promotion's cut, less freight. Program: the line is of a week of one.
/// </summary>
/// <param name="Freight">Null where the price is at the dock already.</param>
public sealed record PriceOrigin(decimal Price, PriceListId? List, IReadOnlyList<Promotion> Promotions, DestinationId? Destination, decimal? Freight, ProgramWeek? Program)
{
    /// <summary>Per unit, at the dock: what plans count on.</summary>
    public decimal AtDock => Price - Promotions.Sum(one => one.Cut) - (Freight ?? 0);
}

/// <summary>Which part of a program's week an order line is.</summary>
/// <param name="IsLeast">What must be there; else what may be taken beyond it.</param>
/// <param name="ThatWeekOnly">Units of a later week do not count.</param>
public sealed record ProgramWeek(ProgramId Program, int Week, bool IsLeast, bool ThatWeekOnly);
