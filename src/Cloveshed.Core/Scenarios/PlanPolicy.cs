using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>A path of the plan: so much of a row, where it stands week by week, and what it leaves by.</summary>
/// <param name="Part">Of the row's mass.</param>
/// <param name="PlaceAt">[week] place, from the row's planned start on; before that the row's own.</param>
internal sealed record PolicyPath(string Id, int Row, double Part, int[] PlaceAt, List<PolicyExit> Exits);

/// <summary>A planned way out: part of the path's mass. Line -1: sold as is, or discarded.</summary>
/// <param name="Packed">[sort] part of what the run gives of it that is packed.</param>
/// <param name="Need">Seed need served, or -1.</param>
internal sealed record PolicyExit(int Week, int Line, bool Discarded, double Part, double[] Packed, int Need, double SeedCloves);

/// <summary>A planned run of sorted-out bulbs; mass scaled.</summary>
internal sealed record PolicySorted(int Week, int Line, int Lot, double Mass, double[] Packed);

/// <summary>What one order line is planned to get of one product: cumulative units at each week's end.</summary>
internal sealed record PolicySlot(int Line, int Product, int[] By, int FirstWeek)
{
    public int Planned => By[^1];
}

/// <summary>
/// A plan as a rule that any season can be played by: parts instead of pounds, the stock that it means to have at each week's end, and
/// its worths. The plan may have been made of another season than is played, as long as lots, places, lines and orders are the same.
/// </summary>
public sealed class PlanPolicy
{
    private PlanPolicy(string name, RoomChoice rooms, PlanningInstance instance, PolicyReading reading)
    {
        (Name, Rooms, Places) = (name, rooms, Spots.Of(instance, rooms));
        (Paths, Sorted, Slots, WholeWeek, Sales) = (reading.Paths(), reading.Sorted(), reading.Slots(), reading.WholeWeeks(), reading.Sales());
        (StockAfter, ClassOut, CrackPeople, SeedBy) = (reading.StockAfter(), reading.ClassOut(), reading.CrackPeople(), reading.SeedBy());
        (Worth, HourWorth) = (reading.Worths(), reading.HourWorths());
    }

    /// <summary>What people call the plan.</summary>
    public string Name { get; }

    internal Spot[] Places { get; }
    internal RoomChoice Rooms { get; }
    internal PolicyPath[] Paths { get; }
    internal PolicySorted[] Sorted { get; }
    internal PolicySlot[] Slots { get; }

    /// <summary>[whole order] week in which it is planned to ship, or -1.</summary>
    internal int[] WholeWeek { get; }

    /// <summary>[market week] units planned.</summary>
    internal int[] Sales { get; }

    /// <summary>[product][week] scaled mass in stock at the week's end.</summary>
    internal double[][] StockAfter { get; }

    /// <summary>[sort][week] scaled mass of each class that the plan's fresh runs give, packed or not.</summary>
    internal double[][] ClassOut { get; }

    /// <summary>[week] person-hours that the plan's cracker runs take.</summary>
    internal double[] CrackPeople { get; }

    /// <summary>[need][week] cumulative scaled cloves for planting.</summary>
    internal double[][] SeedBy { get; }

    /// <summary>[product][week] worth of a scaled mass in stock, scaled money.</summary>
    internal double[][] Worth { get; }

    /// <summary>[line][week] worth of an hour beyond its cost, people included, scaled money.</summary>
    internal double[][] HourWorth { get; }

    /// <summary>Reads a plan in an instance's indices. What the instance does not have is left out.</summary>
    public static PlanPolicy Of(string name, PlanningInstance instance, PlanAnswer plan) =>
        new(name, RoomChoice.Of(instance, plan.Rooms), instance, new PolicyReading(instance, plan));
}
