using System.Globalization;
using System.Net;
using Cloveshed.Core;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Tests;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Tests.Setup;
using CsCheck;
using NodaTime;

namespace Cloveshed.Web.Tests.Keep;

/// <summary>Bins that go to another place: no pound and no bin is lost, and the clock knows where they were.</summary>
public sealed class MoveTests
{
    private static SeasonRow Row(string place, double bins, double net, string fresh = "0.8", string harvested = "2026-07-20") => new(
        "lots.csv", 1, new Dictionary<string, string>
        {
            ["lot"] = "L1", ["place"] = place, ["harvested"] = harvested, ["bins"] = bins.ToString("R", CultureInfo.InvariantCulture), ["net"] = net.ToString("R", CultureInfo.InvariantCulture),
            ["net_low"] = (net * 0.98).ToString("R", CultureInfo.InvariantCulture), ["fresh_share"] = fresh, ["crack_share"] = "0.1",
        }, Guid.Empty, 1);

    private static double Sum(MovedRows rows, string column) =>
        new[] { rows.From, rows.There, rows.Stays }.OfType<IReadOnlyDictionary<string, string>>().Sum(cells => double.Parse(cells[column], CultureInfo.InvariantCulture));

    [Fact]
    public void Bins_and_weight_are_kept_whatever_is_moved() =>
        Gen.Select(Gen.Int[1, 400], Gen.Double[1, 400_000], Gen.Double[0.01, 1], Gen.Bool).Sample((bins, net, share, known) =>
        {
            double from = Math.Round(net, 2), moved = Math.Round(Math.Max(0.25, bins * share), 2);
            MovedRows rows = MovedRows.Of(new BinsMoved(Row("Yard", bins, from), known ? Row("Cold 1", 20, 17_000, "0.7", "2026-07-10") : null, "Cold 1", Math.Min(bins, moved)))!;
            Assert.Equal(bins + (known ? 20 : 0), Sum(rows, "bins"), 1e-5);
            Assert.Equal(from + (known ? 17_000 : 0), Sum(rows, "net"), 1e-5);
            // Sound weight too: shares are mixed by weight.
            double Sound(IReadOnlyDictionary<string, string>? cells) => cells is null ? 0 : double.Parse(cells["net"], CultureInfo.InvariantCulture) * double.Parse(cells["fresh_share"], CultureInfo.InvariantCulture);
            Assert.Equal(from * 0.8 + (known ? 17_000 * 0.7 : 0), Sound(rows.From) + Sound(rows.There) + Sound(rows.Stays), 1e-6 * (from + 17_000));
            Assert.Equal(known ? "2026-07-10" : null, rows.There?["harvested"]);
        });

    [Theory]
    [InlineData("Yard", 5)]
    [InlineData("Cold 1", 0)]
    [InlineData("Cold 1", 61)]
    public void What_cannot_be_moved_is_not(string to, double bins) => Assert.Null(MovedRows.Of(new BinsMoved(Row("Yard", 60, 54_000), null, to, bins)));

    /// <summary>L2 stands in the yard; ten of its bins go into the room. The clock of what went goes by the yard until then, and of what stayed by the yard alone.</summary>
    [Fact]
    public async Task Moved_bins_stand_there_and_their_clock_goes_by_both_places()
    {
        await using ServedShed shed = await ServedShed.Open(ledger => Assert.True(SeasonImport.Import(ledger, new SmallSeason().Replace("lots.csv", "2026-09-21", "2026-08-01").Files, SmallShed.Origin).Taken));
        using Visitor visitor = shed.Visitor();
        Season before = shed.Ledger.Now().Season!;
        LotRow row = before.Lots.First(one => before.Lots.Count(other => other.Lot == one.Lot) == 1 && one.Harvested < before.Settings.AsOf);
        PlaceId to = before.Places.First(place => place.Id != row.Place && place.Kind != PlaceKind.Open).Id;
        Got page = await visitor.Get(Paths(row.Lot));
        string at = shed.Clock.GetLocalNow().AddHours(-3).ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture);
        for (int time = 0; time < 2; time++)
        {
            Got answer = await visitor.Fill(page, "/keep-rows/moved", ("to", to.Text), ("bins", "10"), ("at", at));
            Assert.Equal(HttpStatusCode.SeeOther, answer.Status);
        }

        LotRow[] after = [.. shed.Ledger.Now().Season!.Lots.Where(one => one.Lot == row.Lot)];
        Assert.Equal([(row.Place, row.Bins - 10), (to, 10)], after.Select(one => (one.Place, one.Bins)).OrderByDescending(one => one.Item2));
        Assert.Equal(row.Net, after.Sum(one => one.Net), 1e-6);
        Assert.Contains($"10 bins of {row.Lot} stand in {to} now.", (await visitor.Get(Paths(row.Lot))).Read(), StringComparison.Ordinal);
        IReadOnlyDictionary<(LotId Lot, PlaceId Place), IReadOnlyList<LotStay>> stays = RowSeats.All(shed.Ledger, shed.Ledger.Now().Rows, shed.Ledger.Now().Season!, shed.Clock.LocalTimeZone);
        LocalDateTime moment = LocalDateTime.FromDateTime(DateTime.Parse(at, CultureInfo.InvariantCulture));
        Assert.Equal([new LotStay(row.Place, row.Harvested.AtMidnight(), moment), new LotStay(to, moment, row.Harvested.AtMidnight().PlusYears(5))], stays[(row.Lot, to)]);
        Assert.Single(stays[(row.Lot, row.Place)]);
        // Nobody looked and nothing was read, yet what moved does not count as having stood there since harvest.
        ClockBook book = new ClockShelf(shed.Ledger, shed.Clock).Of(shed.Ledger.Now(), Cloveshed.Ledger.Yard.YardLog.Empty, Cloveshed.Ledger.Rooms.PlaceLog.Empty);
        Assert.Equal((1.0, 1.0, 1.0, 0), book.Of(after.Single(one => one.Place == to)) is { } clock ? (clock.Weight, clock.Sprout, clock.Decay, clock.Looks) : default);
        Assert.Null(book.Of(after.Single(one => one.Place == row.Place)));
    }

    [Fact]
    public async Task What_the_other_place_cannot_hold_is_refused_and_nothing_is_written()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor("es");
        Season season = shed.Ledger.Now().Season!;
        LotRow row = season.Lots.First(one => season.Lots.Count(other => other.Lot == one.Lot) == 1);
        long head = shed.Ledger.Head().Seq;
        Got page = await visitor.Get(Paths(row.Lot));
        await visitor.Fill(page, "/keep-rows/moved", ("to", season.Places.First(place => place.Id != row.Place).Id.Text), ("bins", "900000"));
        await visitor.Fill(page, "/keep-rows/moved", ("to", row.Place.Text), ("bins", "1"));
        await visitor.Fill(page, "/keep-rows/moved", ("to", season.Places.First(place => place.Id != row.Place).Id.Text), ("bins", "1"), ("at", "2031-01-01T10:00"));
        Assert.Equal(head, shed.Ledger.Head().Seq);
        Assert.Contains("No se movió nada", (await visitor.Get(Paths(row.Lot))).Read(), StringComparison.Ordinal);
    }

    private static string Paths(LotId lot) => "/keep/" + Uri.EscapeDataString(lot.Text);
}
