using System.Net;
using System.Net.Http.Headers;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Cloveshed.Ledger;
using Cloveshed.Web.Api;

namespace Cloveshed.Web.Tests;

/// <summary>Facts over HTTP: durable before the answer, blind to repetition, refused one by one.</summary>
public sealed class FactsApiTests : IAsyncLifetime
{
    private ServedShed? served;

    private ServedShed Shed => served!;

    public async ValueTask InitializeAsync() => served = await ServedShed.Open();

    public ValueTask DisposeAsync() => Shed.DisposeAsync();

    [Fact]
    public async Task Facts_are_taken_answered_in_their_order_and_read_back()
    {
        JsonObject one = Note("one"), two = Note("two");
        (HttpStatusCode status, JsonNode answer) = await Post(new JsonArray(one.DeepClone(), two.DeepClone()));
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Equal([(Id(one), 1), (Id(two), 2)], answer.AsArray().Select(each => (each!["id"]!.GetValue<string>(), each["seq"]!.GetValue<int>())));
        JsonArray read = (await Get("/api/v1/facts?after=1")).AsArray();
        JsonNode fact = Assert.Single(read)!;
        Assert.Equal(("note", "two", "dock", "scale-1"), (fact["kind"]!.GetValue<string>(), fact["body"]!["text"]!.GetValue<string>(), fact["place"]!.GetValue<string>(), fact["device"]!.GetValue<string>()));
        Assert.Equal(DateTimeOffset.Parse(two["happened_at"]!.GetValue<string>(), System.Globalization.CultureInfo.InvariantCulture), fact["happened_at"]!.GetValue<DateTimeOffset>());
        Assert.Equal(Shed.Ledger.Head().Hash, fact["hash"]!.GetValue<string>());
    }

