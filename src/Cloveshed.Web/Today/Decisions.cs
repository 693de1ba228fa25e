using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Paths;
using Cloveshed.Pictures.Sections;
using Cloveshed.Web.Dock;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Today;

/// <summary>Order lines that are short and due beyond what a day has to look at.</summary>
public sealed record LaterShorts(int Lines, double Money);

/// <summary>
/// What needs a decision in a week, dearest to put off first: by the cost of waiting a week, then by what is at stake, then by the week
/// after which it is too late.
/// </summary>
public sealed record DecisionList(int Week, IReadOnlyList<Decision> All, LaterShorts Later)
{
    /// <summary>How many weeks ahead orders, seed and lots are looked at one by one; ours, no source.</summary>
    public const int Ahead = 4;

    /// <summary>Money below which a cost counts as none: less than a cent is the rounding of the files.</summary>
    public const double Hair = 0.005;

    public IEnumerable<RunDecision> Runs => All.OfType<RunDecision>();

    /// <summary>The decisions of a week under a plan.</summary>
    /// <param name="sincePlan">Whether an order line was entered or changed since the plan was made.</param>
    /// <param name="clocks">The clocks of rows that do not go by the law alone.</param>
    public static DecisionList Of(PlanBook book, int week, Func<OrderLine, bool> sincePlan, Func<LotRow, SeenClock?>? clocks = null)
    {
        Waiting waiting = new(book, clocks);
        RunDecision[] runs = [.. RunsOf(book, week)];
        List<Decision> all = [.. runs, .. ClocksOf(book, week), .. MovesOf(book, waiting, week), .. RoomsOf(book, waiting, week, runs), .. SeedOf(book, week)];
        all.AddRange(OrdersOf(book, week, sincePlan, out LaterShorts later));
        return new DecisionList(week, InOrder(all), later);
    }

    /// <summary>What is about people's lives, then dearest to put off first; the order of equals does not depend on how they came.</summary>
    public static IReadOnlyList<Decision> InOrder(IEnumerable<Decision> decisions) =>
    [
        .. decisions.OrderByDescending(one => one is AlarmDecision { PeopleFirst: true }).ThenByDescending(one => one.CostOfWaiting).ThenByDescending(one => one.AtStake).ThenBy(one => one.Until ?? int.MaxValue)
            .ThenBy(one => one.Key, StringComparer.Ordinal),
    ];

    private static IEnumerable<RunDecision> RunsOf(PlanBook book, int week)
    {
        SeasonSettings settings = book.Season.Settings;
        Dictionary<(OrderId, string), OrderLine> lines = book.Season.Orders.ToDictionary(line => (line.Order, line.Number));
        Dictionary<(VarietyId, NodaTime.LocalDate, SeedClass), SeedNeed> needs = book.Season.SeedNeeds.ToDictionary(need => (need.Variety, need.By, need.Class));
        foreach (var rows in book.Runs[week].GroupBy(row => (row.Line, row.Mode, row.FromSorted, row.Lot)))
        {
            string[] numbers = [.. rows.Select(row => row.Run).Distinct()];
            List<CostPart> parts = [];
            foreach (RunRow row in rows.Where(row => row.Path is not null))
            {
                if (book.WorthOf(row.Lot) is { } worth)
                {
                    parts.Add(new CostPart(Loss.Keeping, row.Lot.Text, row.MassAtStart, worth, Waiting.LostInWeek(book.Paths[row.Path!], week)));
                }
            }

            // What of it leaves this week for lines that are due by now would leave a week later.
            foreach (var late in numbers.SelectMany(book.Trace.OfRun)
                .Where(pair => pair.Source.Lot == rows.Key.Lot && pair.Traced.Fill.Week == week && lines.TryGetValue((pair.Traced.Fill.Order, pair.Traced.Fill.Line), out OrderLine? line)
                    && settings.WeekOf(line.Due) <= week && line.LateCost > 0)
                .GroupBy(pair => lines[(pair.Traced.Fill.Order, pair.Traced.Fill.Line)]))
            {
                parts.Add(new CostPart(Loss.Late, $"{late.Key.Order} / {late.Key.Number}", late.Sum(pair => pair.Source.Units), (double)late.Key.LateCost));
            }

            foreach (SeedRow seed in numbers.SelectMany(run => book.Seed[(run, rows.Key.Lot)]).Where(seed => settings.WeekOf(seed.By) <= week))
            {
                if (needs.TryGetValue((seed.Variety, seed.By, seed.NeedClass), out SeedNeed? need))
                {
                    parts.Add(new CostPart(Loss.SeedLate, need.Variety.Text, seed.Cloves, (double)need.ShortCost));
                }
            }

            double hours = rows.Sum(row => row.Hours), overtime = rows.Sum(row => row.OvertimeHours), worthNext = book.HourWorth(rows.Key.Line, week + 1);
            if (worthNext > 0)
            {
                parts.Add(new CostPart(Loss.Hours, rows.Key.Line.Text, hours + overtime, worthNext));
            }

            yield return new RunDecision(
                numbers, rows.Key.Line, rows.Key.Mode, rows.Key.FromSorted, rows.Key.Lot, [.. rows.Select(row => row.Place).OfType<PlaceId>().Distinct()],
                rows.Sum(row => row.MassIn), hours, overtime, string.Join("; ", rows.Select(row => row.Reason).Where(reason => reason.Length > 0).Distinct()), parts, week);
        }
    }

