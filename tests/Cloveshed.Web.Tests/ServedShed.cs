using System.Diagnostics;
using System.Net;
using System.Text.RegularExpressions;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Shift;
using Cloveshed.Ledger;
using Cloveshed.Solver.Highs;
using Cloveshed.Solver.Shift;
using Cloveshed.Web.Plan.Jobs;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Cloveshed.Web.Tests;

/// <summary>A shed of its own, served in this process on a free port, and a browser's worth of client.</summary>
public sealed class ServedShed : IAsyncDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("cloveshed-web-").FullName;
    private WebApplication app;

    private readonly IReadOnlyDictionary<string, string?>? variables;
    private readonly ILinearSolver solver;
    private readonly IShiftScheduler shifts;

    /// <summary>The demo's files, as the program offers them.</summary>
    private static readonly Dictionary<string, ReadOnlyMemory<byte>> Demo =
        Directory.GetFiles(DemoShed.Folder).ToDictionary(file => Path.GetFileName(file), file => new ReadOnlyMemory<byte>(System.IO.File.ReadAllBytes(file)));

    private ServedShed(byte[]? start, Action<ShedLedger>? before, IReadOnlyDictionary<string, string?>? variables, ILinearSolver? solver, IShiftScheduler? shifts = null)
    {
        this.variables = variables;
        this.shifts = shifts ?? new CpShiftScheduler();
        this.solver = solver ?? new HighsSolver();
        if (start is not null)
        {
            System.IO.File.WriteAllBytes(File, start);
        }

        Ledger = ShedLedger.Open(LedgerAddress.Parse(File), Clock);
        before?.Invoke(Ledger);
        app = Build();
    }

    private WebApplication Build()
    {
        var clock = Stopwatch.StartNew();
        return ShedHost.Build(Ledger, solver, Clock, new ShedOptions("http://127.0.0.1:0", KeyFolder, "0.0.0-test", () => clock.Elapsed.TotalSeconds, logging => logging.AddProvider(Log), variables, Demo) { Shifts = shifts });
    }

    /// <summary>Stands still, so that a page is the same twice.</summary>
    public StillClock Clock { get; } = new(Moment);

    internal static DateTimeOffset Moment { get; } = new(2026, 9, 2, 15, 4, 5, TimeSpan.Zero);

    public ShedLedger Ledger { get; private set; }

    /// <summary>What was logged.</summary>
    public KeptLog Log { get; } = new();

    /// <summary>The ledger's file.</summary>
    public string File => Path.Combine(folder, "shed.db");

    public string KeyFolder => Path.Combine(folder, "keys");

    public Uri Root => new(app.Urls.Single());

    /// <summary>Serves an empty ledger, or one that was written to before.</summary>
    /// <param name="solver">Null: the one of the program.</param>
    public static async Task<ServedShed> Open(Action<ShedLedger>? before = null, IReadOnlyDictionary<string, string?>? variables = null, ILinearSolver? solver = null, IShiftScheduler? shifts = null)
    {
        ServedShed shed = new(null, before, variables, solver, shifts);
        await shed.app.StartAsync();
        return shed;
    }

    /// <summary>Serves a ledger of its own that holds the demo season, written to or not.</summary>
    public static async Task<ServedShed> OpenDemo(Action<ShedLedger>? before = null)
    {
        ServedShed shed = new(DemoShed.Imported, before, null, null);
        await shed.app.StartAsync();
        return shed;
    }

    /// <summary>A part that the program is made of.</summary>
    public T Part<T>()
        where T : notnull => app.Services.GetRequiredService<T>();

    /// <summary>The program ends and starts again on the same ledger and keys.</summary>
    public async Task Restart()
    {
        await app.StopAsync();
        await app.DisposeAsync();
        Ledger.Dispose();
        Ledger = ShedLedger.Open(LedgerAddress.Parse(File), Clock);
        app = Build();
        await app.StartAsync();
    }

    /// <summary>Puts something else in the place of the ledger's file: what opens it from now on fails. No plan is made from then on.</summary>
    public void BreakLedger()
    {
        // A connection that is open would go on reading the file that was moved away.
        Part<PlanRoom>().StopAsync(CancellationToken.None).GetAwaiter().GetResult();
        Ledger.Rest();
        System.IO.File.Move(File, File + ".away");
        Directory.CreateDirectory(File);
    }

    public void MendLedger()
    {
        Directory.Delete(File);
        System.IO.File.Move(File + ".away", File);
    }

    /// <summary>Someone at a screen: keeps cookies, does not follow redirects by itself.</summary>
    public Visitor Visitor(string language = "en", bool packed = false) => new(this, language, packed);

    public async ValueTask DisposeAsync()
    {
        await app.StopAsync();
        await app.DisposeAsync();
        Ledger.Dispose();
        Directory.Delete(folder, recursive: true);
    }
}

