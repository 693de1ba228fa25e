using System.Globalization;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures;
using Cloveshed.Pictures.Tests;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests;

public class ReportTests(Chromium chromium)
{
    [Theory]
    [InlineData(Language.En, false)]
    [InlineData(Language.Es, true)]
    public async Task It_opens_without_an_error_and_asks_for_nothing(Language language, bool dark)
    {
        using var file = new ReportFile(language);
        IPage page = await chromium.OpenAsync(1440, dark);
        var errors = new List<string>();
        var requests = new List<string>();
        page.Console += (_, message) => errors.Add(message.Text);
        page.PageError += (_, error) => errors.Add(error);
        page.Request += (_, request) => requests.Add(request.Url);
        await file.ShowAsync(page);
        Assert.Empty(errors);
        Assert.Equal([new Uri(file.Name).AbsoluteUri], requests.Where(r => !r.StartsWith("data:", StringComparison.Ordinal)));
        // Both faces are there, from the page itself.
        Assert.Equal(["Atkinson Hyperlegible Next", "Bitter"], await page.EvaluateAsync<string[]>(
            "() => [...document.fonts].filter(f => f.status === 'loaded').map(f => f.family.replaceAll('\"', '')).sort()"));
    }

    [Theory]
    [InlineData(Language.En, false, 1440)]
    [InlineData(Language.En, true, 1440)]
    [InlineData(Language.Es, false, 390)]
    [InlineData(Language.Es, true, 390)]
    public async Task Axe_finds_nothing(Language language, bool dark, int width)
    {
        using var file = new ReportFile(language);
        IPage page = await chromium.OpenAsync(width, dark, bypassPolicy: true);
        await file.ShowAsync(page);
        await ReportFile.UnfoldAsync(page);
        Assert.Equal("", await Axe.Finds(page));
    }

    [Theory]
    [InlineData(390)]
    [InlineData(820)]
    [InlineData(1440)]
    public async Task Pictures_and_tables_scroll_inside_themselves_and_the_page_does_not(int width)
    {
        foreach (Language language in Enum.GetValues<Language>())
        {
            using var file = new ReportFile(language);
            IPage page = await chromium.OpenAsync(width);
            await file.ShowAsync(page);
            await ReportFile.UnfoldAsync(page);
            int[] widths = await page.EvaluateAsync<int[]>("() => [document.documentElement.scrollWidth, window.innerWidth]");
            Assert.True(widths[0] <= widths[1], $"{language} at {width}: the page is {widths[0]} wide");
            if (width == 390)
            {
                Assert.True(await page.EvaluateAsync<bool>("() => { const b = document.querySelector('.picture-box'); return b.scrollWidth > b.clientWidth }"));
            }
        }
    }

    /// <summary>Names of rows stay in view while a phone scrolls along the weeks.</summary>
    [Fact]
    public async Task Names_stay_while_weeks_scroll()
    {
        using var file = new ReportFile(Language.En);
        IPage page = await chromium.OpenAsync(390);
        await file.ShowAsync(page);
        double[] lefts = await page.EvaluateAsync<double[]>(
            "() => { const b = document.querySelector('#board .picture-box'); b.scrollLeft = 500; return ['.picture-names', '.picture-plot'].map(c => b.querySelector(c).getBoundingClientRect().left) }");
        Assert.True(lefts[0] >= 0 && lefts[1] < -300, $"names at {lefts[0]}, weeks at {lefts[1]}");
    }