    [Fact]
    public async Task The_same_again_gets_the_same_answer_and_other_content_under_its_id_is_refused()
    {
        JsonObject note = Note("one");
        (_, JsonNode first) = await Post(new JsonArray(note.DeepClone()));
        (HttpStatusCode status, JsonNode again) = await Post(new JsonArray(note.DeepClone()));
        Assert.Equal((HttpStatusCode.OK, first.ToJsonString()), (status, again.ToJsonString()));
        note["body"]!["text"] = "other";
        (HttpStatusCode refused, JsonNode why) = await Post(new JsonArray(note.DeepClone()));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, refused);
        JsonNode refusal = Assert.Single(why.AsArray())!;
        Assert.Equal(Id(note), refusal["id"]!.GetValue<string>());
        Assert.All(new[] { "rule", "message", "remedy" }, key => Assert.NotEmpty(refusal[key]!.GetValue<string>()));
        Assert.Null(refusal["seq"]);
        Assert.Single(Shed.Ledger.Read());
    }

    [Fact]
    public async Task One_that_is_refused_keeps_no_other_from_being_taken()
    {
        JsonObject bad = Note("x");
        bad["kind"] = "rumour";
        (HttpStatusCode status, JsonNode answer) = await Post(new JsonArray(Note("one"), bad, Note("two")));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, status);
        Assert.Equal([1, null, 2], answer.AsArray().Select(each => each!["seq"]?.GetValue<int>()));
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("[]")]
    [InlineData("[null]")]
    [InlineData("not json")]
    [InlineData("[{\"id\":\"x\"}]")]
    [InlineData("[{\"id\":\"01990000-0000-7000-8000-000000000000\",\"kind\":\"note\",\"happened_at\":\"2026-09-01T00:00:00Z\",\"place\":\"dock\",\"device\":\"d\",\"body\":{\"text\":\"t\"},\"corects\":null}]")]
    public async Task What_is_no_array_of_facts_is_refused_whole(string text)
    {
        (HttpStatusCode status, JsonNode answer) = await Post(text);
        Assert.Equal(HttpStatusCode.BadRequest, status);
        Assert.NotEmpty(answer["detail"]!.GetValue<string>());
        Assert.Empty(Shed.Ledger.Read());
    }

    /// <summary>W3C Fetch Metadata: a browser names the site that a request comes from.</summary>
    [Theory]
    [InlineData("Sec-Fetch-Site", "cross-site")]
    [InlineData("Origin", "http://other.example")]
    [InlineData("Origin", "null")]
    public async Task A_page_of_another_site_is_refused(string header, string value)
    {
        using HttpClient client = new() { BaseAddress = Shed.Root };
        client.DefaultRequestHeaders.Add(header, value);
        using StringContent content = new(new JsonArray(Note("x")).ToJsonString(), Encoding.UTF8, "application/json");
        Assert.Equal(HttpStatusCode.Forbidden, (await client.PostAsync(new Uri("/api/v1/facts", UriKind.Relative), content, TestContext.Current.CancellationToken)).StatusCode);
        Assert.Empty(Shed.Ledger.Read());
    }

    /// <summary>What a page elsewhere can make a browser send without asking first (CORS "simple" types) is no JSON.</summary>
    [Fact]
    public async Task A_body_that_is_not_said_to_be_JSON_is_refused()
    {
        using HttpClient client = new() { BaseAddress = Shed.Root };
        using StringContent content = new(new JsonArray(Note("x")).ToJsonString(), Encoding.UTF8, new MediaTypeHeaderValue("text/plain"));
        HttpResponseMessage answer = await client.PostAsync(new Uri("/api/v1/facts", UriKind.Relative), content, TestContext.Current.CancellationToken);
        Assert.InRange((int)answer.StatusCode, 400, 415);
        Assert.Empty(Shed.Ledger.Read());
    }

    [Fact]
    public async Task The_description_names_both_ways_and_every_kind()
    {
        JsonNode document = await Get("/api/v1/openapi.json");
        Assert.StartsWith("3.1", document["openapi"]!.GetValue<string>(), StringComparison.Ordinal);
        Assert.Equal(["get", "post"], document["paths"]!["/api/v1/facts"]!.AsObject().Select(way => way.Key).Order(StringComparer.Ordinal));
        string said = document["info"]!["description"]!.GetValue<string>();
        Assert.All(FactKinds.All, kind => Assert.Contains($"`{kind}`", said, StringComparison.Ordinal));
        JsonObject sent = document["components"]!["schemas"]!["FactSent"]!["properties"]!.AsObject();
        Assert.Equal(["body", "corrects", "device", "happened_at", "id", "kind", "place"], sent.Select(key => key.Key).Order(StringComparer.Ordinal));
        Assert.Equal(FactKinds.All, sent["kind"]!["enum"]!.AsArray().Select(kind => kind!.GetValue<string>()));
        Assert.All(document["paths"]!.AsObject(), path => Assert.StartsWith("/api/v1/", path.Key, StringComparison.Ordinal));
    }

    [Fact]
    public void Every_kind_has_its_body_described() => Assert.All(FactKinds.All, kind => Assert.NotEmpty(FactBodies.Of(kind)));

    private static JsonObject Note(string text) => new()
    {
        ["id"] = Guid.CreateVersion7().ToString(), ["kind"] = "note", ["happened_at"] = "2026-09-01T06:30:00-04:30", ["place"] = "dock", ["device"] = "scale-1",
        ["body"] = new JsonObject { ["text"] = text },
    };

    private static string Id(JsonObject fact) => fact["id"]!.GetValue<string>();

    private async Task<JsonNode> Get(string path)
    {
        using Visitor visitor = Shed.Visitor();
        Got answer = await visitor.Get(path);
        Assert.Equal(HttpStatusCode.OK, answer.Status);
        return JsonNode.Parse(answer.Text)!;
    }

    private Task<(HttpStatusCode Status, JsonNode Answer)> Post(JsonArray facts) => Post(facts.ToJsonString());

    private async Task<(HttpStatusCode Status, JsonNode Answer)> Post(string text)
    {
        using HttpClient client = new() { BaseAddress = Shed.Root };
        using StringContent content = new(text, Encoding.UTF8, "application/json");
        HttpResponseMessage answer = await client.PostAsync(new Uri("/api/v1/facts", UriKind.Relative), content, TestContext.Current.CancellationToken);
        return (answer.StatusCode, JsonNode.Parse(await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken)) ?? throw new JsonException("empty"));
    }
}
