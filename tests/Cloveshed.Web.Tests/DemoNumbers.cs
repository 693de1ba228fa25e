using System.Globalization;
using System.Net;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Tests.Setup;

namespace Cloveshed.Web.Tests;

/// <summary>
/// What Today, Keep and Dock show of the demo, against sums made here from the season's and the plan's rows alone, without the code of the
/// pages. Numbers are looked for as written: thousands by comma, a no-break space before the unit.
/// </summary>
public sealed class DemoNumbers(DemoShed demo) : IClassFixture<DemoShed>
{
    private readonly Season season = demo.Shed.Ledger.Now().Season!;
    private readonly PlanAnswer answer = PlanDocument.Read(demo.Shed.Ledger.Document(demo.Shed.Ledger.Now().Adopted!.Document)!);

    private async Task<string> Text(string path)
    {
        using Visitor visitor = demo.Shed.Visitor();
        Got page = await visitor.Get(path);
        Assert.Equal(HttpStatusCode.OK, page.Status);
        return page.Read();
    }

    private static string Whole(double number) => Math.Round(number, MidpointRounding.AwayFromZero).ToString("#,##0", CultureInfo.InvariantCulture);

    private static string Cents(double number) => Math.Round((decimal)number, 2, MidpointRounding.AwayFromZero).ToString("#,##0.00", CultureInfo.InvariantCulture);

