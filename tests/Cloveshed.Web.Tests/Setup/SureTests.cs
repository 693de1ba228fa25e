using System.Globalization;
using System.Text.RegularExpressions;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Lots.Trials;

namespace Cloveshed.Web.Tests.Setup;

/// <summary>The page that puts the bands of the size curves to the test.</summary>
public sealed partial class SureTests
{
    [Fact]
    public async Task The_page_shows_the_trials_of_the_open_season_and_the_lots_that_are_least_sure()
    {
        await using ServedShed shed = await ServedShed.OpenDemo();
        using Visitor visitor = shed.Visitor();
        Got first = await visitor.Get("/setup/how-sure");
        // The page answers before the trials are made, and says so; its lots stand on it already.
        Assert.Contains("data-progress=\"/setup/how-sure/progress\"", first.Text, StringComparison.Ordinal);
        Assert.Contains("<noscript><meta http-equiv=\"refresh\"", first.Text, StringComparison.Ordinal);
        Assert.Contains("Sample these next", first.Text, StringComparison.Ordinal);
        Got page = await Tried(visitor);
        BandScore half = HeldOutBulbs.HalfOfEachLot(shed.Ledger.Now().Season!)!;
        string[] rows = [.. Rows().Matches(page.Text).Select(row => Tags().Replace(row.Value, "|"))];
        string numbers = string.Create(CultureInfo.InvariantCulture, $"|{half.Lots}||{100 * half.RawOff:0.0}%||{100 * half.CountsOff:0.0}%||{100 * half.PooledOff:0.0}%||{100 * half.Held:0}%|");
        Assert.Contains(rows, row => row.Contains("Every second bulb of each lot hidden", StringComparison.Ordinal) && row.Contains(numbers, StringComparison.Ordinal));
        Assert.Equal(3, rows.Count(row => row.Contains("bulbs a lot", StringComparison.Ordinal)));
        LotKnowledge least = LotKnowing.Know(shed.Ledger.Now().Season!).Lots.Values.MaxBy(lot => lot.MeanBand.High / lot.MeanBand.Low)!;
        Assert.Contains($"href=\"/keep/{least.Lot}#sizes\"", page.Text, StringComparison.Ordinal);
        Assert.Contains("href=\"/setup/how-sure\"", (await visitor.Get("/setup")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_season_of_few_bulbs_says_that_none_can_be_hidden_and_still_tries_made_up_lots()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        string text = (await Tried(visitor)).Read();
        Assert.Contains("Too few lots have 30 measured bulbs to hide any.", text, StringComparison.Ordinal);
        Assert.Contains("120 bulbs a lot", text, StringComparison.Ordinal);
        Assert.Contains("200 bulbs beside a lot's own, by default", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Trials_that_are_stopped_say_so_and_can_be_made_after_all()
    {
        await using ServedShed shed = await ServedShed.OpenDemo();
        using Visitor visitor = shed.Visitor();
        Got first = await visitor.Get("/setup/how-sure");
        await visitor.Send(first, "/setup/how-sure/stop");
        Got stopped = await visitor.Get("/setup/how-sure");
        Assert.Contains("The trials were stopped.", stopped.Read(), StringComparison.Ordinal);
        Assert.DoesNotContain("data-progress", stopped.Text, StringComparison.Ordinal);
        await visitor.Send(stopped, "/setup/how-sure/again");
        Assert.Contains("120 bulbs a lot", (await Tried(visitor)).Read(), StringComparison.Ordinal);
    }

    /// <summary>The page once the trials are made, as its script waits for it.</summary>
    private static async Task<Got> Tried(Visitor visitor)
    {
        _ = await visitor.Get("/setup/how-sure");
        using CancellationTokenSource late = new(TimeSpan.FromMinutes(3));
        while (!(await visitor.Get("/setup/how-sure/progress")).Text.Contains("\"ended\":true", StringComparison.Ordinal))
        {
            await Task.Delay(50, late.Token);
        }

        return await visitor.Get("/setup/how-sure");
    }

    [GeneratedRegex("<tr>.*?</tr>", RegexOptions.Singleline)]
    private static partial Regex Rows();

    [GeneratedRegex("<[^>]*>")]
    private static partial Regex Tags();
}
