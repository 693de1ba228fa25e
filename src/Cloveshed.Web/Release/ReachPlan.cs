using Cloveshed.Core;
using Cloveshed.Core.Keep.Release;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Pictures.Keeping;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Rooms;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Release;

/// <summary>A stack of bins of one lot, needed together.</summary>
/// <param name="Week">In which it is needed; the season's number of weeks: not in it.</param>
public sealed record LotStack(LotId Lot, int Week, double Bins);

/// <summary>How a lot is reached.</summary>
/// <param name="ToFirst">Bins that stand before the stack of it that is nearest to a lane's mouth.</param>
/// <param name="Digs">Bins that are moved aside for it while all that stands there is taken out in the order of need.</param>
/// <param name="DigsAsCame">The same, had the lanes been filled one after the other in the order of digging.</param>
/// <param name="Lanes">Where it stands, by the numbers of lanes from 1.</param>
public sealed record LotReach(LotId Lot, int Week, double Bins, double? LastGood, double ToFirst, double Digs, double DigsAsCame, IReadOnlyList<int> Lanes);

/// <summary>
/// What stands before what in a place, if what is there is put so that what is needed next stands at the mouth. Nobody writes down which bin stands where:
/// it is a plan of where to put bins, and what another order would cost in bins that are moved aside.
/// </summary>
/// <param name="Lanes">From the back to the mouth.</param>
/// <param name="High">Bins of a full stack.</param>
/// <param name="Described">The lanes are those of the room's stacking plan; else of our usual depth and height.</param>
public sealed record ReachPlan(
    IReadOnlyList<IReadOnlyList<LotStack>> Lanes, int Deep, int High, bool Described, IReadOnlyList<LotReach> Lots, double Digs, double DigsAsCame, double NotPlaced, decimal CostPerDig)
{
    /// <summary>A lane's depth and a stack's height where nobody described the place: common practice, no source; the room's page has the rule that counts.</summary>
    public const int UsualDeep = 10, UsualHigh = 4;

    public double Bins => Lots.Sum(lot => lot.Bins);

    /// <param name="plannedWeek">What the plan has there at this week's end is arranged; null: what is recorded there.</param>
    public static ReachPlan Of(Season season, Place place, RoomFigures figures, KeepingFacts standing, PlanBook? book, int? plannedWeek = null)
    {
        StackingAnswer? plan = RoomLoads.StackingOf(figures) is { Bins: > 0 } fits ? fits : null;
        int high = plan?.High ?? UsualHigh, deep = plan?.Along ?? UsualDeep, across = plan?.Across ?? (int)Math.Ceiling(place.CapacityBins / high / deep);
        IEnumerable<LotRow> there = plannedWeek is { } planned && book is not null ? PlaceUse.Planned(season, book, place.Id, planned)
            : season.Lots.Where(row => row.Place == place.Id && PlaceUse.Stands(season.Settings, row) && row.Bins > 0);
        LotRow[] rows = [.. there.OrderBy(row => row.Harvested).ThenBy(row => row.Lot.Text, StringComparer.Ordinal)];
        Dictionary<LotId, double?> last = standing.Bars.ToDictionary(bar => bar.Lot, bar => bar.LastGood);
        Dictionary<BinId, LotStack> stacks = [];
        List<StackedBin> asCame = [];
        foreach (LotRow row in rows)
        {
            // A lot goes in as it comes from the field: which part of it will be needed first is not known then.
            foreach ((int needed, double bins) in Needs(season, place.Id, row, last.GetValueOrDefault(row.Lot), book, plannedWeek + 1 ?? season.Settings.AsOfWeek))
            {
                for (double left = bins; left > 1e-6; left -= high)
                {
                    BinId id = new($"{row.Lot} {stacks.Count}");
                    stacks.Add(id, new LotStack(row.Lot, needed, Math.Min(left, high)));
                    asCame.Add(new StackedBin(id, needed));
                }
            }
        }

        Lane[] empty = [.. Enumerable.Range(1, across).Select(number => new Lane($"{number}", deep, []))];
        StackAnswer arranged = Stacks.Arranged(empty, asCame);
        IReadOnlyList<Dig> came = Stacks.Digs([.. asCame.Take(across * deep).Chunk(deep).Select((lane, at) => new Lane($"{at + 1}", deep, lane))]);
        double Moved(IEnumerable<Dig> digs) => digs.Sum(dig => stacks[dig.Moved].Bins);
        ILookup<LotId, Dig> digsOf = arranged.Digs.ToLookup(dig => stacks[dig.ToReach].Lot), cameOf = came.ToLookup(dig => stacks[dig.ToReach].Lot);
        LotStack[][] lanes = [.. arranged.Lanes.Select(lane => lane.Bins.Select(bin => stacks[bin.Bin]).ToArray())];
        return new ReachPlan(
            lanes, deep, high, plan is not null,
            [
                .. stacks.Values.GroupBy(stack => stack.Lot).Select(lot => new LotReach(
                    lot.Key, lot.Min(stack => stack.Week), lot.Sum(stack => stack.Bins), last.GetValueOrDefault(lot.Key), ToFirst(lanes, lot.Key), Moved(digsOf[lot.Key]), Moved(cameOf[lot.Key]),
                    [.. lanes.Index().Where(lane => lane.Item.Any(stack => stack.Lot == lot.Key)).Select(lane => lane.Index + 1)])).OrderBy(lot => lot.Week).ThenBy(lot => lot.Lot.Text, StringComparer.Ordinal),
            ],
            Moved(arranged.Digs), Moved(came), arranged.NotPlaced.Sum(bin => stacks[bin.Bin].Bins), place.MoveInCost);
    }

    /// <summary>Bins of a lot by the week in which the plan takes them out of the place; without a plan all by the week in which its life ends.</summary>
    private static IEnumerable<(int Week, double Bins)> Needs(Season season, PlaceId place, LotRow row, double? last, PlanBook? book, int from)
    {
        int weeks = season.Settings.Weeks;
        if (book is null)
        {
            yield return (last is { } ends ? Math.Min(weeks, (int)Math.Floor(ends)) : weeks, row.Bins);
            yield break;
        }

        double[] kept = new double[weeks];
        foreach (Core.Answers.KeepRow keep in book.Answer.Keeps.Where(keep => keep.Place == place && keep.Lot == row.Lot && keep.Week < weeks))
        {
            kept[keep.Week] += keep.Bins;
        }

        double before = row.Bins;
        // Of what is recorded, what should have left since the day that the files describe is needed first.
        for (int at = from; at < weeks && before > 1e-6; at++)
        {
            double after = Math.Min(before, kept[at]);
            if (before - after > 1e-6)
            {
                yield return (at, before - after);
            }

            before = after;
        }

        if (before > 1e-6)
        {
            yield return (weeks, before);
        }
    }

    private static double ToFirst(LotStack[][] lanes, LotId lot) =>
        lanes.Where(lane => lane.Any(stack => stack.Lot == lot)).Select(lane => lane.Reverse().TakeWhile(stack => stack.Lot != lot).Sum(stack => stack.Bins)).DefaultIfEmpty(0).Min();
}