    /// <summary>And none of them is cut off at the left, where a phone has less room for them.</summary>
    [Theory]
    [InlineData(Language.En)]
    [InlineData(Language.Es)]
    public async Task Names_are_whole_on_a_phone(Language language)
    {
        using var file = new ReportFile(language);
        IPage page = await chromium.OpenAsync(390);
        await file.ShowAsync(page);
        string[] cut = await page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('.picture-names text')].filter(t => t.checkVisibility() && t.getBoundingClientRect().left < t.closest('.picture-names').getBoundingClientRect().left - .5).map(t => t.textContent)");
        Assert.Empty(cut);
    }

    [Fact]
    public async Task Heads_of_numbers_stand_over_their_numbers()
    {
        using var file = new ReportFile(Language.En);
        IPage page = await chromium.OpenAsync(1440);
        await file.ShowAsync(page);
        await ReportFile.UnfoldAsync(page);
        string[] off = await page.EvaluateAsync<string[]>(
            """
            () => {
                const edge = c => { const r = document.createRange(); r.selectNodeContents(c); return r.getBoundingClientRect().right; };
                return [...document.querySelectorAll('table')].filter(t => t.tBodies[0].rows.length).flatMap(t => [...t.tHead.rows[0].cells].filter(h => h.classList.contains('n')
                    && Math.abs(edge(h) - edge(t.tBodies[0].rows[0].cells[h.cellIndex])) > 1).map(h => `${t.caption.textContent}: ${h.textContent}`));
            }
            """);
        Assert.Empty(off);
    }

    [Fact]
    public async Task Tables_say_what_the_answer_says()
    {
        Season season = HandSeason.Make();
        PlanAnswer answer = HandAnswer.Make();
        using var file = new ReportFile(Language.En);
        IPage page = await chromium.OpenAsync(1440);
        await file.ShowAsync(page);
        async Task<double[]> Numbers(string table, string part, int column) => await page.EvaluateAsync<double[]>(
            $"() => [...document.querySelectorAll('[data-table=\"{table}\"] {part} tr')].map(r => Number(r.children[{column}].textContent.replace(/[^0-9.−-]/g, '').replace('−', '-')))");

        Assert.Equal([Math.Round(answer.Summary.Revenue, MidpointRounding.AwayFromZero)], await Numbers("revenue", "tfoot", 1));
        Assert.Equal([Math.Round(answer.Summary.Costs.Values.Sum(), MidpointRounding.AwayFromZero)], await Numbers("costs", "tfoot", 1));
        Assert.Equal(answer.Shorts.Select(s => (double)s.Units).Order(), (await Numbers("shorts", "tbody", 6)).Order());
        Assert.Equal(
            answer.Runs.Where(r => r.Week < 2).Select(r => Math.Round(r.MassIn, MidpointRounding.AwayFromZero)).Order(), (await Numbers("first", "tbody", 5)).Order());
        double[] flow = await Numbers("flow-2", "tbody", 1);
        Assert.Equal(season.Lots.Sum(l => l.Net), flow.Sum());
        Assert.Equal(answer.Runs.Where(r => !r.FromSorted).Sum(r => Math.Round(r.MassIn, MidpointRounding.AwayFromZero)), (await Numbers("board-2", "tbody", 4)).Sum()
            - answer.AsIs.Where(a => !a.Discarded).Sum(a => Math.Round(a.Mass, MidpointRounding.AwayFromZero)), 1.0);
        string value = await page.InnerTextAsync("[data-figure=value]");
        Assert.Equal(answer.Summary.Value.ToString("$#,##0", CultureInfo.InvariantCulture), value);
    }

    [Fact]
    public async Task Figures_have_one_width()
    {
        using var file = new ReportFile(Language.En);
        IPage page = await chromium.OpenAsync(1440);
        await file.ShowAsync(page);
        double[] widths = await page.EvaluateAsync<double[]>(
            "() => ['1111111111', '0000000000', '8888888888'].map(t => { const s = document.createElement('span'); s.textContent = t; document.body.append(s); const w = s.getBoundingClientRect().width; s.remove(); return w })");
        Assert.All(widths, w => Assert.Equal(widths[0], w, 0.5));
    }

    /// <summary>The keyboard reaches what a hand can: the link past the head, every fold, and every box that scrolls.</summary>
    [Fact]
    public async Task The_keyboard_reaches_every_fold_and_every_box()
    {
        using var file = new ReportFile(Language.En);
        IPage page = await chromium.OpenAsync(820);
        await file.ShowAsync(page);
        await page.Keyboard.PressAsync("Tab");
        Assert.Equal("skip", await page.EvaluateAsync<string>("() => document.activeElement.className"));
        int expected = await page.EvaluateAsync<int>("() => [...document.querySelectorAll('a, summary, [tabindex]')].filter(e => e.checkVisibility()).length");
        for (int i = 1; i < expected; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            await page.EvaluateAsync("() => { window.reached = (window.reached ?? new Set([document.querySelector('.skip')])).add(document.activeElement) }");
        }
        Assert.Equal(expected, await page.EvaluateAsync<int>("() => window.reached.size"));
    }
}