    /// <summary>Lots of which something stands past its life, or whose life ends within the weeks ahead while something stands after this week's runs.</summary>
    private static IEnumerable<ClockDecision> ClocksOf(PlanBook book, int week)
    {
        int weeks = book.Season.Settings.Weeks;
        foreach (IGrouping<LotId, PathLine> lot in book.Paths.All.GroupBy(path => path.Lot))
        {
            List<CostPart> parts = [], stakes = [];
            double standing = 0, ends = double.MaxValue, past = 0, heaviest = 0;
            int? next = null;
            PlaceId place = default;
            foreach (PathLine path in lot.Where(path => path.Has(week)))
            {
                double left = week + 1 < weeks ? path.StandingAtStart(week + 1) : path.EndMassAtStart;
                if (left <= path.MassAtStart * 1e-6 || left <= 1e-6 || path.LifeEndsAt() is not { } end)
                {
                    continue;
                }

                int[] exits = [.. Enumerable.Range(week + 1, Math.Max(0, weeks - week - 1)).Where(at => path.StandingAtStart(at) - (at + 1 < weeks ? path.StandingAtStart(at + 1) : path.EndMassAtStart) > 1e-6)];
                double after = path.StandingAtStart(Math.Max(week + 1, (int)Math.Ceiling(end)));
                if (after <= 1e-6 && end > week + Ahead)
                {
                    continue;
                }

                standing += left * path.State(week).MassRatio;
                ends = Math.Min(ends, end);
                past += after;
                next = exits.Length == 0 ? next : Math.Min(next ?? int.MaxValue, exits[0]);
                (place, heaviest) = left > heaviest ? (path.State(week).Place, left) : (place, heaviest);
                if (book.WorthOf(path.Lot) is { } worth)
                {
                    parts.Add(new CostPart(Loss.Keeping, path.State(week).Place.Text, left, worth, Waiting.LostInWeek(path, week)));
                    stakes.Add(new CostPart(Loss.Worth, path.State(week).Place.Text, left, worth));
                }
            }

            if (standing > 0 && book.Season.Lots.FirstOrDefault(row => row.Lot == lot.Key) is { } row)
            {
                yield return new ClockDecision(lot.Key, row.Variety, place, standing, ends, past, next, parts, stakes);
            }
        }
    }

    private static IEnumerable<MoveDecision> MovesOf(PlanBook book, Waiting waiting, int week)
    {
        Dictionary<PlaceId, Place> places = book.Season.Places.ToDictionary(place => place.Id);
        foreach (IGrouping<(PlaceId From, PlaceId To), MoveRow> moves in book.Answer.Moves.Where(move => move.Week == week).GroupBy(move => (move.From, move.To)))
        {
            double bins = moves.Sum(move => move.Bins);
            List<CostPart> parts = [];
            foreach (PathLine path in book.Paths.All.Where(path => path.Has(week) && path.State(week).Place == moves.Key.To
                && (path.FirstWeek == week ? path.FromPlace : path.State(week - 1).Place) == moves.Key.From))
            {
                if (waiting.Week(path.Lot, moves.Key.From, week, false) is { } here && waiting.Week(path.Lot, moves.Key.To, week, false) is { } there
                    && waiting.OfWorseWeek(path, week, here, there) is { } part)
                {
                    parts.Add(part);
                }
            }

            if (places.TryGetValue(moves.Key.From, out Place? from) && places.TryGetValue(moves.Key.To, out Place? to) && from.CostPerBinWeek != to.CostPerBinWeek)
            {
                parts.Add(new CostPart(Loss.Standing, $"{moves.Key.From}, {moves.Key.To}", bins, (double)(from.CostPerBinWeek - to.CostPerBinWeek)));
            }

            yield return new MoveDecision(moves.Key.From, moves.Key.To, bins, [.. moves.Select(move => move.Lot).Distinct()], parts, week);
        }
    }

