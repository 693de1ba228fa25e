using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Cloveshed.Ledger;
using Cloveshed.Web.Tests.Setup;

namespace Cloveshed.Web.Tests.Line;

/// <summary>The drum's page, and the setting sheet that sizer and drum are printed on.</summary>
public sealed partial class DrumTests(DemoShed demo) : IClassFixture<DemoShed>
{
    [Fact]
    public async Task The_page_and_its_live_numbers_say_the_same_and_shares_are_the_whole()
    {
        foreach (string language in new[] { "en", "es" })
        {
            using Visitor visitor = demo.Shed.Visitor(language);
            const string Query = "?hole=6&hole=9&hole=11&hole=13&hole=17&load=1.2&most=20";
            Got page = await visitor.Get("/line/drum/26-035" + Query);
            using JsonDocument answer = JsonDocument.Parse((await visitor.Get("/line-answers/drum/26-035" + Query)).Text);
            JsonElement said = answer.RootElement.GetProperty("said");
            Match[] spots = [.. (IEnumerable<Match>)Spots().Matches(page.Text)];
            Assert.True(spots.Length > 50);
            Assert.All(spots, spot => Assert.Equal(said.GetProperty(spot.Groups[1].Value).GetString(), WebUtility.HtmlDecode(spot.Groups[2].Value)));
            Assert.Equal(100, Enumerable.Range(0, 6).Sum(z => double.Parse(said.GetProperty($"share-{z}").GetString()!.TrimEnd('%'), System.Globalization.CultureInfo.InvariantCulture)), 0.4);
        }
    }

    /// <summary>A steady loop by hand: 3,700 lb an hour, a tenth not cracked, all of it sent round, half of it cracked each time: 3,700 x 0.1 / (1 - 0.5).</summary>
    [Fact]
    public async Task The_loop_is_that_of_the_sum_by_hand()
    {
        using Visitor visitor = demo.Shed.Visitor();
        using JsonDocument answer = JsonDocument.Parse((await visitor.Get("/line-answers/drum/26-035?feed=3700&first=10&again=50&caught=100")).Text);
        Assert.Equal("740 lb/h", answer.RootElement.GetProperty("said").GetProperty("round").GetString()!.Replace('\u00A0', ' '));
        using JsonDocument full = JsonDocument.Parse((await visitor.Get("/line-answers/drum/26-035?first=10&again=100&caught=100")).Text);
        Assert.Contains("without end", full.RootElement.GetProperty("said").GetProperty("round-share").GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Holes_and_cuts_put_in_force_stand_on_the_sheet_in_both_languages()
    {
        await using ServedShed shed = await ServedShed.OpenDemo();
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/line/drum/26-035?hole=6&hole=9&hole=11.3&hole=13&hole=17&order=large");
        for (int time = 0; time < 2; time++)
        {
            await visitor.Fill(page, "/line-facts/holes");
            shed.Clock.Pass(TimeSpan.FromMinutes(1));
        }

        await visitor.Fill(await visitor.Get("/line/sizer/26-035?cut=20&cut=27&cut=33&cut=39.7"), "/line-facts/cuts");
        DrumSetting set = Assert.Single(shed.Ledger.Now().DrumSettings);
        Assert.Equal([6, 9, 11.3, 13, 17], set.HolesMm);
        Assert.True(set.LargestFirst);
        string read = (await visitor.Get("/line/sheet/26-035?in=both")).Read();
        Assert.Contains("Section 1: 17.0 mm", read, StringComparison.Ordinal); // the first that cloves meet
        Assert.Contains("Sección 3: 11.3 mm", read, StringComparison.Ordinal);
        Assert.Contains("39.7", read, StringComparison.Ordinal);
        Assert.Contains("each person's own lock", read, StringComparison.Ordinal);
        Assert.Contains("candado propio", read, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\{\d\}|NaN|Infinity", read);
    }

    [Theory]
    [InlineData("?hole=9&hole=6")]
    [InlineData("?hole=wide")]
    public async Task Holes_that_cannot_be_are_told_and_not_put_in_force(string query)
    {
        await using ServedShed shed = await ServedShed.OpenDemo();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got page = await visitor.Get("/line/drum/26-035" + query);
        Assert.Contains("aria-invalid=\"true\"", page.Text, StringComparison.Ordinal);
        await visitor.Send(page, "/line-facts/holes", ("setting", query));
        Assert.Equal(head, shed.Ledger.Head().Seq);
    }

    [Fact]
    public async Task Without_clove_grades_the_page_says_what_to_do()
    {
        await using ServedShed shed = await ServedShed.Open(ledger => Assert.True(SeasonImport.Import(ledger, Without(new SeasonFiles.Tests.SmallSeason().Files), SmallShed.Origin).Taken));
        using Visitor visitor = shed.Visitor();
        Assert.Contains("This season has no clove grades", (await visitor.Get("/line/drum/L1")).Read(), StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await visitor.Get("/line/sheet/L1")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get("/line/drum/L9")).Status);
    }

    private static Dictionary<string, ReadOnlyMemory<byte>> Without(IReadOnlyDictionary<string, ReadOnlyMemory<byte>> files)
    {
        Dictionary<string, ReadOnlyMemory<byte>> left = new(files) { ["clove-grades.csv"] = "grade,min_mm,max_mm\n"u8.ToArray() };
        string[] bulbs = [.. System.Text.Encoding.UTF8.GetString(files["products.csv"].Span).Split('\n').Where(line => !line.Contains(",clove,", StringComparison.Ordinal))];
        HashSet<string> gone = [.. System.Text.Encoding.UTF8.GetString(files["products.csv"].Span).Split('\n').Where(line => line.Contains(",clove,", StringComparison.Ordinal)).Select(line => line.Split(',')[0])];
        left["products.csv"] = System.Text.Encoding.UTF8.GetBytes(string.Join('\n', bulbs));
        foreach (string file in new[] { "orders.csv", "market.csv", "stock.csv" })
        {
            if (left.TryGetValue(file, out ReadOnlyMemory<byte> rows))
            {
                left[file] = System.Text.Encoding.UTF8.GetBytes(string.Join('\n', System.Text.Encoding.UTF8.GetString(rows.Span).Split('\n').Where(line => !line.Split(',').Any(gone.Contains))));
            }
        }

        return left;
    }

    [GeneratedRegex("data-out=\"([^\"]+)\">([^<]*)<")]
    private static partial Regex Spots();
}
