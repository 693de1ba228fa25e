using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Release;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Quantities;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Keeping;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Shared;
using NodaTime;

namespace Cloveshed.Web.Release;

/// <summary>A part of a lot in the order of release: what the plan runs of it in one week, or what it keeps.</summary>
/// <param name="Mass">As at the lot's start, in the season's unit.</param>
public sealed record ReleasePart(ReleaseRow Row, VarietyId Variety, double Mass);

/// <summary>
/// Lots by the last good day where they stand, and the plan's order held against it. A lot that the plan runs in several weeks comes in as many parts. What a
/// week's difference costs is the plan's worth of a lot times the sound weight that keeping it until then loses, where it stands: orders and sizes are
/// in the plan and not in this price.
/// </summary>
public sealed record ReleaseBook(IReadOnlyList<ReleasePart> Parts, Money CostOfDiffering)
{
    /// <param name="standing">How lots keep where they stand.</param>
    /// <param name="week">Runs before it are over.</param>
    public static ReleaseBook Of(Season season, KeepingFacts standing, PlanBook? book, int week)
    {
        SeasonSettings settings = season.Settings;
        List<ReleaseLot> lots = [];
        List<(VarietyId Variety, double Mass)> about = [];
        foreach (KeepingBar bar in standing.Bars)
        {
            LotRow row = season.Lots.Where(one => one.Lot == bar.Lot).MaxBy(one => one.Net)!;
            LocalDate by = bar.LastGood is { } last ? settings.FirstWeek.PlusDays((int)Math.Floor(last * 7)) : settings.Monday(settings.Weeks);
            double[] sound = SoundByWeek(season, row);
            (int Week, double Mass)[] runs = book is null ? [] :
                [.. book.RunsOf[bar.Lot].Where(run => !run.FromSorted && run.Week >= week).GroupBy(run => run.Week).OrderBy(runs => runs.Key).Select(runs => (runs.Key, runs.Sum(run => run.MassAtStart)))];
            (int? Week, double Mass)[] parts = runs.Length == 0 ? [(null, bar.Net)] : [.. runs.Select(run => ((int?)run.Week, run.Mass))];
            foreach ((int? at, double mass) in parts)
            {
                double worth = book?.WorthOf(bar.Lot) ?? 0;
                lots.Add(new ReleaseLot(bar.Lot, by, at, [.. sound.Select(share => Money.From((decimal)(worth * mass * share), Currency.FromCode(settings.Currency)))]));
                about.Add((row.Variety, mass));
            }
        }

        ReleaseAnswer answer = ReleaseOrder.Of(lots, settings.FirstWeek, Currency.FromCode(settings.Currency));
        // Rows come back in another order: parts of one lot keep theirs, so that they are told apart by lot and week.
        ILookup<(LotId, int?), (VarietyId Variety, double Mass)> byPart = lots.Zip(about).ToLookup(one => (one.First.Lot, one.First.PlannedWeek), one => one.Second);
        return new ReleaseBook([.. answer.Rows.Select(row => new ReleasePart(row, byPart[(row.Lot, row.PlannedWeek)].First().Variety, byPart[(row.Lot, row.PlannedWeek)].First().Mass))], answer.CostOfDiffering);
    }

    /// <summary>Sound weight at each week's start over that at the lot's start, staying where it stands.</summary>
    private static double[] SoundByWeek(Season season, LotRow row)
    {
        SeasonSettings settings = season.Settings;
        KeepingParameters law = KeepingParameters.Default;
        Place home = season.Places.First(place => place.Id == row.Place);
        KeepingTraits traits = LotTraits.Of(season, row);
        int harvest = settings.WeekOf(row.Harvested), start = Math.Max(harvest, settings.AsOfWeek);
        int? shut = season.SealedRooms.FirstOrDefault(room => room.Place == home.Id) is { } room ? settings.WeekOf(room.Sealed) : null;
        double life = LifeAtStart.Of(season, home, row, law, ClimateDefaults.Default), first = KeepingLaw.SoundShare(law, life), weight = 1;
        double[] sound = new double[settings.Weeks];
        for (int week = 0; week < sound.Length; week++)
        {
            sound[week] = weight * KeepingLaw.SoundShare(law, life) / first;
            if (week >= start)
            {
                WeekOfKeeping one = KeepingLaw.Week(law, traits, PlaceClimate.Of(season, home, week, shut < week, ClimateDefaults.Default), Math.Max(0, week - harvest));
                (weight, life) = (weight * (1 - one.WeightLoss), life + one.LifeUsed);
            }
        }

        return sound;
    }
}

/// <summary>Orders of release and reach plans of the last few states that were looked at.</summary>
public sealed class ReleaseShelf
{
    private const int Room = 4;

    private readonly Shelf<ReleaseBook> books = new(Room);
    private readonly Shelf<ReachPlan> reaches = new(2 * Room);

    public ReleaseBook Of(ShedReading shed, StandingShelf standing, int week) =>
        books.Of($"{shed.State.InputDigest} {shed.State.Adopted?.Document} {week}", () => ReleaseBook.Of(shed.SeasonOpen, standing.Of(shed), shed.Book, week));

    public ReachPlan Reach(ShedReading shed, StandingShelf standing, Place place, int week) => reaches.Of(
        $"{shed.State.InputDigest} {shed.State.Adopted?.Document} {week} {shed.PlaceLog.RoomOf(place.Id)?.Record.Fact} {place.Id}",
        () => ReachPlan.Of(shed.SeasonOpen, place, shed.PlaceLog.FiguresOf(place.Id), standing.Of(shed), shed.Book, week));
}