    [Theory]
    [InlineData(0)]
    [InlineData(9)]
    [InlineData(30)]
    public async Task Today_has_the_weeks_runs_by_line_with_their_hours_and_what_keeping_takes(int week)
    {
        string page = await Text($"/?all=yes&week={season.Settings.Monday(week):uuuu'-'MM'-'dd}");
        foreach (Core.Seasons.Line line in season.Lines)
        {
            RunRow[] runs = [.. answer.Runs.Where(run => run.Week == week && run.Line == line.Id)];
            LineWeek? other = season.LineWeeks.FirstOrDefault(one => one.Line == line.Id && one.Week == week);
            string hours = $"{Short(runs.Sum(run => run.Hours))} h of {Short(other?.Hours ?? line.HoursPerWeek)} h, {Short(runs.Sum(run => run.OvertimeHours))} h of {Short(other is null ? line.OvertimeHours : other.OvertimeHours ?? (other.Hours == 0 ? 0 : line.OvertimeHours))} h overtime";
            Assert.Contains(hours, page, StringComparison.Ordinal);
            if (runs.Length > 0)
            {
                Assert.Contains($"Total {Whole(runs.Sum(run => run.MassIn))} ", page, StringComparison.Ordinal);
            }
        }

        // The keeping part of a run out of one path: mass at start x worth x share of what is sound that the week takes.
        RunRow? single = answer.Runs.Where(run => run.Week == week && !run.FromSorted).GroupBy(run => (run.Run, run.Lot)).Where(rows => rows.Count() == 1).Select(rows => rows.First()).MaxBy(run => run.MassAtStart);
        if (single is not null)
        {
            PathWeek now = answer.Paths.First(path => path.Path == single.Path && path.Week == week), next = answer.Paths.First(path => path.Path == single.Path && path.Week == week + 1);
            double lost = 1 - next.MassRatio * (next.FreshShare + next.CrackShare) / (now.MassRatio * (now.FreshShare + now.CrackShare));
            double worth = answer.Worths.First(one => one.Kind == "lot" && one.Name == single.Lot.Text).Value;
            Assert.Contains($"{single.Lot}: what keeping takes from it {Whole(single.MassAtStart)} lb", page, StringComparison.Ordinal);
            Assert.Contains($"${Cents(single.MassAtStart * worth * lost)}", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Today_names_the_orders_that_are_short_this_week_with_price_and_charge()
    {
        int week = Enumerable.Range(0, season.Settings.Weeks).First(at => Short(at).Any());
        string page = await Text($"/?all=yes&week={season.Settings.Monday(week):uuuu'-'MM'-'dd}");
        foreach ((OrderLine line, int units) in Short(week))
        {
            Assert.Contains($"{line.Order} for {line.Customer}", page, StringComparison.Ordinal);
            Assert.Contains($"{line.Order} / {line.Number}: units not shipped {Whole(units)} units ${Cents((double)line.Price)} ${Cents(units * (double)line.Price)}", page, StringComparison.Ordinal);
        }

        IEnumerable<(OrderLine, int)> Short(int at) => season.Orders.Where(line => season.Settings.WeekOf(line.Due) == at)
            .Select(line => (line, line.Units - answer.Fills.Where(fill => fill.Order == line.Order && fill.Line == line.Number).Sum(fill => fill.Units))).Where(one => one.Item2 > 0);
    }

    [Fact]
    public async Task Today_is_in_the_order_of_cost()
    {
        using Visitor visitor = demo.Shed.Visitor();
        string page = (await visitor.Get("/?all=yes&week=2026-08-17")).Text;
        double[] costs = [.. System.Text.RegularExpressions.Regex.Matches(page, "<span class=\"big\">\\$([\\d,]+)</span>\\s*<span class=\"unit\">a week").Select(match => double.Parse(match.Groups[1].Value, NumberStyles.AllowThousands, CultureInfo.InvariantCulture))];
        Assert.True(costs.Length > 5);
        Assert.Equal(costs.OrderDescending(), costs);
    }

    [Fact]
    public async Task Keep_has_each_places_bins_now_and_in_any_week()
    {
        string page = await Text("/keep");
        int lots = season.Lots.Select(row => row.Lot).Distinct().Count();
        Assert.Contains($"{lots} lots in {season.Places.Count} places.", page, StringComparison.Ordinal);
        foreach (Place place in season.Places)
        {
            LotRow[] now = [.. season.Lots.Where(row => row.Place == place.Id && row.Harvested <= season.Settings.AsOf.PlusDays(6))];
            Assert.Contains($"{Whole(now.Sum(row => row.Bins))} {Whole(place.CapacityBins)} {Whole(100 * now.Sum(row => row.Bins) / place.CapacityBins)}% {Whole(now.Sum(row => row.Net))} ", page, StringComparison.Ordinal);
        }

        PlaceWeekSum most = answer.Keeps.GroupBy(keep => (keep.Place, keep.Week)).Select(group => new PlaceWeekSum(group.Key.Place.Text, group.Key.Week, group.Sum(keep => keep.Bins))).Where(sum => sum.Place == "Cold 1").MaxBy(sum => sum.Bins)!;
        string detail = await Text($"/keep?place=Cold+1&week={season.Settings.Monday(most.Week):uuuu'-'MM'-'dd}");
        Assert.Contains($"Total {Whole(most.Bins)} ", detail, StringComparison.Ordinal);
        KeepRow row = answer.Keeps.Where(keep => keep.Place.Text == "Cold 1" && keep.Week == most.Week).GroupBy(keep => keep.Lot).Where(group => group.Count() == 1).Select(group => group.First()).MaxBy(keep => keep.Bins)!;
        double weighed = row.MassAtStart * answer.Paths.First(path => path.Path == row.Path && path.Week == most.Week + 1).MassRatio;
        Assert.Contains($"{row.Lot} {Whole(row.Bins)} {Whole(weighed)}", detail, StringComparison.Ordinal);
    }

    private sealed record PlaceWeekSum(string Place, int Week, double Bins);

    [Theory]
    [InlineData("25-071")]
    [InlineData("26-003")]
    public async Task A_lots_page_has_its_rows_its_worth_and_its_runs(string lot)
    {
        string page = await Text("/keep/" + lot);
        LotRow[] rows = [.. season.Lots.Where(row => row.Lot.Text == lot)];
        Assert.Contains($"Stands {Whole(rows.Sum(row => row.Net))} lb {Whole(rows.Sum(row => row.Bins))} bins, in {(rows.Length == 1 ? "one place" : $"{rows.Length} places")}", page, StringComparison.Ordinal);
        double worth = answer.Worths.First(one => one.Kind == "lot" && one.Name == lot).Value;
        Assert.Contains($"Worth ${Whole(worth * rows.Sum(row => row.Net))}", page, StringComparison.Ordinal);
        foreach (IGrouping<(string, int), RunRow> run in answer.Runs.Where(run => run.Lot.Text == lot).GroupBy(run => (run.Run, run.Week)))
        {
            Assert.Contains($" {Whole(run.Sum(row => row.MassIn))} {run.Sum(row => row.Hours + row.OvertimeHours).ToString("#,##0.0", CultureInfo.InvariantCulture)} ", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Dock_sums_what_is_ordered_filled_late_and_short()
    {
        string page = await Text("/dock");
        ILookup<(string, string), FillRow> fills = answer.Fills.ToLookup(fill => (fill.Order.Text, fill.Line));
        int late = answer.Fills.Sum(fill => fill.Week > Due(fill) ? fill.Units : 0);
        (OrderLine Line, int Units)[] shorts = [.. season.Orders.Select(line => (line, line.Units - fills[(line.Order.Text, line.Number)].Sum(fill => fill.Units))).Where(one => one.Item2 > 0)];
        Assert.Contains($"Ordered ${Whole((double)season.Orders.Sum(line => line.Units * line.Price))} {Whole(season.Orders.Sum(line => line.Units))} units on {Whole(season.Orders.Count)} lines", page, StringComparison.Ordinal);
        Assert.Contains($"Units late {Whole(late)} ", page, StringComparison.Ordinal);
        Assert.Contains($"Units short {Whole(shorts.Sum(one => one.Units))} on {shorts.Length} lines, ${Whole((double)shorts.Sum(one => one.Units * one.Line.Price))} at their prices", page, StringComparison.Ordinal);
        Assert.Contains($"1–80 of {Whole(season.Orders.Count)}", page, StringComparison.Ordinal);
        string only = await Text("/dock?state=short");
        Assert.Contains($"units on {Whole(shorts.Length)} lines", only, StringComparison.Ordinal);

        int Due(FillRow fill) => season.Settings.WeekOf(season.Orders.First(line => line.Order == fill.Order && line.Number == fill.Line).Due);
    }

    [Fact]
    public async Task An_orders_page_has_its_shipments_to_the_unit_and_its_lost_money()
    {
        OrderLine line = season.Orders.First(one => answer.Shorts.Any(row => row.Order == one.Order && row.Line == one.Number) && answer.Fills.Any(fill => fill.Order == one.Order && fill.Line == one.Number));
        string page = await Text("/dock/" + line.Order);
        double lost = season.Orders.Where(one => one.Order == line.Order).Sum(one =>
            (one.Units - answer.Fills.Where(fill => fill.Order == one.Order && fill.Line == one.Number).Sum(fill => fill.Units)) * (double)(one.Price + (one.Firm ? one.ShortCost : 0)));
        Assert.Contains($"${Cents(lost)}", page, StringComparison.Ordinal);
        Assert.Contains($"Total {Whole(answer.Fills.Where(fill => fill.Order == line.Order && fill.Line == line.Number).Sum(fill => fill.Units))} ", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Kilograms_are_pounds_by_the_exact_factor()
    {
        using Visitor visitor = demo.Shed.Visitor("es");
        visitor.Cookies.Add(demo.Shed.Root, new Cookie("cloveshed-unit", "kg"));
        // The international pound: 0.45359237 kg (NIST SP 811, 2008, appendix B.8).
        Assert.Contains(Whole(season.Lots.Where(row => row.Lot.Text == "25-071").Sum(row => row.Net) * 0.45359237) + " kg", (await visitor.Get("/keep/25-071")).Read(), StringComparison.Ordinal);
    }

    /// <summary>First pages stay small on the wire, packed as a browser gets them (issue 3: under 250 KB).</summary>
    [Theory]
    [InlineData("/")]
    [InlineData("/keep")]
    [InlineData("/keep/25-071")]
    [InlineData("/dock")]
    public async Task A_page_is_small_on_the_wire(string path)
    {
        using Visitor visitor = demo.Shed.Visitor(packed: true);
        Got page = await visitor.Get(path);
        Assert.InRange((await page.Answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).Length, 1, 100_000);
    }

    private static string Short(double hours) => hours.ToString("#,##0.#", CultureInfo.InvariantCulture);
}
