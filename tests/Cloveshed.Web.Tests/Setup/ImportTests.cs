using System.IO.Compression;
using System.Net;
using System.Text;
using System.Text.RegularExpressions;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Tests;

namespace Cloveshed.Web.Tests.Setup;

/// <summary>A season's files come, are looked at, and are taken or not.</summary>
public sealed class ImportTests
{
    [Fact]
    public async Task A_folder_is_looked_at_and_taken_when_somebody_says_yes()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got look = await Look(visitor, new SmallSeason());
        Assert.Contains("It becomes the shed's season.", look.Read(), StringComparison.Ordinal);
        Assert.Matches(@"Lots\s*</a></th>\s*<td[^>]*>3</td>", Regex.Replace(look.Text, "<!--!-->", ""));
        Assert.Equal(0, shed.Ledger.Head().Seq);

        string take = Action(look);
        Got answer = await visitor.Fill(look, take);
        Assert.Equal((HttpStatusCode.SeeOther, "/setup"), (answer.Status, answer.Header("Location")));
        // One fact for season.json and one for each row: counted in the text of the files.
        int rows = new SmallSeason().Files.Where(file => file.Key != "season.json").Sum(file => Encoding.UTF8.GetString(file.Value.Span).TrimEnd('\n').Split('\n').Length - 1);
        Assert.Equal(rows + 1, shed.Ledger.Head().Seq);
        Assert.Contains($"The season is imported: {rows + 1} facts.", (await visitor.Get("/setup")).Read(), StringComparison.Ordinal);

