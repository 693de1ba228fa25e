using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning.Promises;
using NodaTime;

namespace Cloveshed.Core.Planning.Supposing;

/// <summary>Something that may come about while a plan stands. A null line number: all lines of the order.</summary>
public abstract record SeasonChange
{
    private SeasonChange()
    {
    }

    /// <summary>An order, or a line of it, is called off: it is neither filled nor short.</summary>
    public sealed record OrderCancelled(OrderId Order, string? Number) : SeasonChange;

    /// <summary>A line of an order asks for another number of units.</summary>
    public sealed record OrderResized(OrderId Order, string Number, int Units) : SeasonChange;

    /// <summary>An order, or a line of it, is due on another day; it may ship no earlier than before.</summary>
    public sealed record OrderMoved(OrderId Order, string? Number, LocalDate Due) : SeasonChange;

    /// <summary>A line does not run in the weeks of these days.</summary>
    public sealed record LineStopped(LineId Line, LocalDate First, LocalDate Last) : SeasonChange;

    /// <summary>So many person-hours, and no more, in the week of a day.</summary>
    public sealed record PeopleThere(LocalDate Day, double PersonHours) : SeasonChange;
}

/// <summary>Why a change cannot be put to the plan.</summary>
public enum ChangeFault
{
    /// <summary>The season has no such order or line of one.</summary>
    NoSuchOrder,

    /// <summary>The season has no such packing line.</summary>
    NoSuchLine,

    /// <summary>The day is not in the weeks that the plan still decides.</summary>
    NotAhead,

    /// <summary>An order that ships whole or not at all can be called off, but not changed in part.</summary>
    OrderIsWhole,

    /// <summary>The season has no limit of person-hours in that week.</summary>
    NoPeopleCounted,
}

/// <summary>A run that would take another mass-in, in the season's mass unit.</summary>
/// <param name="Monday">Of its week.</param>
public sealed record RunShift(LotId Lot, LineId Line, LocalDate Monday, double Before, double After);

/// <summary>What would come of it. Money in the season's currency, of the linear model with the plan's room weeks held.</summary>
/// <param name="Bound">No plan with these room weeks and the change can be worth more.</param>
/// <param name="Runs">What moves, largest first.</param>
/// <param name="Less">Who would get less, dearest first.</param>
/// <param name="More">Who would get more, dearest first.</param>
public sealed record SupposedAnswer(
    double ValueBefore, double Value, double Bound, IReadOnlyList<RunShift> Runs, IReadOnlyList<PromiseExpense> Less, IReadOnlyList<PromiseExpense> More);

/// <summary>The answer, or the change that could not be put and why.</summary>
public sealed record Supposed(SupposedAnswer? Answer, SeasonChange? Refused, ChangeFault? Fault);
