using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using Cloveshed.Pictures;
using Cloveshed.SeasonFiles;
using Cloveshed.Web.Setup;

namespace Cloveshed.Web.Tests.Setup;

/// <summary>The lists of the demo season, held against its files, which are read here line by line.</summary>
public sealed class ListTests(DemoShed demo) : IClassFixture<DemoShed>
{
    public static TheoryData<string> Files => [.. SeasonTable.All.Where(table => table.Contract == 1).Select(table => table.File)];

    [Fact]
    public async Task Every_list_has_its_rows_its_last_change_and_its_need()
    {
        using Visitor visitor = demo.Shed.Visitor();
        Got page = await visitor.Get("/setup");
        foreach (SeasonTable table in SeasonTable.All)
        {
            if (table.Contract > 1)
            {
                // The demo season is of contract 1: the list is there, and empty.
                Assert.Matches($"<a href=\"/setup/{table.File[..^4]}\">[^<]*</a></th>\\s*<td[^>]*>0</td>", page.Text);
                continue;
            }

            Match row = Regex.Match(page.Text, $"<a href=\"/setup/{table.File[..^4]}\">[^<]*</a></th>\\s*<td[^>]*>([^<]*)</td>\\s*<td[^>]*>([^<]*)</td>\\s*<td[^>]*>([^<]+)</td>");
            Assert.True(row.Success, table.File);
            Assert.Equal(Rows(table.File).Count, int.Parse(row.Groups[1].Value, NumberStyles.AllowThousands, CultureInfo.InvariantCulture));
            Assert.Contains("2026, imported", row.Groups[2].Value, StringComparison.Ordinal);
        }
    }

    [Theory, MemberData(nameof(Files))]
    public async Task A_list_shows_its_rows_as_they_were_entered(string file)
    {
        using Visitor visitor = demo.Shed.Visitor();
        Got page = await visitor.Get("/setup/" + file[..^4]);
        IReadOnlyList<string> rows = Rows(file);
        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.Equal(rows.Take(RowsAsked.PageRows), Shown(page));
        Assert.All(ColumnGuides.Of(file, 1), guide => Assert.Contains(ColumnTexts.Of(Language.En)[guide].Name, WebUtility.HtmlDecode(page.Text), StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_last_page_has_the_last_rows()
    {
        using Visitor visitor = demo.Shed.Visitor();
        IReadOnlyList<string> rows = Rows("orders.csv");
        int pages = (rows.Count + 199) / 200;
        Got page = await visitor.Get($"/setup/orders?page={pages}");
        Assert.Equal(rows.Count - (200 * (pages - 1)), Regex.Count(page.Text, "<tr id=\"r"));
        Assert.Contains($"id=\"r{rows.Count}\"", page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("rel=\"next\"", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Words_find_rows_in_any_column_and_a_column_is_found_whole()
    {
        using Visitor visitor = demo.Shed.Visitor();
        int both = Rows("orders.csv").Count(row => row.Contains("jumbo", StringComparison.OrdinalIgnoreCase) && row.Contains("grocers", StringComparison.OrdinalIgnoreCase));
        Assert.InRange(both, 1, 1000);
        Assert.Contains($"{both.ToString("N0", CultureInfo.InvariantCulture)} of ", (await visitor.Get("/setup/orders?find=JUMBO%20grocers")).Read(), StringComparison.Ordinal);
        int whole = Rows("orders.csv").Count(row => row.Split(',')[3] == "Jumbo 30");
        Assert.Contains($"{whole.ToString("N0", CultureInfo.InvariantCulture)} of ", (await visitor.Get("/setup/orders?find=Jumbo%2030&in=product")).Read(), StringComparison.Ordinal);
        Assert.Contains("No row has that.", (await visitor.Get("/setup/orders?find=zzzz")).Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("net", false)]
    [InlineData("net", true)]
    [InlineData("harvested", true)]
    [InlineData("variety", false)]
    public async Task A_column_sorts_by_what_it_holds(string column, bool down)
    {
        using Visitor visitor = demo.Shed.Visitor();
        int at = File.ReadLines(Path.Combine(DemoShed.Folder, "lots.csv")).First().Split(',').ToList().IndexOf(column);
        Got page = await visitor.Get($"/setup/lots?sort={column}{(down ? "&down=1" : "")}");
        int[] shown = [.. Regex.Matches(page.Text, "<tr id=\"r(\\d+)\"").Select(match => int.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture))];
        string[] cells = [.. shown.Select(row => Rows("lots.csv")[row - 1].Split(',')[at])];
        string[] sorted = column == "net" ? [.. cells.OrderBy(cell => double.Parse(cell, CultureInfo.InvariantCulture))] : [.. cells.Order(StringComparer.OrdinalIgnoreCase)];
        Assert.Equal(down ? [.. sorted.Reverse()] : sorted, cells);
        Assert.Contains($"aria-sort=\"{(down ? "descending" : "ascending")}\"", page.Text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/setup/nothing")]
    [InlineData("/setup/lots/99999")]
    [InlineData("/setup/lots/0")]
    [InlineData("/setup/nothing/new")]
    [InlineData("/setup/import/0123")]
    public async Task What_is_not_there_is_said_to_be_not_there(string path)
    {
        using Visitor visitor = demo.Shed.Visitor();
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get(path)).Status);
    }

    [Theory]
    [InlineData("/setup")]
    [InlineData("/setup/lots")]
    [InlineData("/setup/lots/3")]
    [InlineData("/setup/orders/new")]
    [InlineData("/setup/season")]
    [InlineData("/setup/import")]
    [InlineData("/setup/ledger")]
    public async Task A_page_is_small_on_the_wire_and_speaks_both_languages(string path)
    {
        using Visitor packed = demo.Shed.Visitor(packed: true), spanish = demo.Shed.Visitor("es");
        byte[] bytes = await packed.Client.GetByteArrayAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.InRange(bytes.Length, 1, 60_000);
        Got page = await spanish.Get(path);
        Assert.Equal(HttpStatusCode.OK, page.Status);
        Assert.DoesNotMatch(@"\{\d\}|NaN|System\.", page.Text);
        Assert.Contains("Ajustes", page.Text, StringComparison.Ordinal);
    }

    /// <summary>Cells of the demo hold no quotes, so that a line is split at its commas.</summary>
    private static IReadOnlyList<string> Rows(string file) => [.. File.ReadLines(Path.Combine(DemoShed.Folder, file)).Skip(1)];

    /// <summary>The cells of the table's rows, without the first, which leads to the row.</summary>
    private static IEnumerable<string> Shown(Got page) => Regex.Matches(page.Text, "<tr id=\"r\\d+\">(.*?)</tr>")
        .Select(row => string.Join(',', Regex.Matches(row.Groups[1].Value, "<t[dh][^>]*>(.*?)</t[dh]>").Skip(1).Select(cell => WebUtility.HtmlDecode(cell.Groups[1].Value))));
}
