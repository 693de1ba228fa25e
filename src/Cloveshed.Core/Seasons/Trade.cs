using NodaTime;

namespace Cloveshed.Core.Seasons;

/// <summary>Whole bulbs or separated cloves.</summary>
public enum ProductForm { Bulb, Clove }

/// <summary>
/// products.csv. From names a size class for bulbs, a clove grade for cloves. Net is mass per unit.
/// ShelfWeeks 0 (also where the file is silent): ships in the week in which it is made.
/// </summary>
public sealed record Product(
    ProductId Id, ProductForm Form, string From, double Net, decimal UnitCost, int ShelfWeeks, bool Organic);

/// <summary>stock.csv: finished stock on the as-of date. Key (Product, Made, Lot). Made is a week index, negative before the season.</summary>
public sealed record StockRow(ProductId Product, int Made, double Units, LotId? Lot);

/// <summary>
/// orders.csv: one line of an order. Key (Order, Number). ShipFrom is the file's date or the Monday of the due week.
/// Whole: the order that holds such a line ships in one week or not at all.
/// </summary>
public sealed record OrderLine(
    OrderId Order, string Number, string Customer, ProductId Product, LocalDate ShipFrom, LocalDate Due, int Units, decimal Price,
    bool Firm, decimal LateCost, decimal ShortCost, bool LargerOk, bool Whole);

/// <summary>market.csv: units that can be sold beyond orders in a week. A plan counts on P50. Key (Product, Week).</summary>
public sealed record MarketWeek(ProductId Product, int Week, decimal Price, double? P10, double P50, double? P90);

/// <summary>seed-needs.csv: mass of planting cloves of a variety wanted by a date, of a class or better. Key (Variety, By, Class).</summary>
public sealed record SeedNeed(VarietyId Variety, double Net, LocalDate By, SeedClass Class, decimal ShortCost);

/// <summary>sell-as-is.csv: price per mass unit as weighed, sound or not. Variety null: any variety without a row of its own. Limit: mass per week.</summary>
public sealed record AsIsPrice(VarietyId? Variety, decimal Price, double? Limit);
