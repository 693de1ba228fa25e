using System.Net;
using System.Text.RegularExpressions;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Tests;

namespace Cloveshed.Web.Tests.Setup;

/// <summary>
/// A season is imported on 2 September. On 11 September order O1 line 1 goes from 100 to 130 units, recorded at once; of the same day
/// lot L2 weighs 85,000 lb, not 90,000, but that is recorded on 21 September only. Every page shows the one or the other.
/// </summary>
public sealed class AsOfTests : IAsyncLifetime
{
    private ServedShed? shed;

    public async ValueTask InitializeAsync()
    {
        shed = await ServedShed.Open();
        TimeSpan here = shed.Clock.LocalTimeZone.BaseUtcOffset;
        DateTimeOffset day = shed.Clock.GetUtcNow().ToOffset(here);
        Assert.True(SeasonImport.Import(shed.Ledger, new SmallSeason().Files, new FactOrigin(day, "test")).Taken);
        shed.Clock.Pass(TimeSpan.FromDays(9));
        SeasonRow order = shed.Ledger.Now().Rows!.Find("orders.csv", 1)!;
        Assert.IsType<Appended.Accepted>(shed.Ledger.Append([new FactOrigin(day.AddDays(9), "test").RowChanged(order, new Dictionary<string, string>(order.Cells) { ["units"] = "130" }, null, "the buyer called")]));
        shed.Clock.Pass(TimeSpan.FromDays(10));
        SeasonRow lot = shed.Ledger.Now().Rows!.Find("lots.csv", 3)!;
        Assert.IsType<Appended.Accepted>(shed.Ledger.Append([new FactOrigin(day.AddDays(9), "test").RowChanged(lot, new Dictionary<string, string>(lot.Cells) { ["net"] = "85000" }, null, "weighed")]));
    }

    public ValueTask DisposeAsync() => shed!.DisposeAsync();

    // 2 September imported; 11 September the order, and the weight happened; 21 September the weight was recorded.
    [Theory]
    [InlineData("2026-09-01+now", null, null)]
    [InlineData("2026-09-02+now", "100", "90000")]
    [InlineData("2026-09-10+then", "100", "90000")]
    [InlineData("2026-09-11+then", "130", "90000")]
    [InlineData("2026-09-11+now", "130", "85000")]
    [InlineData("2026-09-20+then", "130", "90000")]
    [InlineData("2026-09-21+then", "130", "85000")]
    [InlineData("", "130", "85000")]
    public async Task A_list_and_a_row_show_what_was_so_or_what_was_known(string asOf, string? units, string? net)
    {
        using Visitor visitor = shed!.Visitor();
        visitor.LookAt(shed, asOf);
        Got orders = await visitor.Get("/setup/orders"), lots = await visitor.Get("/setup/lots"), order = await visitor.Get("/setup/orders/1"), lot = await visitor.Get("/setup/lots/3");
        if (units is null)
        {
            Assert.Contains("no season was open", orders.Text, StringComparison.Ordinal);
            Assert.DoesNotContain("M30", orders.Text, StringComparison.Ordinal);
            return;
        }

        Assert.Equal(units, Cell(orders, 1, 7));
        Assert.Equal(net, Cell(lots, 3, 7));
        Assert.Contains($"name=\"c.units\" type=\"text\" value=\"{units}\"", order.Text, StringComparison.Ordinal);
        Assert.Contains($"name=\"c.net\" type=\"text\" value=\"{net}\"", lot.Text, StringComparison.Ordinal);
        // A row's life ends with the fact that counts: later ones are not told.
        Assert.Equal(net == "85000", lot.Read().Contains("net 90000 → 85000 weighed", StringComparison.Ordinal));
        Assert.Equal(asOf.Length > 0, order.Text.Contains("class=\"as-of\"", StringComparison.Ordinal));
    }

    /// <summary>Pages of every place, each with the number that the day makes. What they show besides is their own tests' matter.</summary>
    [Theory]
    [InlineData("/keep", "90,000", "85,000")]
    [InlineData("/keep/L2", "90,000", "85,000")]
    [InlineData("/dock", "100", "130")]
    [InlineData("/dock/O1", "100", "130")]
    public async Task Every_place_shows_the_day_that_is_looked_at(string path, string before, string after)
    {
        foreach ((string asOf, string number) in new[] { ("2026-09-10+now", before), ("2026-09-10+then", before), ("2026-09-21+then", after), ("2026-09-21+now", after), ("", after) })
        {
            using Visitor visitor = shed!.Visitor();
            visitor.LookAt(shed, asOf);
            Got page = await visitor.Get(path);
            Assert.Equal(HttpStatusCode.OK, page.Status);
            Assert.Matches($@"\b{number}\b", page.Read());
            // What it was may still be told as history; what it will be may not be known.
            Assert.Equal(number == after, Regex.IsMatch(page.Read(), $@"\b{after}\b"));
            if (asOf.Length > 0)
            {
                Assert.Contains("Nothing can be changed here.", page.Text, StringComparison.Ordinal);
                Assert.DoesNotMatch("<form method=\"post\" action=\"/(?!view)[^\"]*\"[^>]*>(?!.*?(<fieldset class=\"bare\" disabled>|</form>.*?</form>)).*?</form>", page.Text);
            }
        }
    }

    private static string Cell(Got list, int row, int column) =>
        Regex.Matches(Regex.Match(list.Text, $"<tr id=\"r{row}\">(.*?)</tr>").Groups[1].Value, "<t[dh][^>]*>(.*?)</t[dh]>")[column].Groups[1].Value;
}
