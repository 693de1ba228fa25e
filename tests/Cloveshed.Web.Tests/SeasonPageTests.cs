using System.Globalization;
using System.Net;

namespace Cloveshed.Web.Tests;

/// <summary>Each page with the demo season: in both languages, in both units, as of past days.</summary>
public sealed class SeasonPageTests(DemoShed demo) : IClassFixture<DemoShed>
{
    public static TheoryData<string> Places => ["/", "/keep", "/line", "/plan", "/dock", "/setup"];

    [Theory, MemberData(nameof(Places))]
    public async Task A_page_shows_the_season_in_both_languages_and_units(string path)
    {
        foreach ((string language, string unit) in new[] { ("en", "lb"), ("es", "kg") })
        {
            using Visitor visitor = demo.Shed.Visitor(language);
            visitor.Cookies.Add(demo.Shed.Root, new Cookie("cloveshed-unit", unit));
            Got page = await visitor.Get(path);
            Assert.Equal(HttpStatusCode.OK, page.Status);
            Assert.Contains("Quillon Flat Garlic 2026/27", page.Text, StringComparison.Ordinal);
            Assert.Contains($"<html lang=\"{language}\"", page.Text, StringComparison.Ordinal);
            Assert.DoesNotContain("class=\"empty\"", page.Text, StringComparison.Ordinal);
            Assert.DoesNotMatch(@"\{\d\}|NaN|Infinity|System\.|Cloveshed\.Core", page.Text);
        }
    }

    /// <summary>Entered on 2 September for 1 July: known now of any day since, known then of none before.</summary>
    [Theory]
    [InlineData("2026-06-30+now", false)]
    [InlineData("2026-07-01+now", true)]
    [InlineData("2026-09-01+now", true)]
    [InlineData("2026-09-01+then", false)]
    [InlineData("2026-09-02+then", true)]
    public async Task A_past_day_shows_what_was_so_or_what_was_known(string asOf, bool open)
    {
        using Visitor visitor = demo.Shed.Visitor();
        visitor.Cookies.Add(demo.Shed.Root, new Cookie("cloveshed-as-of", asOf));
        Got page = await visitor.Get("/keep");
        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Equal(open, page.Text.Contains("Quillon Flat Garlic 2026/27", StringComparison.Ordinal));
        Assert.Equal(!open, page.Text.Contains("no season was open", StringComparison.Ordinal));
    }

    /// <summary>Says how long the server took; the bound of the issue is held by its own bench, this one only that nothing is absurd.</summary>
    [Theory, MemberData(nameof(Places))]
    public async Task A_page_says_how_long_it_took(string path)
    {
        using Visitor visitor = demo.Shed.Visitor();
        await visitor.Get(path);
        string timing = (await visitor.Get(path)).Header("Server-Timing");
        TestContext.Current.TestOutputHelper!.WriteLine($"{path} {timing}");
        Assert.InRange(double.Parse(timing.Replace("shed;dur=", "", StringComparison.Ordinal), CultureInfo.InvariantCulture), 0, 2000);
    }
}
