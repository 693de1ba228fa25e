using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Keep.Release;
using Cloveshed.Core.Quantities;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Keeping;
using Cloveshed.Pictures.Paths;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Shared;
using NodaTime;

namespace Cloveshed.Web.Release;

/// <summary>A part of a lot in the order of release: what the plan takes of it in one week, or what it keeps.</summary>
/// <param name="Mass">As at the lot's start, in the season's unit.</param>
public sealed record ReleasePart(ReleaseRow Row, VarietyId Variety, double Mass);

/// <summary>
/// Lots by their last good day, and the plan's order held against it. A lot that the plan takes out in several weeks comes in as many parts, each with the last good
/// day of its own path through the rooms. What differing costs is the plan's worth of the lot times the sound weight that is left in the one week less that in the
/// other: orders and sizes are in the plan and not in this price. Without a plan lots stay where they stand, and have no price.
/// </summary>
public sealed record ReleaseBook(IReadOnlyList<ReleasePart> Parts, Money CostOfDiffering)
{
    /// <summary>Less of a lot, as a share of what stands, is the rounding of the plan's files.</summary>
    private const double Crumb = 1e-6;

    /// <param name="standing">How lots keep where they stand, for a season without a plan.</param>
    /// <param name="week">What left before it is over.</param>
    public static ReleaseBook Of(Season season, KeepingFacts standing, PlanBook? book, int week)
    {
        Currency currency = Currency.FromCode(season.Settings.Currency);
        Dictionary<LotId, VarietyId> varieties = season.Lots.GroupBy(row => row.Lot).ToDictionary(rows => rows.Key, rows => rows.First().Variety);
        (ReleaseLot Lot, double Mass)[] parts = book is null
            ? [.. standing.Bars.Select(bar => (new ReleaseLot(bar.Lot, Day(season.Settings, bar.LastGood), null, []), bar.Net))]
            : [.. Planned(season.Settings, book, week, currency).Where(part => varieties.ContainsKey(part.Lot.Lot))];
        ReleaseAnswer answer = ReleaseOrder.Of([.. parts.Select(part => part.Lot)], season.Settings.FirstWeek, currency);
        Dictionary<(LotId, int?), double> masses = parts.ToDictionary(part => (part.Lot.Lot, part.Lot.PlannedWeek), part => part.Mass);
        return new ReleaseBook([.. answer.Rows.Select(row => new ReleasePart(row, varieties[row.Lot], masses[(row.Lot, row.PlannedWeek)]))], answer.CostOfDiffering);
    }

    private static IEnumerable<(ReleaseLot Lot, double Mass)> Planned(SeasonSettings settings, PlanBook book, int week, Currency currency)
    {
        IEnumerable<(PathLine Path, int? Week, double Mass)> exits = book.Paths.All.SelectMany(path => Exits(path, week, settings.Weeks));
        foreach (IGrouping<(LotId Lot, int? Week), (PathLine Path, int? Week, double Mass)> part in exits.GroupBy(exit => (exit.Path.Lot, exit.Week)).OrderBy(part => part.Key.Week ?? int.MaxValue))
        {
            // Where parts of several paths leave together, the first to expire counts.
            double ends = part.Min(exit => LifeEnds(exit.Path)), worth = book.WorthOf(part.Key.Lot) ?? 0;
            Money[] byWeek = [.. Enumerable.Range(0, settings.Weeks).Select(at => Money.From((decimal)part.Sum(exit => worth * exit.Mass * Sound(exit.Path, at) / Sound(exit.Path, exit.Path.FirstWeek)), currency))];
            yield return (new ReleaseLot(part.Key.Lot, Day(settings, ends), part.Key.Week, byWeek), part.Sum(exit => exit.Mass));
        }
    }

    private static IEnumerable<(PathLine Path, int? Week, double Mass)> Exits(PathLine path, int week, int weeks)
    {
        for (int at = week; at < weeks; at++)
        {
            double leaves = path.StandingAtStart(at) - (at + 1 < weeks ? path.StandingAtStart(at + 1) : path.EndMassAtStart);
            if (leaves > path.MassAtStart * Crumb)
            {
                yield return (path, at, leaves);
            }
        }

        if (path.EndMassAtStart > path.MassAtStart * Crumb)
        {
            yield return (path, null, path.EndMassAtStart);
        }
    }

    /// <summary>When a path's life is used up; beyond its own weeks as fast as in its last one.</summary>
    private static double LifeEnds(PathLine path)
    {
        if (path.LifeEndsAt() is { } ends)
        {
            return ends;
        }

        double last = path.State(path.LastState).LifeUsed, step = path.LastState > path.FirstWeek ? last - path.State(path.LastState - 1).LifeUsed : 0;
        return step > 0 ? path.LastState + (1 - last) / step : double.PositiveInfinity;
    }

    /// <summary>Sound weight over the weight at the path's start; before the path as at its start, beyond it on as in its last week.</summary>
    private static double Sound(PathLine path, int week)
    {
        double At(int own) => path.State(own) is var state ? state.MassRatio * (state.FreshShare + state.CrackShare) : 0;
        if (week <= path.LastState)
        {
            return At(Math.Max(week, path.FirstWeek));
        }

        double last = At(path.LastState), step = path.LastState > path.FirstWeek && At(path.LastState - 1) is > 0 and var before ? last / before : 1;
        return last * Math.Pow(step, week - path.LastState);
    }

    /// <summary>The last whole day; the season's end stands for all that is later.</summary>
    private static LocalDate Day(SeasonSettings settings, double? ends) =>
        ends is { } at && at < settings.Weeks ? settings.FirstWeek.PlusDays((int)Math.Floor(at * 7)) : settings.Monday(settings.Weeks);
}

/// <summary>Orders of release and reach plans of the last few states that were looked at.</summary>
public sealed class ReleaseShelf
{
    private const int Room = 4;

    private readonly Shelf<ReleaseBook> books = new(Room);
    private readonly Shelf<ReachPlan> reaches = new(2 * Room);

    public ReleaseBook Of(ShedReading shed, StandingShelf standing, int week) =>
        books.Of($"{shed.ClockKey} {shed.State.Adopted?.Document} {week}", () => ReleaseBook.Of(shed.SeasonOpen, standing.Of(shed), shed.SeenBook, week));

    /// <param name="plannedWeek">As <see cref="ReachPlan.Of"/> has it.</param>
    public ReachPlan Reach(ShedReading shed, StandingShelf standing, Place place, int? plannedWeek) => reaches.Of(
        $"{shed.ClockKey} {shed.State.Adopted?.Document} {shed.PlaceLog.RoomOf(place.Id)?.Record.Fact} {place.Id} {plannedWeek}",
        () => ReachPlan.Of(shed.SeasonOpen, place, shed.PlaceLog.FiguresOf(place.Id), standing.Of(shed), shed.Book, plannedWeek));
}
