using Cloveshed.Core;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Web.Today;

/// <summary>Why money goes when a decision waits.</summary>
public enum Loss
{
    /// <summary>What is sound when it is run gets less, by the keeping law: mass at its start x worth x share lost.</summary>
    Keeping,
    /// <summary>Order lines would ship a week later: units x late cost.</summary>
    Late,
    /// <summary>The hours must be found next week: hours x what one more is worth then.</summary>
    Hours,
    /// <summary>Seed would come after its day: mass x short cost.</summary>
    SeedLate,
    /// <summary>Bins stand a week longer or shorter where they pay more or less: bins x difference.</summary>
    Standing,
    /// <summary>Units that ship at no time: units x price.</summary>
    Unsold,
    /// <summary>What a firm line charges for them: units x short cost.</summary>
    ShortCharge,
    /// <summary>Seed that is missing: mass x short cost.</summary>
    SeedShort,
    /// <summary>A lot's whole worth: mass at its start x worth.</summary>
    Worth,
}

/// <summary>One part of a cost: Money = Amount x Rate x Share. The amount is of mass (season's unit), units, hours or bins, as the loss says.</summary>
/// <param name="Subject">The lot, order line, line or room that it is about.</param>
public sealed record CostPart(Loss Loss, string Subject, double Amount, double Rate, double Share = 1)
{
    public double Money => Amount * Rate * Share;
}

/// <summary>
/// Something that a person has to decide, with what it costs to put it off by a week. Parts are the cost of waiting and sum to it; what
/// can still be lost later, but not by waiting a week, is at stake.
/// </summary>
/// <param name="Until">The week after which it is too late; null where no week says so.</param>
public abstract record Decision(IReadOnlyList<CostPart> Parts, IReadOnlyList<CostPart> Stakes, int? Until)
{
    public double CostOfWaiting => Parts.Sum(part => part.Money);

    public double AtStake => Stakes.Sum(part => part.Money);

    /// <summary>Tells decisions of equal cost apart, the same on every day.</summary>
    public abstract string Key { get; }
}

/// <summary>A run of this week as people speak of it: one lot on one line, though the plan may take it from several paths under several numbers.</summary>
/// <param name="Runs">The plan's numbers of it.</param>
public sealed record RunDecision(
    IReadOnlyList<string> Runs, LineId Line, LineMode Mode, bool FromSorted, LotId Lot, IReadOnlyList<PlaceId> From, double Mass, double Hours, double Overtime, string Reason,
    IReadOnlyList<CostPart> Parts, int Week) : Decision(Parts, [], Week)
{
    public override string Key => $"run {Runs[0]} {Lot}";
}

/// <summary>A lot that is past its storage life before it is run, or will soon be.</summary>
/// <param name="Standing">As weighed at the week's start, without what this week's runs take.</param>
/// <param name="Ends">When its first part's life ends, in weeks from the season's start.</param>
/// <param name="Past">Mass at its start that is run or sold after its life has ended, or never.</param>
/// <param name="Next">The next week that something of it is run or sold; null: none.</param>
public sealed record ClockDecision(
    LotId Lot, VarietyId Variety, PlaceId Place, double Standing, double Ends, double Past, int? Next, IReadOnlyList<CostPart> Parts, IReadOnlyList<CostPart> Stakes)
    : Decision(Parts, Stakes, (int)Math.Floor(Ends))
{
    public override string Key => $"clock {Lot}";
}

/// <summary>Bins that the plan moves at this week's start.</summary>
public sealed record MoveDecision(PlaceId From, PlaceId To, double Bins, IReadOnlyList<LotId> Lots, IReadOnlyList<CostPart> Parts, int Week) : Decision(Parts, [], Week)
{
    public override string Key => $"move {From} {To}";
}

/// <summary>A room that the plan seals at this week's end.</summary>
public sealed record SealDecision(PlaceId Place, double Bins, int Lots, int? Opened, IReadOnlyList<CostPart> Parts, int Week) : Decision(Parts, [], Week)
{
    public override string Key => $"seal {Place}";
}

/// <summary>A room that the plan opens this week; its cost is that of the runs out of it.</summary>
/// <param name="EmptyBy">The last week in which it may hold anything; null: no limit.</param>
public sealed record OpenDecision(PlaceId Place, double Bins, int Lots, int? EmptyBy, IReadOnlyList<CostPart> Parts, int Week) : Decision(Parts, [], Week)
{
    public override string Key => $"open {Place}";
}

/// <summary>An order that the plan leaves short or ships late.</summary>
/// <param name="Unplanned">Lines of it were entered or changed since the plan was made.</param>
public sealed record OrderDecision(
    OrderId Order, string Customer, NodaTime.LocalDate Due, int Short, int Late, bool Unplanned, string? Why, IReadOnlyList<CostPart> Parts, IReadOnlyList<CostPart> Stakes, int DueWeek)
    : Decision(Parts, Stakes, DueWeek)
{
    public override string Key => $"order {Order}";
}

/// <summary>Seed that the plan does not keep back.</summary>
public sealed record SeedDecision(SeedNeed Need, double Kept, IReadOnlyList<CostPart> Parts, IReadOnlyList<CostPart> Stakes, int ByWeek) : Decision(Parts, Stakes, ByWeek)
{
    public override string Key => $"seed {Need.Variety} {Need.By} {Need.Class}";
}
