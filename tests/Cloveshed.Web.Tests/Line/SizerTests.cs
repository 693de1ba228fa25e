using System.Globalization;
using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Tests;
using Cloveshed.Web.Tests.Setup;
using MathNet.Numerics.Distributions;

namespace Cloveshed.Web.Tests.Line;

/// <summary>The sizer's page: what it says of a setting, with and without a script, and a setting put in force.</summary>
public sealed partial class SizerTests
{
    /// <summary>
    /// L1 has mean 52 g and cv 0.25 in its cells, so by the contract its weights are lognormal; by mass that is N(mu + s2, s2) in ln g
    /// (Aitchison and Brown, from memory). MathNet is the referee. Small 38 to 51 mm, medium to 64, large above.
    /// </summary>
    [Fact]
    public async Task Shares_and_cartons_are_those_of_the_lots_law()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        JsonElement said = await Answer(visitor, "/line-answers/sizer/L1?cut=30&cut=50&cut=70&mass=10000");
        double s2 = Math.Log(1 + 0.25 * 0.25), mu = Math.Log(52) - s2 / 2;
        double AtLeast(double g) => 1 - Normal.CDF(mu + s2, Math.Sqrt(s2), Math.Log(g));
        double[] shares = [AtLeast(30) - AtLeast(50), AtLeast(50) - AtLeast(70), AtLeast(70)];
        // 10,000 lb dumped: by its rows 0.8 of 54,000 and 0.82 of 36,000 lb make grade, and 0.88 of that is kept.
        double packed = 10_000 * (0.8 * 54_000 + 0.82 * 36_000) / 90_000 * 0.88;
        for (int k = 0; k < 3; k++)
        {
            Assert.Equal(Percent(shares[k]), Text(said, $"share-{k}"));
            Assert.Equal(Math.Round(packed * shares[k] / 30).ToString("N0", CultureInfo.InvariantCulture), Text(said, $"cartons-{k}"));
        }

        Assert.Equal(Percent(1 - AtLeast(30)), Text(said, "under"));
    }

    [Fact]
    public async Task The_page_and_its_live_numbers_say_the_same_in_both_languages()
    {
        await using ServedShed shed = await SmallShed.Open();
        foreach (string language in new[] { "en", "es" })
        {
            using Visitor visitor = shed.Visitor(language);
            const string Query = "?cut=31&cut=52.5&cut=77&as=own&as=own&as=merge&tol=10&pounds=50";
            Got page = await visitor.Get("/line/sizer/L1" + Query);
            JsonElement said = await Answer(visitor, "/line-answers/sizer/L1" + Query);
            Match[] spots = [.. (IEnumerable<Match>)Spots().Matches(page.Text)];
            Assert.True(spots.Length > 40);
            Assert.All(spots, spot => Assert.Equal(Text(said, spot.Groups[1].Value), WebUtility.HtmlDecode(spot.Groups[2].Value)));
            Assert.Contains("value=\"52.5\"", page.Text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task The_best_cuts_are_offered_as_an_address_and_hold()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        using JsonDocument first = JsonDocument.Parse((await visitor.Get("/line-answers/sizer/L1?tol=10&off=refused")).Text);
        string best = first.RootElement.GetProperty("best").GetString()!;
        using JsonDocument then = JsonDocument.Parse((await visitor.Get(best.Replace("/line/", "/line-answers/", StringComparison.Ordinal))).Text);
        Assert.Empty(then.RootElement.GetProperty("off").EnumerateArray());
        Assert.Equal(Text(first.RootElement.GetProperty("said"), "best-value"), Text(then.RootElement.GetProperty("said"), "value"));
        Assert.Equal("$0", Text(then.RootElement.GetProperty("said"), "gain"));
        Assert.NotEqual("$0", Text(first.RootElement.GetProperty("said"), "best-value"));
    }

    [Fact]
    public async Task A_setting_put_in_force_is_one_fact_however_often_it_is_sent_and_then_stands_there()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got page = await visitor.Get("/line/sizer/L1?cut=31&cut=52.5&cut=77&as=own&as=own&as=merge");
        for (int time = 0; time < 2; time++)
        {
            Got answer = await visitor.Fill(page, "/line-facts/cuts");
            Assert.Equal((HttpStatusCode.SeeOther, "/line/sizer/L1"), (answer.Status, answer.Header("Location")));
            shed.Clock.Pass(TimeSpan.FromMinutes(1));
        }

        Fact fact = Assert.Single(shed.Ledger.Read(head));
        Assert.Equal((FactKinds.SizerSet, "line"), (fact.Kind, fact.Place));
        Assert.Equal([new SetBox("small", "small", 31), new SetBox("medium", "large", 52.5)], shed.Ledger.Now().SizerSettings.Single().Boxes);
        Got then = await visitor.Get("/line/sizer/L1");
        Assert.Contains("value=\"52.5\"", then.Text, StringComparison.Ordinal);
        Assert.Contains("The cuts in force were set", then.Read(), StringComparison.Ordinal);
        Assert.Empty(shed.Ledger.Verify().Flaws);
    }

    [Theory]
    [InlineData("?cut=60&cut=50&cut=70", "The cut of medium lies under the one before it", "cut-1")]
    [InlineData("?cut=30&cut=5x&cut=70", "A field holds no number", "cut-1")]
    public async Task A_setting_that_cannot_be_is_told_at_its_field_and_not_put_in_force(string query, string told, string field)
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got page = await visitor.Get("/line/sizer/L1" + query);
        Assert.Contains(told, page.Read(), StringComparison.Ordinal);
        Assert.Matches($"id=\"{field}\"[^>]*aria-invalid=\"true\"", page.Text);
        await visitor.Send(page, "/line-facts/cuts", ("setting", query));
        Assert.Equal(head, shed.Ledger.Head().Seq);
        Assert.Contains("class=\"said refused\"", (await visitor.Get("/line/sizer/L1")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lot_that_is_not_there_is_said_to_be_gone_and_one_with_a_slash_has_a_page()
    {
        await using ServedShed shed = await ServedShed.Open(ledger => Assert.True(SeasonImport.Import(
            ledger, new SmallSeason().Replace("lots.csv", "L2,", "L/2 é%,").Replace("samples.csv", "L2,", "L/2 é%,").Files, SmallShed.Origin).Taken));
        using Visitor visitor = shed.Visitor();
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get("/line/sizer/L9")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get("/line-answers/sizer/L9")).Status);
        string link = Regex.Match((await visitor.Get("/line")).Text, "href=\"(/line/sizer/L[^1\"]+)\"").Groups[1].Value;
        Got page = await visitor.Get(link);
        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Contains("L/2 é%", page.Read(), StringComparison.Ordinal);
        string answer = Regex.Match(page.Text, "data-answer=\"([^\"]+)\"").Groups[1].Value;
        Assert.Equal(HttpStatusCode.OK, (await visitor.Get(answer)).Status);
    }

    private static async Task<JsonElement> Answer(Visitor visitor, string path)
    {
        Got answer = await visitor.Get(path);
        Assert.Equal(HttpStatusCode.OK, answer.Status);
        return JsonDocument.Parse(answer.Text).RootElement.GetProperty("said");
    }

    private static string Text(JsonElement said, string spot) => said.GetProperty(spot).GetString()!;

    private static string Percent(double share) => (share * 100).ToString("0.0", CultureInfo.InvariantCulture) + "%";

    [GeneratedRegex("data-out=\"([^\"]+)\">([^<]*)<")]
    private static partial Regex Spots();
}
