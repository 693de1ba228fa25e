using System.Text.RegularExpressions;
using Cloveshed.Web.Help;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Tests;

/// <summary>Pages load nothing from elsewhere and hold no script of their own.</summary>
public sealed partial class OwnFilesTests(ShedWithoutSeason empty) : IClassFixture<ShedWithoutSeason>
{
    /// <summary>Names of XML vocabularies, which no browser fetches.</summary>
    private static readonly string[] Vocabularies = ["http://www.w3.org/"];

    public static TheoryData<string> Paths => new([.. ShedPlaces.All.Select(place => place.Path), "/help", .. ManualPage.Names.Select(name => "/help/" + name), "/nowhere"]);

    [Theory, MemberData(nameof(Paths))]
    public async Task A_page_names_no_other_server_and_holds_no_script(string path)
    {
        foreach (string language in new[] { "en", "es" })
        {
            using Visitor visitor = empty.Shed.Visitor(language);
            Got page = await visitor.Get(path);
            Assert.DoesNotContain(Loaded().Matches(page.Text), match => !match.Groups["url"].Value.StartsWith('/') && !match.Groups["url"].Value.StartsWith('#') && !match.Groups["url"].Value.StartsWith("data:", StringComparison.Ordinal));
            Assert.DoesNotMatch("(?i)<script(?![^>]*(src=|type=\"application/json\"))|\\son[a-z]+=|javascript:|<style", page.Text);
            Assert.Single(Regex.Matches(page.Text, "<h1[ >]"));
            Assert.Single(Regex.Matches(page.Text, "<title>[^<]+ · Cloveshed</title>"));
        }
    }

    [Fact]
    public async Task No_file_names_another_server()
    {
        using Visitor visitor = empty.Shed.Visitor();
        foreach (string name in new[] { ShedAssets.Stylesheet, "Charts/shed-chart.js", "Charts/vendor/echarts.js", "Shared/clove.svg" })
        {
            string text = (await visitor.Get(ShedAssets.Path(name))).Text;
            Assert.True(text.Length > 100, name);
            Assert.DoesNotContain(Address().Matches(text), match => !Vocabularies.Any(known => match.Value.StartsWith(known, StringComparison.Ordinal)));
        }
    }

    [Fact]
    public async Task Each_place_has_its_help_in_both_languages_and_leads_to_it()
    {
        using Visitor english = empty.Shed.Visitor(), spanish = empty.Shed.Visitor("es");
        foreach (ShedPlace place in ShedPlaces.All)
        {
            Assert.Contains($"href=\"/help/{place.Manual}\"", (await english.Get(place.Path)).Text, StringComparison.Ordinal);
            Assert.NotEqual(ManualPage.Find(place.Manual, Pictures.Language.En)!.Html, ManualPage.Find(place.Manual, Pictures.Language.Es)!.Html);
            Assert.DoesNotContain("solo en inglés", (await spanish.Get("/help/" + place.Manual)).Text, StringComparison.Ordinal);
        }

        Assert.Contains("solo en ingl", (await spanish.Get("/help/report")).Text, StringComparison.Ordinal);
    }

    /// <summary>What a page loads or leads to.</summary>
    [GeneratedRegex("""(?:src|href|action|data-library)="(?<url>[^"]*)" """, RegexOptions.IgnorePatternWhitespace)]
    private static partial Regex Loaded();

    [GeneratedRegex("""https?://[^\s"'`)]+""")]
    private static partial Regex Address();
}