        await visitor.Fill(look, take);
        Assert.Equal(rows + 1, shed.Ledger.Head().Seq);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get(take[..^5])).Status);
    }

    [Fact]
    public async Task What_would_change_is_told_row_by_row_before_it_is_taken()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        SmallSeason other = new SmallSeason().Replace("orders.csv", "M30,,2026-09-24,100", "M30,,2026-09-24,140").Append("people.csv", "2026-09-14,850\n")
            .Replace("samples.csv", "L1,2026-08-01,61,,mold\n", "").Replace("season.json", "\"weeks\": 10", "\"weeks\": 11");
        string text = (await Look(visitor, other)).Read();
        Assert.Contains("It takes the place of Quillon Flat 2026", text, StringComparison.Ordinal);
        Assert.Contains("Orders – 1 – 1", text, StringComparison.Ordinal);
        Assert.Contains("People 1 – – 1", text, StringComparison.Ordinal);
        Assert.Contains("Samples – – 1 2", text, StringComparison.Ordinal);
        Assert.Contains("Lots – – – 3", text, StringComparison.Ordinal);
        Assert.Contains("changed O1 1 units 100 → 140", text, StringComparison.Ordinal);
        Assert.Contains("new 2026-09-14", text, StringComparison.Ordinal);
        Assert.Contains("gone L1 2026-08-01 61 mold", text, StringComparison.Ordinal);
        Assert.Contains("weeks 10 → 11", text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_same_season_again_has_nothing_to_take()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        Got look = await Look(visitor, new SmallSeason());
        Assert.Contains("there is nothing to take", look.Read(), StringComparison.Ordinal);
        Assert.DoesNotContain("/take\"", look.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_fault_is_listed_once_and_nothing_is_taken()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        // 250 rows whose weight is none, and one row of another file: of the first 200 are listed, of the second its one.
        SmallSeason faulty = new SmallSeason().Append("samples.csv", string.Concat(Enumerable.Range(0, 250).Select(at => $"L1,2026-08-01,w{at},,\n"))).Replace("places.csv", "Yard,open,500", "Yard,ajar,500");
        Got look = await Look(visitor, faulty, ("photo.jpg", [1, 2, 3]));
        string text = look.Read();
        Assert.Contains("Nothing was taken", text, StringComparison.Ordinal);
        Assert.Contains("251 faults", text, StringComparison.Ordinal);
        Assert.Contains("201 here, 50 more not.", text, StringComparison.Ordinal);
        Assert.Contains("places.csv 2 kind ajar one of: open, cold, sealed Write one of these words.", text, StringComparison.Ordinal);
        Assert.Contains("samples.csv 5 weight_g w0 a number, such as 1250.5", text, StringComparison.Ordinal);
        Assert.Contains("photo.jpg: not a file of a season", text, StringComparison.Ordinal);
        Assert.DoesNotContain("/take\"", look.Text, StringComparison.Ordinal);
        Assert.Equal(200, Regex.Count(look.Text, "<th scope=\"row\">"));

        string here = Regex.Match(look.Text, "href=\"(/setup/import/[0-9a-f]+)\\?").Groups[1].Value;
        Assert.Contains("w199", (await visitor.Get(here + "?sort=file&page=2")).Text, StringComparison.Ordinal);
        Got one = await visitor.Get(here + "?file=places.csv");
        Assert.Single(Regex.Matches(one.Text, "<th scope=\"row\">"));
        string[] sorted = [.. Regex.Matches((await visitor.Get(here + "?sort=value&file=samples.csv")).Text, "<td class=\"value\">([^<]*)<").Select(match => match.Groups[1].Value)];
        Assert.Equal(sorted.Order(StringComparer.Ordinal), sorted);
        Assert.Equal(head, shed.Ledger.Head().Seq);
        using Visitor spanish = shed.Visitor("es");
        Assert.Contains("una de: open, cold, sealed", (await spanish.Get(here)).Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_zip_does_as_well_with_a_folder_in_it_or_without()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/setup/import");
        foreach (string folder in new[] { "", "quillon/", "a/b/" })
        {
            Got answer = await visitor.SendFiles(page, ("season.zip", Zip([.. new SmallSeason().Files.Select(file => (folder + file.Key, file.Value.ToArray()))])));
            Assert.Equal(HttpStatusCode.SeeOther, answer.Status);
            Assert.Contains("It becomes the shed's season.", (await visitor.Get(answer.Header("Location"))).Read(), StringComparison.Ordinal);
        }
    }

    public static TheoryData<string, string> Bad => new()
    {
        { "../season.json", "names a file outside itself" },
        { "a/../../season.json", "names a file outside itself" },
        { "/etc/season.json", "names a file outside itself" },
        { "..\\season.json", "names a file outside itself" },
        { "C:\\season.json", "names a file outside itself" },
    };

    [Theory, MemberData(nameof(Bad))]
    public async Task A_zip_that_leads_out_is_refused_whole(string name, string said)
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got answer = await visitor.SendFiles(await visitor.Get("/setup/import"), ("season.zip", Zip(("season.json", "{}"u8.ToArray()), (name, "{}"u8.ToArray()))));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Contains(said, answer.Read(), StringComparison.Ordinal);
    }

    /// <summary>300 MB of one letter are some 300 KB packed: what it unpacks to is counted, not what it says.</summary>
    [Fact]
    public async Task A_zip_that_swells_is_refused_at_the_limit()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        byte[] bomb = Zip(("season.json", "{}"u8.ToArray()), ("orders.csv", new byte[300 * 1024 * 1024]));
        Assert.InRange(bomb.Length, 1, 1024 * 1024);
        Got answer = await visitor.SendFiles(await visitor.Get("/setup/import"), ("season.zip", bomb));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Contains("larger than 200 MB, unpacked", answer.Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task More_than_the_limit_sent_is_answered_with_the_limit_not_with_a_broken_line()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got answer = await visitor.SendFiles(await visitor.Get("/setup/import"), ("season/orders.csv", new byte[202 * 1024 * 1024]));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Contains("larger than 200 MB", answer.Read(), StringComparison.Ordinal);
    }

    /// <summary>Larger than what the server takes of any other form, which is 30,000,000 bytes.</summary>
    [Fact]
    public async Task What_else_lies_in_the_folder_may_be_large()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got look = await Look(visitor, new SmallSeason(), ("film.mp4", new byte[64 * 1024 * 1024]));
        Assert.Contains("It becomes the shed's season.", look.Read(), StringComparison.Ordinal);
        Assert.Contains("film.mp4: not a file of a season", look.Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_no_zip_or_names_a_file_twice_is_refused()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/setup/import");
        Assert.Contains("not a zip file", (await visitor.SendFiles(page, ("season.zip", "no zip at all, but long enough for its end"u8.ToArray()))).Read(), StringComparison.Ordinal);
        Assert.Contains("not a zip file", (await visitor.SendFiles(page, ("season.zip", Zip(("season.json", "{}"u8.ToArray()))[..^4]))).Read(), StringComparison.Ordinal);
        Assert.Contains("in it twice", (await visitor.SendFiles(page, ("season.zip", Zip(("season.json", "{}"u8.ToArray()), ("season.json", "[]"u8.ToArray()))))).Read(), StringComparison.Ordinal);
        Assert.Contains("Nothing came", (await visitor.SendFiles(page)).Read(), StringComparison.Ordinal);
        Got many = await visitor.SendFiles(page, ("season.zip", Zip([.. Enumerable.Range(0, 2100).Select(at => ($"{at}.csv", Array.Empty<byte>()))])));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, many.Status);
    }

    [Fact]
    public async Task A_folder_of_the_machine_is_named_by_its_path()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        string folder = Directory.CreateTempSubdirectory("cloveshed-named-").FullName;
        try
        {
            new SmallSeason().WriteTo(folder);
            Got page = await visitor.Get("/setup/import"), answer = await visitor.Fill(page, "/setup/import/folder", ("path", folder));
            Assert.Contains("It becomes the shed's season.", (await visitor.Get(answer.Header("Location"))).Read(), StringComparison.Ordinal);
            Got none = await visitor.Fill(page, "/setup/import/folder", ("path", folder + "-not-there"));
            Assert.Contains("There is no such folder", none.Read(), StringComparison.Ordinal);
            Assert.Contains("There is no such folder", (await visitor.Fill(page, "/setup/import/folder", ("path", "."))).Read(), StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task The_demo_is_loaded_by_a_button_once()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/setup");
        await visitor.Fill(page, "/setup/import/demo");
        Got after = await visitor.Get("/setup");
        Assert.Contains("The season is imported: 9,527 facts.", after.Read(), StringComparison.Ordinal);
        Assert.DoesNotContain("/setup/import/demo", after.Text, StringComparison.Ordinal);
        await visitor.Fill(page, "/setup/import/demo");
        Assert.Equal(9527, shed.Ledger.Head().Seq);
    }

    private static async Task<Got> Look(Visitor visitor, SmallSeason season, params (string Name, byte[] Bytes)[] more)
    {
        Got answer = await visitor.SendFiles(await visitor.Get("/setup/import"), [.. season.Files.Select(file => ("quillon/" + file.Key, file.Value.ToArray())), .. more.Select(file => ("quillon/" + file.Name, file.Bytes)), ("quillon/old/lots.csv", "nothing"u8.ToArray())]);
        Assert.Equal(HttpStatusCode.SeeOther, answer.Status);
        return await visitor.Get(answer.Header("Location"));
    }

    private static string Action(Got look) => Regex.Match(look.Text, "action=\"(/setup/import/[0-9a-f]+/take)\"").Groups[1].Value;

    private static byte[] Zip(params (string Name, byte[] Bytes)[] files)
    {
        using MemoryStream into = new();
        using (ZipArchive zip = new(into, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach ((string name, byte[] bytes) in files)
            {
                using Stream content = zip.CreateEntry(name).Open();
                content.Write(bytes);
            }
        }

        return into.ToArray();
    }
}
