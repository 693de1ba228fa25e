using NodaTime;

namespace Cloveshed.Core.Planning.Promises;

/// <summary>One line of an order that somebody asks for: whole units of a product, and what is offered for a unit (null: not said).</summary>
public sealed record PromiseLine(ProductId Product, int Units, decimal? Price, bool LargerOk);

/// <summary>Can this be promised? Nothing ships before ShipFrom, and all is asked for by Due.</summary>
public sealed record PromiseQuestion(IReadOnlyList<PromiseLine> Lines, LocalDate ShipFrom, LocalDate Due);

/// <summary>The answer in one word.</summary>
public enum PromiseVerdict
{
    /// <summary>All of it by the day asked, and at the prices offered it pays.</summary>
    Yes,

    /// <summary>All of it by the day asked, but what is offered is less than it costs.</summary>
    AtALoss,

    /// <summary>All of it, but not by the day asked.</summary>
    Later,

    /// <summary>Some of it by the day asked, and all of it at no time.</summary>
    Part,

    /// <summary>None of it.</summary>
    No,
}

/// <summary>What can be promised of one line. Money is per unit, in the season's currency.</summary>
/// <param name="ByDue">Units that can be had by the day asked, whatever they cost.</param>
/// <param name="AllFrom">The first day of the week by whose end all can be had; null: not within the season.</param>
/// <param name="Worth">Units by the day asked that pay at the price offered; null without a price.</param>
/// <param name="CostLow">The next unit in its best week, by the plan's worths: no unit costs less than this on the margin.</param>
/// <param name="Cost">A unit on the average of the units by the day asked, and of what they take from others; null where there are none. With several lines they share one cost by mass.</param>
public sealed record LinePromise(ProductId Product, int Asked, int ByDue, LocalDate? AllFrom, int? Worth, double? CostLow, double? Cost);

/// <summary>What gives way to an order.</summary>
public enum ExpenseKind { OrderLine, Market, Seed }

/// <summary>Something that would get less, and what the units (or the mass of seed) that it loses bring in the plan as it stands, in the season's currency.</summary>
/// <param name="Less">Units; of seed, mass in the season's unit.</param>
public sealed record PromiseExpense(ExpenseKind Kind, string Name, ProductId? Product, double Less, double Money)
{
    /// <summary>The kind as programs are told it.</summary>
    public string KindName => Kind switch { ExpenseKind.OrderLine => "order-line", ExpenseKind.Market => "market", _ => "seed" };
}

/// <summary>The whole answer.</summary>
/// <param name="Cost">Of all units by the day asked: what the plan then returns less without their price.</param>
/// <param name="Paid">What is offered for the same units; null where a line has no price.</param>
/// <param name="Expenses">Who gives way, dearest first.</param>
public sealed record PromiseAnswer(PromiseVerdict Verdict, IReadOnlyList<LinePromise> Lines, double Cost, double? Paid, IReadOnlyList<PromiseExpense> Expenses);

/// <summary>What one unit more of a product costs the season in a week, at least, in its currency.</summary>
public sealed record UnitPrice(ProductId Product, int Week, double AtLeast);