    private static IEnumerable<Decision> RoomsOf(PlanBook book, Waiting waiting, int week, RunDecision[] runs)
    {
        foreach (RoomRow room in book.Answer.Rooms)
        {
            KeepRow[] shut = [.. book.Answer.Keeps.Where(keep => keep.Place == room.Place && keep.Week == (room.Opened == week ? week - 1 : week))];
            int lots = shut.Select(keep => keep.Lot).Distinct().Count();
            if (room.Sealed == week)
            {
                CostPart[] parts =
                [
                    .. book.Paths.All.Where(path => path.Has(week + 1) && path.State(week + 1).Place == room.Place && path.StandingAtStart(week + 1) > 1e-6)
                        .Select(path => waiting.Week(path.Lot, room.Place, week + 1, false) is { } open && waiting.Week(path.Lot, room.Place, week + 1, true) is { } closed
                            ? waiting.OfWorseWeek(path, week + 1, open, closed) : null).OfType<CostPart>(),
                ];
                yield return new SealDecision(room.Place, shut.Sum(keep => keep.Bins), lots, room.Opened, parts, week);
            }

            if (room.Opened == week)
            {
                int? empty = book.Season.Places.FirstOrDefault(place => place.Id == room.Place)?.RunOutWeeks is { } least ? week + least - 1 : null;
                yield return new OpenDecision(room.Place, shut.Sum(keep => keep.Bins), lots, empty, [.. runs.Where(run => run.From.Contains(room.Place)).SelectMany(run => run.Parts)], week);
            }
        }
    }

    private static IEnumerable<OrderDecision> OrdersOf(PlanBook book, int week, Func<OrderLine, bool> sincePlan, out LaterShorts later)
    {
        SeasonSettings settings = book.Season.Settings;
        List<OrderDecision> found = [];
        OrderOutcome[] open = [.. book.Orders.Where(one => settings.WeekOf(one.Line.Due) >= week && (one.Short > 0 || one.Late > 0) || StillLate(book, one, week))];
        foreach (IGrouping<OrderId, OrderOutcome> order in open.Where(one => settings.WeekOf(one.Line.Due) <= week + Ahead).GroupBy(one => one.Line.Order))
        {
            List<CostPart> parts = [], stakes = [];
            foreach (OrderOutcome one in order)
            {
                int due = settings.WeekOf(one.Line.Due);
                string name = $"{one.Line.Order} / {one.Line.Number}";
                List<CostPart> into = due <= week ? parts : stakes;
                if (one.Short > 0 && due >= week)
                {
                    into.Add(new CostPart(Loss.Unsold, name, one.Short, (double)one.Line.Price));
                    if (one.Line is { Firm: true, ShortCost: > 0 })
                    {
                        into.Add(new CostPart(Loss.ShortCharge, name, one.Short, (double)one.Line.ShortCost));
                    }
                }

                if (one.Late > 0 && one.Line.LateCost > 0)
                {
                    // This week's late charge is for what ships after it; the weeks to come are at stake.
                    TracedFill[] fills = [.. book.Trace.Of(one.Line.Order, one.Line.Number).Where(fill => fill.Fill.Week > Math.Max(due, week))];
                    int units = fills.Sum(fill => fill.Fill.Units);
                    double laterWeeks = fills.Sum(fill => (double)fill.Fill.Units * (fill.Fill.Week - Math.Max(due, week) - (due <= week ? 1 : 0)));
                    if (due <= week && units > 0)
                    {
                        parts.Add(new CostPart(Loss.Late, name, units, (double)one.Line.LateCost));
                    }

                    if (laterWeeks > 0)
                    {
                        stakes.Add(new CostPart(Loss.Late, name, laterWeeks, (double)one.Line.LateCost));
                    }
                }
            }

            OrderOutcome first = order.OrderBy(one => one.Line.Due).First();
            found.Add(new OrderDecision(
                order.Key, first.Line.Customer, first.Line.Due, order.Sum(one => one.Short), order.Sum(one => one.Late), order.Any(one => sincePlan(one.Line)),
                order.OrderByDescending(one => one.ShortMoney).First().Why, parts, stakes, settings.WeekOf(first.Line.Due)));
        }

        OrderOutcome[] beyond = [.. open.Where(one => one.Short > 0 && settings.WeekOf(one.Line.Due) > week + Ahead)];
        later = new LaterShorts(beyond.Length, beyond.Sum(one => (double)(one.ShortMoney + one.ShortCost)));
        return found;
    }

    /// <summary>A line that was due before this week and of which something ships after it.</summary>
    private static bool StillLate(PlanBook book, OrderOutcome one, int week) =>
        one.Late > 0 && book.Season.Settings.WeekOf(one.Line.Due) < week && book.Trace.Of(one.Line.Order, one.Line.Number).Any(fill => fill.Fill.Week > week);

    private static IEnumerable<SeedDecision> SeedOf(PlanBook book, int week)
    {
        ILookup<(VarietyId, NodaTime.LocalDate, SeedClass), SeedRow> kept = book.Answer.Seed.ToLookup(row => (row.Variety, row.By, row.NeedClass));
        foreach (SeedNeed need in book.Season.SeedNeeds)
        {
            int by = book.Season.Settings.WeekOf(need.By);
            double have = kept[(need.Variety, need.By, need.Class)].Sum(row => row.Cloves), missing = need.Net - have;
            if (by < week || missing <= need.Net * 1e-6)
            {
                continue;
            }

            CostPart part = new(Loss.SeedShort, need.Variety.Text, missing, (double)need.ShortCost);
            yield return new SeedDecision(need, have, by == week ? [part] : [], by == week ? [] : [part], by);
        }
    }
}
