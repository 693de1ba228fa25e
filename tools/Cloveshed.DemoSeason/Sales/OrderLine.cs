using NodaTime;

namespace Cloveshed.DemoSeason.Sales;

/// <summary>One line of an order as it goes into orders.csv. Costs are per unit; late cost per unit and week.</summary>
public sealed record OrderLine(
    string Order, int Number, string Customer, Product Product, LocalDate? ShipFrom, LocalDate Due, int Units, decimal Price,
    bool Firm, decimal LateCost, decimal ShortCost, bool LargerOk, bool Whole);

/// <summary>An order before its quantities are settled: the weights say how much of its product's year each line takes.</summary>
public sealed record Call(Buyer Buyer, int Week, int DueDay, IReadOnlyList<(Product Product, double Weight)> Lines);
