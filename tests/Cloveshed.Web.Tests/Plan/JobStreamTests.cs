using System.Net;
using System.Text.Json;
using Cloveshed.Ledger;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Web.Tests.Plan;

/// <summary>A job's progress as it goes over the wire (Server-sent events, WHATWG HTML, section 9.2).</summary>
public sealed class JobStreamTests
{
    [Fact]
    public async Task It_tells_what_is_done_and_ends_with_the_job()
    {
        using GatedSolver solver = new(new HighsSolver());
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import, solver: solver);
        Guid job = PlanSeason.Ask(shed.Ledger);
        await solver.Reached.WaitAsync(TestContext.Current.CancellationToken);
        using Visitor visitor = shed.Visitor("es");
        using HttpResponseMessage answer = await visitor.Client.GetAsync(
            new Uri($"/plan/jobs/{job}/progress", UriKind.Relative), HttpCompletionOption.ResponseHeadersRead, TestContext.Current.CancellationToken);
        Assert.Equal("text/event-stream", answer.Content.Headers.ContentType!.MediaType);
        using StreamReader reader = new(await answer.Content.ReadAsStreamAsync(TestContext.Current.CancellationToken));
        JsonElement first = await Next(reader);
        Assert.Equal(("leyendo la temporada", false), (first.GetProperty("stage").GetString(), first.GetProperty("ended").GetBoolean()));
        solver.Open();
        JsonElement last = first;
        for (int events = 0; events < 200 && !last.GetProperty("ended").GetBoolean(); events++)
        {
            last = await Next(reader);
        }

        Assert.True(last.GetProperty("ended").GetBoolean());
        Assert.Contains(shed.Ledger.Now().Plans, plan => plan.Asked == job);
        Assert.DoesNotContain("data:", await reader.ReadToEndAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_has_ended_says_so_at_once_and_what_never_was_is_not_there()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        using Visitor visitor = shed.Visitor();
        Assert.Contains("\"ended\":true", (await visitor.Get($"/plan/jobs/{plan.Asked}/progress")).Text, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get($"/plan/jobs/{Guid.CreateVersion7()}/progress")).Status);
    }

    /// <summary>Without script the page is asked for again by the browser itself; once the job has ended it is not.</summary>
    [Fact]
    public async Task Without_script_the_page_loads_itself_again_until_the_job_has_ended()
    {
        using GatedSolver solver = new(new HighsSolver());
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import, solver: solver);
        Guid job = PlanSeason.Ask(shed.Ledger);
        await solver.Reached.WaitAsync(TestContext.Current.CancellationToken);
        using Visitor visitor = shed.Visitor();
        Assert.Contains("<noscript><meta http-equiv=\"refresh\" content=\"4\"></noscript>", (await visitor.Get($"/plan/jobs/{job}")).Text, StringComparison.Ordinal);
        solver.Open();
        await PlanSeason.Made(shed.Ledger, job);
        Assert.DoesNotContain("http-equiv=\"refresh\"", (await visitor.Get($"/plan/jobs/{job}")).Text, StringComparison.Ordinal);
    }

    private static async Task<JsonElement> Next(StreamReader reader)
    {
        while (await reader.ReadLineAsync(TestContext.Current.CancellationToken) is { } line)
        {
            if (line.StartsWith("data: ", StringComparison.Ordinal))
            {
                using JsonDocument document = JsonDocument.Parse(line["data: ".Length..]);
                return document.RootElement.Clone();
            }
        }

        throw new InvalidOperationException("The stream ended without saying so.");
    }
}
