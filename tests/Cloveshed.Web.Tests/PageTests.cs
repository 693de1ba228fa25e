using System.Net;

namespace Cloveshed.Web.Tests;

/// <summary>Each page answers, in both languages, with and without a season.</summary>
public sealed class PageTests : IClassFixture<ShedWithoutSeason>
{
    private readonly ServedShed shed;

    public PageTests(ShedWithoutSeason empty) => shed = empty.Shed;

    public static TheoryData<string> Places => ["/", "/yard", "/keep", "/line", "/plan", "/dock", "/setup"];

    [Theory, MemberData(nameof(Places))]
    public async Task Without_a_season_a_page_says_what_to_do_first(string path)
    {
        using Visitor english = shed.Visitor(), spanish = shed.Visitor("es-MX,es;q=0.9,en;q=0.5");
        Got page = await english.Get(path), pagina = await spanish.Get(path);
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.OK), (page.Status, pagina.Status));
        Assert.Contains("<html lang=\"en\"", page.Text, StringComparison.Ordinal);
        Assert.Contains("<html lang=\"es\"", pagina.Text, StringComparison.Ordinal);
        Assert.Contains("No season is open yet.", page.Text, StringComparison.Ordinal);
        Assert.Contains("Todavía no hay temporada abierta.", WebUtility.HtmlDecode(pagina.Text), StringComparison.Ordinal);
    }
}

public sealed class ShedWithoutSeason : IAsyncLifetime
{
    private ServedShed? shed;

    public ServedShed Shed => shed!;

    public async ValueTask InitializeAsync() => shed = await ServedShed.Open();

    public ValueTask DisposeAsync() => shed!.DisposeAsync();
}
