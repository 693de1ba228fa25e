using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Tests;

namespace Cloveshed.Web.Tests.Setup;

/// <summary>The ledger's page, and what can be taken away: the season's files, the plan's, a backup.</summary>
public sealed class LedgerPageTests
{
    [Fact]
    public async Task The_page_has_the_head_and_the_latest_facts_and_leads_to_older_ones()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        LedgerHead head = shed.Ledger.Head();
        Got page = await visitor.Get("/setup/ledger");
        Assert.Contains(head.Hash, page.Text, StringComparison.Ordinal);
        Assert.Equal(Enumerable.Range(0, (int)Math.Min(50, head.Seq)).Select(back => $"{head.Seq - back}"), Numbers(page));
        Got older = await visitor.Get($"/setup/ledger?before={head.Seq - 20}");
        Assert.Equal($"{head.Seq - 21}", Numbers(older)[0]);
    }

    [Fact]
    public async Task Facts_are_found_by_kind_and_by_lot_with_those_that_correct_them()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        SeasonRow sample = shed.Ledger.Now().Rows!.Find("samples.csv", 3)!;
        Assert.IsType<Appended.Accepted>(shed.Ledger.Append([SmallShed.Origin.RowDropped(sample, null, "twice")]));
        Assert.Equal(3, Numbers(await visitor.Get("/setup/ledger?kind=sample.entered")).Count);
        // L2 stands in one row of lots and one sample, and that sample was dropped by a fact that names no lot.
        Got ofLot = await visitor.Get("/setup/ledger?lot=L2");
        Assert.Equal(3, Numbers(ofLot).Count);
        Assert.Contains("Samples: dropped", ofLot.Text, StringComparison.Ordinal);
        Assert.Contains("There are no such facts.", (await visitor.Get("/setup/ledger?lot=L_")).Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_whole_ledger_is_checked_by_a_button()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        await visitor.Send(await visitor.Get("/setup/ledger"), "/setup/ledger/verify");
        Assert.Contains($"The ledger holds: {shed.Ledger.Head().Seq} facts, the last with hash {shed.Ledger.Head().Hash}.", (await visitor.Get("/setup/ledger")).Read(), StringComparison.Ordinal);

        // A byte of a body, changed behind the ledger's back.
        using (Microsoft.Data.Sqlite.SqliteConnection file = new($"Data Source={shed.File};Pooling=False"))
        {
            file.Open();
            using Microsoft.Data.Sqlite.SqliteCommand spoil = file.CreateCommand();
            spoil.CommandText = "UPDATE facts SET body = replace(body, '45.50', '54.50') WHERE body LIKE '%45.50%'";
            Assert.Equal(1, spoil.ExecuteNonQuery());
        }

        await visitor.Send(await visitor.Get("/setup/ledger"), "/setup/ledger/verify");
        string text = (await visitor.Get("/setup/ledger")).Read();
        Assert.Contains("Not done. The ledger has", text, StringComparison.Ordinal);
        Assert.Contains("restore the last backup", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_backup_comes_down_whole_and_proves_itself()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Dictionary<string, string> fields = SmallShed.Fields(await visitor.Get("/setup/ledger"), "/setup/ledger/backup");
        using FormUrlEncodedContent form = new(fields);
        using HttpResponseMessage answer = await visitor.Client.PostAsync(new Uri("/setup/ledger/backup", UriKind.Relative), form, TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
        Assert.Equal($"cloveshed-2026-09-02-{shed.Ledger.Head().Seq}.db", answer.Content.Headers.ContentDisposition!.FileName);
        string folder = Directory.CreateTempSubdirectory("cloveshed-copy-").FullName;
        try
        {
            string copy = Path.Combine(folder, "copy.db");
            await File.WriteAllBytesAsync(copy, await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken), TestContext.Current.CancellationToken);
            using ShedLedger opened = ShedLedger.OpenExisting(new LedgerAddress(copy), shed.Clock);
            Assert.Equal((shed.Ledger.Head(), true), (opened.Head(), opened.Verify().Ok));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task The_season_comes_down_as_it_was_entered_as_of_the_day_that_is_looked_at()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        await visitor.Fill(await visitor.Get("/setup/orders/1"), "/setup/orders/1/change", ("c.units", "120"), ("reason", "r"));
        Dictionary<string, string> now = await Files(visitor);
        Assert.Equal(new SmallSeason().Files.Keys.Order(), now.Keys.Order());
        Assert.All(new SmallSeason().Files, file => Assert.Equal(
            Encoding.UTF8.GetString(file.Value.Span).Replace("2026-09-24,100", "2026-09-24,120", StringComparison.Ordinal).Replace("\r", "", StringComparison.Ordinal), now[file.Key].Replace("\r", "", StringComparison.Ordinal)));
        visitor.LookAt(shed, "2026-09-01+now");
        Assert.Contains("2026-09-24,100", (await Files(visitor))["orders.csv"], StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get("/setup/export/plan.zip")).Status);
    }

    private static List<string> Numbers(Got page) => [.. Regex.Matches(page.Text, "<th scope=\"row\" class=\"n\">([^<]*)<").Select(match => match.Groups[1].Value)];

    private static async Task<Dictionary<string, string>> Files(Visitor visitor)
    {
        using ZipArchive zip = new(await visitor.Client.GetStreamAsync(new Uri("/setup/export/season.zip", UriKind.Relative), TestContext.Current.CancellationToken));
        return zip.Entries.ToDictionary(entry => entry.FullName, entry => new StreamReader(entry.Open(), Encoding.UTF8).ReadToEnd());
    }
}
