using System.Net;
using System.Text.RegularExpressions;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Tests;

/// <summary>What goes over the wire: headers, files, what is not there, who may ask.</summary>
public sealed partial class ServingTests(ShedWithoutSeason empty) : IClassFixture<ShedWithoutSeason>
{
    /// <summary>Bytes of a first visit, as issue 3 bounds it.</summary>
    private const int MostOnTheWire = 250_000;

    [Fact]
    public async Task Every_answer_carries_the_security_headers()
    {
        using Visitor visitor = empty.Shed.Visitor();
        foreach (string path in new[] { "/", "/nowhere", "/help/keeping", ShedAssets.Path(ShedAssets.Stylesheet), "/health/live", "/api/v1/facts", "/api/nowhere" })
        {
            Got answer = await visitor.Get(path);
            Assert.Equal(Headers.ContentPolicy, answer.Header("Content-Security-Policy"));
            Assert.Equal("nosniff", answer.Header("X-Content-Type-Options"));
            Assert.Equal("same-origin", answer.Header("Referrer-Policy"));
            Assert.Equal("same-origin", answer.Header("Cross-Origin-Opener-Policy"));
            Assert.Equal("", answer.Header("Server"));
        }
    }

    /// <summary>W3C Content Security Policy Level 3: without 'unsafe-inline' and 'unsafe-eval' no script in a page runs.</summary>
    [Fact]
    public void The_content_policy_lets_no_script_stand_in_a_page()
    {
        var policy = Headers.ContentPolicy.Split(';', StringSplitOptions.TrimEntries).ToDictionary(part => part.Split(' ')[0], part => part.Split(' ')[1..]);
        Assert.Equal(["'none'"], policy["default-src"]);
        Assert.Equal(["'self'"], policy["script-src"]);
        Assert.Equal(["'self'"], policy["style-src"]);
        Assert.Equal(["'none'"], policy["frame-ancestors"]);
        Assert.Equal(["'none'"], policy["base-uri"]);
    }

    [Fact]
    public async Task A_first_visit_is_small_and_a_second_fetches_only_the_page()
    {
        using Visitor visitor = empty.Shed.Visitor(packed: true);
        HttpResponseMessage page = await visitor.Client.GetAsync(new Uri("/", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(["br"], page.Content.Headers.ContentEncoding);
        Assert.Contains("no-store", page.Headers.CacheControl!.ToString(), StringComparison.Ordinal);
        using Visitor reading = empty.Shed.Visitor();
        string text = (await reading.Get("/")).Text;
        long bytes = (await page.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).Length;
        string[] files = [.. AssetPaths().Matches(text + await Sheet(reading)).Select(match => match.Value).Distinct()];
        Assert.Contains(files, file => file.EndsWith(".woff2", StringComparison.Ordinal));
        foreach (string file in files)
        {
            HttpResponseMessage answer = await visitor.Client.GetAsync(new Uri(file, UriKind.Relative), TestContext.Current.CancellationToken);
            Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
            Assert.Equal("public, max-age=31536000, immutable", answer.Headers.GetValues("Cache-Control").Single().Replace("max-age=31536000, public", "public, max-age=31536000", StringComparison.Ordinal));
            bytes += (await answer.Content.ReadAsByteArrayAsync(TestContext.Current.CancellationToken)).Length;
        }

        TestContext.Current.TestOutputHelper!.WriteLine($"First page: {bytes} bytes in {files.Length + 1} answers.");
        Assert.InRange(bytes, 1, MostOnTheWire);
    }

    [Theory]
    [InlineData("br")]
    [InlineData("gzip")]
    [InlineData("")]
    public async Task A_file_is_the_same_however_it_is_packed(string encoding)
    {
        using HttpClientHandler handler = new() { AutomaticDecompression = DecompressionMethods.All };
        using HttpClient client = new(handler) { BaseAddress = empty.Shed.Root };
        HttpRequestMessage asked = new(HttpMethod.Get, ShedAssets.Path("Charts/shed-chart.js"));
        asked.Headers.AcceptEncoding.ParseAdd(encoding);
        using Visitor plain = empty.Shed.Visitor();
        string text = await (await client.SendAsync(asked, TestContext.Current.CancellationToken)).Content.ReadAsStringAsync(TestContext.Current.CancellationToken);
        Assert.Contains("customElements.define(\"shed-chart\"", text, StringComparison.Ordinal);
        Assert.Equal((await plain.Get(ShedAssets.Path("Charts/shed-chart.js"))).Text, text);
    }

    [Fact]
    public async Task A_file_under_another_digest_is_not_there()
    {
        using Visitor visitor = empty.Shed.Visitor();
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get("/assets/shed.000000000000.css")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get("/assets/../Shared/words.en.txt")).Status);
    }

    [Theory]
    [InlineData("/nowhere")]
    [InlineData("/help/nothing")]
    public async Task What_is_not_there_is_said_with_a_way_out(string path)
    {
        using Visitor visitor = empty.Shed.Visitor();
        Got answer = await visitor.Get(path);
        Assert.Equal(HttpStatusCode.NotFound, answer.Status);
        Assert.Contains("<a class=\"brand\" href=\"/\"", answer.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Health_answers()
    {
        using Visitor visitor = empty.Shed.Visitor();
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), ((await visitor.Get("/health/live")).Status, (await visitor.Get("/health/ready")).Status));
    }

    /// <summary>A name elsewhere that is pointed at this machine (DNS rebinding) must not open the shed.</summary>
    [Fact]
    public async Task Another_hosts_name_gets_no_answer()
    {
        using HttpClient client = new() { BaseAddress = empty.Shed.Root };
        HttpRequestMessage asked = new(HttpMethod.Get, "/");
        asked.Headers.Host = "shed.example";
        Assert.Equal(HttpStatusCode.BadRequest, (await client.SendAsync(asked, TestContext.Current.CancellationToken)).StatusCode);
    }

    [Fact]
    public async Task The_log_names_routes_and_not_what_was_asked()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        await visitor.Get("/help/quite-personal?name=ada");
        string[] own = [.. shed.Log.Lines.Where(line => line.Contains("Cloveshed.Web", StringComparison.Ordinal))];
        Assert.Contains(own, line => line.Contains("GET /help/{Name} 404 in ", StringComparison.Ordinal));
        Assert.DoesNotContain(own, line => line.Contains("personal", StringComparison.Ordinal) || line.Contains("ada", StringComparison.Ordinal));
    }

    private static async Task<string> Sheet(Visitor visitor) => (await visitor.Get(ShedAssets.Path(ShedAssets.Stylesheet))).Text;

    [GeneratedRegex("""/assets/[^"')\s]+""")]
    private static partial Regex AssetPaths();
}
