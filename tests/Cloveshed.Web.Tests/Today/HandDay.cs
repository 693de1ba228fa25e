using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Tests;
using Cloveshed.Web.Shared;
using NodaTime;

namespace Cloveshed.Web.Tests.Today;

/// <summary>
/// The small season and a plan of it written by hand, small enough that every cost of waiting can be worked on paper. Week 0 is that of 7 September 2026.
/// </summary>
internal static class HandDay
{
    public static readonly LotId L1 = new("L1"), L2 = new("L2");
    public static readonly PlaceId Yard = new("Yard"), Cold = new("Cold 1"), Room = new("Room 1");
    public static readonly LineId Pack = new("Pack 1");
    public static readonly ProductId M30 = new("M30"), L30 = new("L30");

    /// <summary>O1/1: 100 M30 at 45.50, late 2, short 10, due in week 2. O1/2: 50 L30 at 52, due in week 2, no charges.</summary>
    public static Season Season { get; } = new SmallSeason().Read().Season!;

    /// <summary>
    /// L1 in the yard is run in weeks 2 and 4; L1 in the cold moves to the room in week 1, which is sealed then and opened in week 6, and is run in week 6.
    /// The plan says that a pound of L1 is worth 0.5 and an hour of Pack 1 in week 3 is worth 20.
    /// </summary>
    public static PlanAnswer Answer(double firstRun = 20_000, params (double Mass, string Run)[] more)
    {
        List<PathWeek> paths = [];
        double[] ratio = [1, 0.98, 0.97, 0.95, 0.92, 0.9, 0.88, 0.86, 0.84, 0.82, 0.8], life = [0.5, 0.6, 0.7, 0.8, 1.05, 1.2, 1.3, 1.4, 1.5, 1.6, 1.7];
        for (int week = 0; week <= 10; week++)
        {
            paths.Add(new PathWeek("P1", L1, Yard, week, Yard, ratio[week], 0.8 - 0.02 * week, 0.1, life[week]));
            paths.Add(new PathWeek("P2", L1, Cold, week, week < 1 ? Cold : Room, 1 - 0.005 * week, 0.82, 0.1, 0.2 + 0.01 * week));
        }

        RunRow Run(string run, int week, string path, PlaceId place, double mass, double hours) =>
            new(run, week, Pack, LineMode.Fresh, false, L1, path, place, mass * paths.First(p => p.Path == path && p.Week == week).MassRatio, mass, hours, 0, "for the market");
        List<RunRow> runs = [Run("R1", 2, "P1", Yard, firstRun, 4), Run("R2", 4, "P1", Yard, 54_000 - firstRun - more.Sum(one => one.Mass), 6), Run("R3", 6, "P2", Room, 36_000, 7)];
        runs.AddRange(more.Select(one => Run(one.Run, 2, "P1", Yard, one.Mass, 0)));
        return new PlanAnswer(
            new PlanSummary(0, 0, 0, 0, 0, 0, PlanStatus.TimeReached, 0, new Dictionary<string, double>(), new Dictionary<string, double>(), new Dictionary<string, double>(), [], [], "test", "", new Dictionary<string, double>()),
            paths, [], runs, [],
            [new MadeRow("R1", 2, M30, L1, 70.5, 2115), new MadeRow("R1", 2, L30, L1, 30, 900), new MadeRow("R2", 4, L30, L1, 60, 1800)],
            // 40 of stock (made in week -1, too old in week 2: its shelf life is 2) and 70.5 made: 70 of M30 ship; of L30 30 on time and 15 two weeks late.
            [new FillRow(new OrderId("O1"), "1", 2, M30, 70), new FillRow(new OrderId("O1"), "2", 2, L30, 30), new FillRow(new OrderId("O1"), "2", 4, L30, 15)],
            [], [],
            [new ShortRow(new OrderId("O1"), "1", 30, "nothing in the season can make it"), new ShortRow(new OrderId("O1"), "2", 5, "nothing in the season can make it")],
            [
                .. Enumerable.Range(0, 4).Select(week => new KeepRow(week, L1, "P1", Yard, week < 2 ? 60 : 38, week < 2 ? 54_000 : 54_000 - firstRun)),
                .. Enumerable.Range(0, 6).Select(week => new KeepRow(week, L1, "P2", week < 1 ? Cold : Room, 40, 36_000)),
            ],
            [new MoveRow(1, L1, Cold, Room, 40)], [new RoomRow(Room, 1, 6)],
            [new SeedRow("R1", 2, new VarietyId("Early Sorrel"), L1, SeedClass.B, SeedClass.B, new LocalDate(2026, 10, 5), 3000)],
            [new WorthRow("lot", "L1", null, 0.5), new WorthRow("line", "Pack 1", 3, 20)]);
    }

    public static PlanBook Book { get; } = new(Season, Answer());
}