/// <summary>A page as it came.</summary>
public sealed record Got(HttpStatusCode Status, string Text, HttpResponseMessage Answer)
{
    /// <summary>A header of the answer, empty where there is none.</summary>
    public string Header(string name) =>
        Answer.Headers.TryGetValues(name, out IEnumerable<string>? values) || Answer.Content.Headers.TryGetValues(name, out values) ? string.Join(", ", values) : "";
}

/// <summary>A client with cookies of its own.</summary>
public sealed partial class Visitor : IDisposable
{
    private readonly HttpClient client;
    private readonly ServedShed shed;

    internal Visitor(ServedShed shed, string language, bool packed)
    {
        this.shed = shed;
        HttpClientHandler handler = new() { AllowAutoRedirect = false, CookieContainer = Cookies, AutomaticDecompression = packed ? DecompressionMethods.None : DecompressionMethods.All };
        client = new HttpClient(handler) { BaseAddress = shed.Root };
        client.DefaultRequestHeaders.AcceptLanguage.ParseAdd(language);
        if (packed)
        {
            client.DefaultRequestHeaders.AcceptEncoding.ParseAdd("br, gzip");
        }
    }

    public CookieContainer Cookies { get; } = new();

    public HttpClient Client => client;

    /// <summary>Takes over what another's browser holds: the same person at another port, or in another window.</summary>
    public void Bring(Visitor other)
    {
        foreach (Cookie cookie in other.Cookies.GetAllCookies())
        {
            Cookies.Add(client.BaseAddress!, new Cookie(cookie.Name, cookie.Value));
        }
    }

    public async Task<Got> Get(string path)
    {
        HttpResponseMessage answer = await client.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);
        if (answer.StatusCode == HttpStatusCode.InternalServerError)
        {
            TestContext.Current.TestOutputHelper?.WriteLine(string.Join('\n', shed.Log.Lines));
        }

        return new(answer.StatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), answer);
    }

    /// <summary>Sends a form as the page holds it: its hidden fields and these.</summary>
    public async Task<Got> Send(Got page, string action, params (string Name, string Value)[] fields)
    {
        string form = Forms().Matches(page.Text).Select(match => match.Value).First(text => text.Contains($"action=\"{action}\"", StringComparison.Ordinal));
        return await Post(action, [.. Hidden().Matches(form).Select(match => (match.Groups["name"].Value, WebUtility.HtmlDecode(match.Groups["value"].Value))), .. fields]);
    }

    public async Task<Got> Post(string path, params (string Name, string Value)[] fields)
    {
        using FormUrlEncodedContent content = new(fields.Select(field => KeyValuePair.Create(field.Name, field.Value)));
        HttpResponseMessage answer = await client.PostAsync(new Uri(path, UriKind.Relative), content, TestContext.Current.CancellationToken);
        return new(answer.StatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), answer);
    }

    public void Dispose() => client.Dispose();

    [GeneratedRegex("<form.*?</form>", RegexOptions.Singleline)]
    private static partial Regex Forms();

    [GeneratedRegex("<input type=\"hidden\" name=\"(?<name>[^\"]*)\" value=\"(?<value>[^\"]*)\"")]
    private static partial Regex Hidden();
}
