using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;
using NodaTime;

namespace Cloveshed.Core.Tests.Shift;

/// <summary>What docks need of a week's runs, from stock, earlier weeks and orders that are reckoned by hand.</summary>
public class DockBookTests
{
    private static readonly ProductId Jumbo = HandWeek.Jumbo;

    [Fact]
    public void What_stands_ready_goes_first_and_the_rest_is_needed_by_the_days_on_which_it_is_due()
    {
        // In stock 20 that may still ship in week 1, and 100 that may not; made in week 0: 50, of which 40 ship. 30 are ready for week 1.
        Season season = Season(
            [new StockRow(Jumbo, -1, 20, null), new StockRow(Jumbo, -5, 100, null)],
            Order("O1", 0, 40, 0), Order("O2", 8, 25, 7), Order("O3", 9, 35, 14), Order("O4", 20, 50, 7));
        PlanAnswer plan = Plan([new MadeRow("R0", 0, Jumbo, new LotId("L"), 50, 0), new MadeRow("R1", 1, Jumbo, new LotId("L"), 80, 0)], Fill("O1", 0, 40), Fill("O2", 1, 25), Fill("O3", 1, 35), Fill("O4", 1, 50));

        DockNeed[] needs = [.. DockBook.Needs(season, plan, 1)];

        // Tuesday's 25 are ready. By Wednesday 60 are due and 30 ready; nothing more is due in the week. A unit costs (25 x 7 + 35 x 14) / 60 a week, a seventh of it a day.
        Assert.Equal([(2, 30.0), (3, 30), (4, 30), (5, 30), (6, 30)], needs.Select(need => ((need.Minute / 1440) - 1, need.Units)));
        Assert.All(needs, need => Assert.Equal(((25 * 7) + (35 * 14)) / 60.0 / 7, need.CostPerUnit, 9));
        Assert.Equal(["O2", "O3"], needs[0].Loads.Select(load => load.Order.Text));
    }

    [Fact]
    public void A_load_leaves_at_the_last_dock_that_is_not_late_and_a_missed_one_waits_for_the_next()
    {
        // Docks on Monday and Thursday; due on a Wednesday, it leaves on the Monday, and short it waits three days.
        Season season = Season([], Order("O1", 2, 10, 7)) with { Shifts = [.. new[] { IsoDayOfWeek.Monday, IsoDayOfWeek.Thursday }.Select(day => new ShiftRow(ShiftKind.Dock, "Trucks", null, null, day, 420, 900, null))] };

        DockNeed[] needs = [.. DockBook.Needs(season, Plan([], Fill("O1", 0, 10)), 0)];

        Assert.Equal([(900, 10.0, 3.0), ((3 * 1440) + 900, 10.0, 4.0)], needs.Select(need => (need.Minute, need.Units, Math.Round(need.CostPerUnit, 9))));
    }

    [Fact]
    public void A_closed_day_has_no_dock() =>
        Assert.Equal(
            [-1, 2340, 3780, 5220, 6660, 8100, 9540],
            DockBook.Docks([new(ShiftKind.Dock, "Trucks", null, null, null, 420, 900, null), new(ShiftKind.Closed, "Fair", null, 0, IsoDayOfWeek.Monday, 0, 1440, null)], 0));

    private static Season Season(StockRow[] stock, params OrderLine[] orders) => new(
        HandWeek.Settings, [], [], [], [], [], [], [], [], [], [], [new Product(Jumbo, ProductForm.Bulb, "JU", 30, 0, 3, false)], [], stock, [], orders, [], [], []);

    private static OrderLine Order(string id, int due, int units, decimal late) => new(
        new OrderId(id), "1", "Brask Foods", Jumbo, HandWeek.Settings.FirstWeek, HandWeek.Settings.FirstWeek.PlusDays(due), units, 20, true, late, 0, false, false);

    private static FillRow Fill(string order, int week, int units) => new(new OrderId(order), "1", week, Jumbo, units);

    private static PlanAnswer Plan(MadeRow[] made, params FillRow[] fills) => new(null!, [], [], [], [], made, fills, [], [], [], [], [], [], [], []);
}
