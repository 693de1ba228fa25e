using System.Globalization;
using System.Net;

namespace Cloveshed.Web.Tests.Line;

/// <summary>The sizer's page on the demo: every lot has one, and a hand that drags is answered while it drags.</summary>
public sealed class DemoSizerTests(DemoShed demo) : IClassFixture<DemoShed>
{
    /// <summary>Says how long an answer took; the bound of 200 ms is the bench's, this one only that nothing is absurd.</summary>
    [Fact]
    public async Task An_answer_says_how_long_it_took()
    {
        using Visitor visitor = demo.Shed.Visitor();
        await visitor.Get("/line/sizer/26-003");
        List<double> times = [];
        for (int k = 0; k < 20; k++)
        {
            Got answer = await visitor.Get($"/line-answers/sizer/26-003?cut=23&cut=29&cut=35&cut={41 + k * 0.1:0.0}");
            Assert.Equal(HttpStatusCode.OK, answer.Status);
            times.Add(double.Parse(answer.Header("Server-Timing").Replace("shed;dur=", "", StringComparison.Ordinal), CultureInfo.InvariantCulture));
        }

        TestContext.Current.TestOutputHelper!.WriteLine($"median {times.Order().ElementAt(10):0.0} ms, longest {times.Max():0.0} ms");
        Assert.InRange(times.Order().ElementAt(10), 0, 1000);
    }

    [Fact]
    public async Task What_is_on_the_belts_this_week_is_what_the_adopted_plan_runs()
    {
        using Visitor visitor = demo.Shed.Visitor();
        Got page = await visitor.Get("/line");
        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Contains("On the belts, week of", page.Text, StringComparison.Ordinal);
        Assert.Contains("30 of 90 are shown", page.Text, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\{\d\}|NaN|Infinity|System\.|Cloveshed\.Core", page.Text);
    }
}
