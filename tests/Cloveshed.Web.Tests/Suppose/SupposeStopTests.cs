using System.Net;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Web.Promises;
using Cloveshed.Web.Shared;
using Cloveshed.Web.Suppose;
using Cloveshed.Web.Tests.Plan;
using Cloveshed.Web.Tests.Promises;
using Cloveshed.Web.Tests.Setup;

namespace Cloveshed.Web.Tests.Suppose;

/// <summary>
/// An answer that a hand stops and asks for again, over the plan of <see cref="PlanSeason"/>. The answers are held up, for here they take less time than a hand.
/// </summary>
public sealed class SupposeStopTests : IAsyncLifetime
{
    /// <summary>20 cartons fewer of 70, as the form sends it: 50 x 20 - 50 / 30 x 10.</summary>
    private const string Fewer = "?kind=order&order=last&what=units&units=20", FewerThen = "data-figure=\"then\">$983<";

    /// <summary>Lot B weighs a half, so that 45 cartons of 70 are made in an hour and a half: 45 x 20 - 25 x 2 - 15.</summary>
    private const string Lighter = "?kind=lot&lot=B&what=lighter&much=50", LighterThen = "data-figure=\"then\">$835<";

    private const string Stopped = "The answer was stopped. The plan stays ready to be asked.";

    private ServedShed shed = null!;
    private Visitor visitor = null!;
    private HeldAnswers held = null!;
    private string page = "";

    public async ValueTask InitializeAsync()
    {
        shed = await ServedShed.Open(PlanSeason.Import);
        page = SupposeDoors.Page((await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger))).Fact);
        visitor = shed.Visitor();
        await Ended("");
        held = new HeldAnswers(shed.Part<PromiseRoom>());
    }

    public async ValueTask DisposeAsync()
    {
        held.Dispose();
        visitor.Dispose();
        await shed.DisposeAsync();
    }

    [Fact]
    public async Task An_answer_that_is_stopped_says_so_and_stays_so_until_it_is_asked_again_and_another_is_not_touched()
    {
        Got waits = await visitor.Get(page + Fewer);
        Assert.Contains("data-progress", (await visitor.Get(page + Lighter)).Text, StringComparison.Ordinal);
        Got told = await Press(waits, "/stop" + Fewer, Fewer);
        Assert.Contains("The answer is stopped as soon as it can be.", told.Read(), StringComparison.Ordinal);
        held.Release();

        await Ended(Fewer);
        for (int look = 0; look < 2; look++)
        {
            Got stopped = await visitor.Get(page + Fewer);
            Assert.Contains(Stopped, stopped.Read(), StringComparison.Ordinal);
            Assert.DoesNotContain("data-figure=\"then\"", stopped.Text, StringComparison.Ordinal);
            Assert.DoesNotContain("data-progress", stopped.Text, StringComparison.Ordinal);
        }

        await Ended(Lighter);
        Assert.Contains(LighterThen, (await visitor.Get(page + Lighter)).Text, StringComparison.Ordinal);
        Assert.Contains(Stopped, (await visitor.Get(page + Fewer)).Read(), StringComparison.Ordinal);

        Got begun = await Press(await visitor.Get(page + Fewer), "/again" + Fewer, Fewer);
        Assert.Contains("It is begun anew.", begun.Read(), StringComparison.Ordinal);
        await Ended(Fewer);
        Assert.Contains(FewerThen, (await visitor.Get(page + Fewer)).Text, StringComparison.Ordinal);
        Assert.Contains(LighterThen, (await visitor.Get(page + Lighter)).Text, StringComparison.Ordinal);
    }

    /// <summary>The same change as the form sends it and as an address has it is one question; what is answered is not taken back.</summary>
    [Fact]
    public async Task An_answer_is_stopped_by_whichever_address_asks_it_and_once_it_is_there_it_stays()
    {
        string kept = SupposeForm.Path(page, [new SeasonChange.OrderResized(new("last"), "1", 20)])[page.Length..];
        Got waits = await visitor.Get(page + kept);
        await visitor.Get(page + Lighter);
        await Press(waits, "/stop" + kept, kept);
        Got late = await visitor.Get(page + Lighter);
        held.Release();
        await Ended(Lighter);
        Assert.Contains(Stopped, (await visitor.Get(page + Fewer)).Read(), StringComparison.Ordinal);

        await Press(late, "/stop" + Lighter, Lighter);
        Assert.Contains(LighterThen, (await visitor.Get(page + Lighter)).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Without_its_token_or_at_another_plan_nothing_is_stopped()
    {
        Got waits = await visitor.Get(page + Fewer);
        HttpStatusCode[] refused = [
            (await visitor.Post(page + "/stop" + Fewer, (FactDesk.BackField, page + Fewer))).Status, (await visitor.Post(page + "/again" + Fewer, (FactDesk.BackField, page + Fewer))).Status];
        Assert.All(refused, status => Assert.Equal(HttpStatusCode.BadRequest, status));
        Got elsewhere = await visitor.Post(SupposeDoors.Page(Guid.NewGuid()) + "/stop" + Fewer, [.. Fields(waits, "/stop" + Fewer)]);
        Assert.Equal(HttpStatusCode.SeeOther, elsewhere.Status);
        held.Release();

        await Ended(Fewer);
        Assert.Contains(FewerThen, (await visitor.Get(page + Fewer)).Text, StringComparison.Ordinal);
    }

    /// <summary>Presses the button of a form of the page, which leads back to it.</summary>
    private async Task<Got> Press(Got from, string action, string query)
    {
        Got sent = await visitor.Post(page + action, [.. Fields(from, action)]);
        Assert.Equal((HttpStatusCode.SeeOther, page + query), (sent.Status, sent.Header("Location")));
        return await visitor.Get(page + query);
    }

    private IEnumerable<(string Name, string Value)> Fields(Got from, string action) => SmallShed.Fields(from, WebUtility.HtmlEncode(page + action)).Select(field => (field.Key, field.Value));

    /// <summary>Looks, as the page's script does, until there is nothing to wait for.</summary>
    private async Task Ended(string query)
    {
        using CancellationTokenSource late = new(TimeSpan.FromMinutes(2));
        while (!(await visitor.Get(page + "/progress" + query)).Text.Contains("\"ended\":true", StringComparison.Ordinal))
        {
            await Task.Delay(50, late.Token);
        }
    }
}
