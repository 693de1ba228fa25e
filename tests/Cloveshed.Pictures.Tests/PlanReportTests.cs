using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Pictures.Tests;

public class PlanReportTests
{
    [Theory]
    [InlineData(Language.En)]
    [InlineData(Language.Es)]
    public void Renders_one_page_without_anything_to_fetch(Language language)
    {
        string page = PlanReport.Render(HandSeason.Make(), HandAnswer.Make(), new ReportOptions(language, MassUnit.Pound));
        Assert.StartsWith("<!DOCTYPE html>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("http:", page.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("https:", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.OrdinalIgnoreCase);
        if (Environment.GetEnvironmentVariable("REPORT_OUT") is { } folder)
        {
            File.WriteAllText(Path.Combine(folder, $"hand-{language}.html"), page);
        }
    }
}
