using System.Net;
using System.Text;
using System.Text.Json;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Tests.Plan;

/// <summary>Plans for programs.</summary>
public sealed class PlanApiTests
{
    [Fact]
    public async Task Plans_and_their_files_are_given_as_they_are_kept()
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger, "For programs"));
        using Visitor visitor = shed.Visitor();
        using JsonDocument all = JsonDocument.Parse((await visitor.Get("/api/v1/plans")).Text);
        JsonElement one = Assert.Single(all.RootElement.EnumerateArray());
        Assert.Equal((plan.Fact, "For programs", false), (one.GetProperty("id").GetGuid(), one.GetProperty("name").GetString(), one.GetProperty("adopted").GetBoolean()));
        Assert.Equal(plan.Value, one.GetProperty("value").GetDouble(), 1e-9);
        using JsonDocument alone = JsonDocument.Parse((await visitor.Get($"/api/v1/plans/{plan.Fact}")).Text);
        Assert.Equal(plan.Basis, alone.RootElement.GetProperty("basis").GetInt64());
        IReadOnlyDictionary<string, ReadOnlyMemory<byte>> kept = PlanDocument.Files(shed.Ledger.Document(plan.Document)!);
        foreach (string? name in one.GetProperty("files").EnumerateArray().Select(file => file.GetString()))
        {
            Got file = await visitor.Get($"/api/v1/plans/{plan.Fact}/files/{name}");
            Assert.Equal(HttpStatusCode.OK, file.Status);
            Assert.Equal(Encoding.UTF8.GetString(kept[name!].Span), file.Text);
        }

        Assert.Equal(15, one.GetProperty("files").GetArrayLength()); // 14 CSV files and summary.json: season-files.md, Out
    }

    [Theory]
    [InlineData("/files/season%2Fseason.json")]
    [InlineData("/files/..%2Fshed.db")]
    [InlineData("/files/orders.csv")]
    public async Task Nothing_but_the_answers_files_is_given(string path)
    {
        await using ServedShed shed = await ServedShed.Open(PlanSeason.Import);
        PlanEntry plan = await PlanSeason.Made(shed.Ledger, PlanSeason.Ask(shed.Ledger));
        using Visitor visitor = shed.Visitor();
        Assert.Equal(HttpStatusCode.NotFound, (await visitor.Get($"/api/v1/plans/{plan.Fact}{path}")).Status);
    }

    [Fact]
    public async Task The_document_of_the_interface_names_them()
    {
        await using ServedShed shed = await ServedShed.Open();
        using Visitor visitor = shed.Visitor();
        using JsonDocument document = JsonDocument.Parse((await visitor.Get("/api/v1/openapi.json")).Text);
        JsonElement paths = document.RootElement.GetProperty("paths");
        Assert.All(["/api/v1/plans", "/api/v1/plans/{id}", "/api/v1/plans/{id}/files/{name}"], path => Assert.True(paths.TryGetProperty(path, out _), path));
    }
}
