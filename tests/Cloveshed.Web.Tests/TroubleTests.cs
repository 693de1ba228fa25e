using System.Net;
using System.Text.Json;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.Extensions.Logging;

namespace Cloveshed.Web.Tests;

/// <summary>When something fails: what the page says, what it does not say, and what survives.</summary>
public sealed class TroubleTests
{
    [Fact]
    public async Task A_ledger_that_cannot_be_read_is_said_with_what_to_do_and_health_tells()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor("es");
        shed.BreakLedger();
        foreach (string path in new[] { "/", "/keep", "/setup" })
        {
            Got page = await visitor.Get(path);
            Assert.Equal(HttpStatusCode.ServiceUnavailable, page.Status);
            Assert.Contains("El libro no se puede leer ahora", page.Text, StringComparison.Ordinal);
            Assert.Contains("shed.db", page.Text, StringComparison.Ordinal);
            Assert.Contains("<nav class=\"places\"", page.Text, StringComparison.Ordinal);
            Assert.DoesNotContain("Exception", page.Text, StringComparison.Ordinal);
        }

        Assert.Equal(HttpStatusCode.OK, (await visitor.Get("/health/live")).Status);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await visitor.Get("/health/ready")).Status);
        Got facts = await visitor.Get("/api/v1/facts");
        Assert.Equal((HttpStatusCode.ServiceUnavailable, "application/problem+json"), (facts.Status, facts.Answer.Content.Headers.ContentType!.MediaType));
        shed.MendLedger();
        Assert.Equal(HttpStatusCode.OK, (await visitor.Get("/")).Status);
        Assert.Equal(HttpStatusCode.OK, (await visitor.Get("/health/ready")).Status);
    }

    /// <summary>A form sent while the ledger fails is answered with the error page, not lost in a blank one, and can be sent again.</summary>
    [Fact]
    public async Task A_form_that_met_a_broken_ledger_can_be_sent_again_and_is_one_fact()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/");
        shed.BreakLedger();
        Got broken = await visitor.Send(page, "/notes", ("text", "kept at last"));
        Assert.Equal(HttpStatusCode.ServiceUnavailable, broken.Status);
        Assert.Contains("The ledger cannot be read now", broken.Text, StringComparison.Ordinal);
        shed.MendLedger();
        Assert.Equal(HttpStatusCode.SeeOther, (await visitor.Send(page, "/notes", ("text", "kept at last"))).Status);
        Assert.Single(shed.Ledger.Read());
    }

    [Fact]
    public async Task Twenty_that_send_the_same_form_at_once_make_one_fact_and_all_are_told_it_is_kept()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/");
        string[] told = await Task.WhenAll(Enumerable.Range(0, 20).Select(async _ =>
        {
            using Visitor one = shed.Visitor();
            one.Bring(visitor);
            shed.Clock.Pass(TimeSpan.FromMilliseconds(3));
            Assert.Equal(HttpStatusCode.SeeOther, (await one.Send(page, "/notes", ("text", "pressed twenty times"))).Status);
            return (await one.Get("/")).Text;
        }));
        Assert.All(told, text => Assert.Contains("The note is kept.", text, StringComparison.Ordinal));
        Assert.Single(shed.Ledger.Read());
    }

    [Fact]
    public async Task A_form_opened_before_a_restart_is_taken_after_it()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/");
        await shed.Restart();
        using Visitor after = shed.Visitor();
        after.Bring(visitor);
        Assert.Equal(HttpStatusCode.SeeOther, (await after.Send(page, "/notes", ("text", "over the restart"))).Status);
        Assert.Single(shed.Ledger.Read());
    }

    /// <summary>Keys unlock cookies and forms: only the owner reads them (POSIX permissions 0600), and the chain does not hold them.</summary>
    [Fact]
    public async Task Keys_stand_beside_the_ledger_for_its_owner_alone()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        await visitor.Get("/");
        string key = Assert.Single(Directory.GetFiles(shed.KeyFolder));
        if (!OperatingSystem.IsWindows())
        {
            Assert.Equal(UnixFileMode.UserRead | UnixFileMode.UserWrite, File.GetUnixFileMode(key));
        }

        Assert.Equal(LedgerHead.None, shed.Ledger.Head());
    }

    [Fact]
    public void The_log_is_one_JSON_object_a_line_and_leaves_out_the_frameworks_chatter()
    {
        using StringWriter written = new();
        using JsonLines lines = new(written, new StillClock(new DateTimeOffset(2026, 9, 2, 1, 2, 3, TimeSpan.Zero)), LogLevel.Information);
        using ILoggerFactory factory = LoggerFactory.Create(logging => logging.AddProvider(lines));
        KeyValuePair<string, object?>[] values = [new("Method", "GET"), new("Milliseconds", 1.5)];
        factory.CreateLogger("Cloveshed.Web").Log(LogLevel.Information, new EventId(1), values, null, static (_, _) => "GET took 1.5");
        factory.CreateLogger("Microsoft.AspNetCore.Hosting").LogInformation("GET /keep/somebody");
        factory.CreateLogger("Microsoft.AspNetCore.Server").LogError(new InvalidOperationException("two\nlines"), "It broke");
        string[] all = written.ToString().Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(2, all.Length);
        JsonElement first = JsonDocument.Parse(all[0]).RootElement, second = JsonDocument.Parse(all[1]).RootElement;
        Assert.Equal(("2026-09-02T01:02:03Z", "Information", "GET took 1.5", 1.5), (first.GetProperty("time").GetString(), first.GetProperty("level").GetString(), first.GetProperty("message").GetString(), first.GetProperty("Milliseconds").GetDouble()));
        Assert.Contains("two\nlines", second.GetProperty("exception").GetString(), StringComparison.Ordinal);
    }
}
