using Deque.AxeCore.Commons;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests;

/// <summary>The rules of the Web Content Accessibility Guidelines 2.2 to level AA, and those of good practice, as axe-core knows them.</summary>
internal static class Axe
{
    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    /// <summary>
    /// All rules are run. Of the elements that pass one only the first is named, since to name every one takes several times longer
    /// than all the rules; and the page is one document, so nothing is gathered from frames.
    /// </summary>
    private const string Run = """
        async () => {
            const found = await axe.run(document, {
                runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'],
                resultTypes: ['violations'],
            });
            const told = node => [node.html, ...node.any.map(check => check.message)].join(' ');
            return [String(found.passes.length), ...found.violations.map(rule => `${rule.id}: ${rule.help} at ${rule.nodes.slice(0, 4).map(told).join(' | ')}`)];
        }
        """;

    /// <summary>What breaks a rule, a line each; empty where nothing does. A page with frames, or one that no rule applies to, fails.</summary>
    public static async Task<string> Finds(IPage page)
    {
        Assert.Single(page.Frames);
        await page.EvaluateAsync(Script);
        string[] found = await page.EvaluateAsync<string[]>(Run);
        Assert.NotEqual("0", found[0]);
        return string.Join('\n', found[1..]);
    }
}
