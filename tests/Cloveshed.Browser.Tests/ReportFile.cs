using Cloveshed.Core.Seasons;
using Cloveshed.Pictures;
using Cloveshed.Pictures.Tests;
using Microsoft.Playwright;

namespace Cloveshed.Browser.Tests;

/// <summary>A report of the hand season as a file, removed when the test is done.</summary>
internal sealed class ReportFile : IDisposable
{
    public ReportFile(Language language, MassUnit show = MassUnit.Pound)
    {
        Name = Path.Combine(Path.GetTempPath(), $"report-{Guid.NewGuid():N}.html");
        File.WriteAllText(Name, PlanReport.Render(HandSeason.Make(), HandAnswer.Make(), new ReportOptions(language, show)));
    }

    public string Name { get; }

    public async Task ShowAsync(IPage page)
    {
        await page.GotoAsync(new Uri(Name).AbsoluteUri);
        await page.EvaluateAsync("() => document.fonts.ready.then(() => true)");
    }

    /// <summary>Opens every fold, so that what is in it is checked too.</summary>
    public static Task UnfoldAsync(IPage page) => page.EvaluateAsync("() => document.querySelectorAll('details').forEach(d => d.open = true)");

    public void Dispose() => File.Delete(Name);
}
