using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Core.Planning.Supposing;

/// <summary>Something that may come about while a plan stands. A null line number: all lines of the order.</summary>
public abstract record SeasonChange
{
    /// <summary>What a change may say at most, wherever it is typed or sent.</summary>
    public const int MostUnits = 10_000_000, MostWeeks = 52, MostPercentLess = 95;

    /// <summary>Likewise.</summary>
    public const double MostPersonHours = 1e6;

    /// <summary>Of a unit, likewise.</summary>
    public const decimal MostPrice = 1_000_000;

    private SeasonChange()
    {
    }

    /// <summary>An order, or a line of it, is called off: it is neither filled nor short.</summary>
    public sealed record OrderCancelled(OrderId Order, string? Number) : SeasonChange;

    /// <summary>A line of an order asks for another number of units.</summary>
    public sealed record OrderResized(OrderId Order, string Number, int Units) : SeasonChange;

    /// <summary>An order, or a line of it, is due on another day; it may ship no earlier than before.</summary>
    public sealed record OrderMoved(OrderId Order, string? Number, LocalDate Due) : SeasonChange;

    /// <summary>An order comes in, of one line: filled as far as its price, and what being short of it costs, are worth it.</summary>
    public sealed record OrderAdded(OrderLine Line) : SeasonChange
    {
        /// <summary>Units of a product at a price, wanted by a day and shipped from the season's first day on where it can be: nothing is lost by being short or late of it but its price.</summary>
        public static OrderAdded Of(ProductId product, int units, decimal price, LocalDate due, LocalDate? shipFrom = null) =>
            new(new OrderLine(new OrderId("new"), "1", "", product, shipFrom ?? due.PlusWeeks(-2), due, units, price, Firm: true, LateCost: price, ShortCost: 0, LargerOk: false, Whole: false));
    }

    /// <summary>A line does not run in the weeks of these days.</summary>
    public sealed record LineStopped(LineId Line, LocalDate First, LocalDate Last) : SeasonChange;

    /// <summary>So many person-hours, and no more, in the week of a day.</summary>
    public sealed record PeopleThere(LocalDate Day, double PersonHours) : SeasonChange;

    /// <summary>What is not dug yet of a lot is dug so many weeks later, and ready so many weeks later.</summary>
    public sealed record LotDugLater(LotId Lot, int Weeks) : SeasonChange;

    /// <summary>
    /// A lot keeps less long: standing where it stands it would reach the end of its storage life so many weeks earlier. Sprouting and decay run faster by the
    /// same part, in what is behind it too; what is sound of it today is as the season has it.
    /// </summary>
    public sealed record LotKeepsLess(LotId Lot, double Weeks) : SeasonChange;

    /// <summary>A lot weighs less by a share. What is in bins stays in as many bins; what is not dug yet comes in fewer.</summary>
    public sealed record LotWeighsLess(LotId Lot, double Share) : SeasonChange;

    /// <summary>So much of a lot, in the season's mass unit, is run on a line in the as-of week; NoMore: and nothing more of it there in that week.</summary>
    public sealed record RunDone(LotId Lot, LineId Line, double Mass, bool NoMore) : SeasonChange;

    /// <summary>A sealed room is opened in the week of another day; null: it stays shut to the end of the season.</summary>
    public sealed record RoomOpened(PlaceId Place, LocalDate? Day) : SeasonChange;
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

    /// <summary>The season has no such product.</summary>
    NoSuchProduct,

    /// <summary>The season has no such lot, or nothing of it stands in the weeks that the plan still decides.</summary>
    NoSuchLot,

    /// <summary>All of the lot is dug.</summary>
    AlreadyDug,

    /// <summary>It would be dug into a room that the plan has sealed by then.</summary>
    RoomIsShut,

    /// <summary>Its storage life would have ended before the plan's first week.</summary>
    LifeIsOver,

    /// <summary>So much of the lot is not there in the as-of week.</summary>
    NotSoMuchThere,

    /// <summary>The line cannot run it in the as-of week: no hours, no people, or the lot may not be run.</summary>
    CannotRun,

    /// <summary>The plan seals no such room.</summary>
    NotSealed,
}

/// <summary>A run that would take another mass-in, in the season's mass unit.</summary>
/// <param name="Monday">Of its week.</param>
public sealed record RunShift(LotId Lot, LineId Line, LocalDate Monday, double Before, double After);

/// <summary>What a season is worth before and with changes, and at most with them; what <see cref="SupposedAnswer"/> says of it, known before what moves.</summary>
public sealed record SupposedWorth(double Before, double Value, double Bound);

/// <summary>What would come of it. Money in the season's currency, of the linear model with the plan's room weeks held.</summary>
/// <param name="Bound">No plan with these room weeks and the change can be worth more.</param>
/// <param name="Runs">What moves, largest first.</param>
/// <param name="Less">Who would get less, dearest first.</param>
/// <param name="More">Who would get more, dearest first.</param>
public sealed record SupposedAnswer(
    double ValueBefore, double Value, double Bound, IReadOnlyList<RunShift> Runs, IReadOnlyList<PromiseExpense> Less, IReadOnlyList<PromiseExpense> More)
{
    /// <summary>Seconds, at most, in which of plans worth nearly the same one is looked for in which little moves; those who read the answer are told.</summary>
    public const int NearestSeconds = 3;

    /// <summary>Mass that is run elsewhere, on another day or not at all, or that nothing ran before: of what runs have less and what they have more, the larger.</summary>
    public double Moved => Math.Max(Runs.Sum(run => Math.Max(0, run.Before - run.After)), Runs.Sum(run => Math.Max(0, run.After - run.Before)));
}

/// <summary>The answer, or the change that could not be put and why.</summary>
public sealed record Supposed(SupposedAnswer? Answer, SeasonChange? Refused, ChangeFault? Fault);
