using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Text.RegularExpressions;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles;
using Cloveshed.Solver.Highs;
using Cloveshed.Web;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;

namespace Cloveshed.Bench;

/// <summary>
/// Every page of the application on a ledger with a season and its adopted plan, and again at a multiple of it: so many requests
/// each after one that warms it up, one after another over loopback. Printed: the first answer, median and 95th percentile
/// until the last byte came, the processor's time a request (of server and client together; it says something on a busy machine
/// too), and bytes as a browser gets them (Brotli).
/// </summary>
internal static class Pages
{
    /// <summary>What the issue allows at one time and at ten, in ms at the 95th percentile, and for the first page on the wire.</summary>
    private const double AllowedAtOne = 60, AllowedAtMany = 150;

    private const int AllowedBytes = 250_000;

    /// <summary>Each is a fact, and reads the whole season.</summary>
    private const int MostChanges = 20;

    public static async Task Run(string seasonFolder, string planFolder, int requests, int times)
    {
        Season season = SeasonReader.Read(seasonFolder).Season ?? throw new ArgumentException($"{seasonFolder} does not hold a sound season.");
        PlanAnswer plan = AnswerReader.Read(planFolder, season).Answer ?? throw new ArgumentException($"{planFolder} does not hold a sound answer for it.");
        foreach (int fold in new[] { 1, times }.Distinct())
        {
            string folder = Directory.CreateTempSubdirectory("cloveshed-pages-").FullName;
            try
            {
                await One(ManyFold.Of(season, fold), ManyFold.Of(plan, fold), fold, folder, requests);
            }
            finally
            {
                Directory.Delete(folder, recursive: true);
            }
        }
    }

    private static async Task One(Season season, PlanAnswer plan, int fold, string folder, int requests)
    {
        using ShedLedger ledger = ShedLedger.Open(new LedgerAddress(Path.Combine(folder, "shed.db")), TimeProvider.System);
        var clock = Stopwatch.StartNew();
        ImportResult imported = SeasonImport.Import(ledger, SeasonWriter.Render(season), FactOrigin.Now(TimeProvider.System, "bench"));
        if (!imported.Taken)
        {
            throw new InvalidOperationException(imported.Faults.Count > 0 ? imported.Faults[0].ToString() : imported.Refusals[0].Message);
        }

        double importSeconds = clock.Elapsed.TotalSeconds;
        Guid adopted = Adopt(ledger, plan, season);
        await using WebApplication app = ShedHost.Build(ledger, new HighsSolver(), TimeProvider.System, new ShedOptions("http://127.0.0.1:0", Path.Combine(folder, "keys"), "bench", () => clock.Elapsed.TotalSeconds));
        await app.StartAsync();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"\n{fold} x {season.Settings.Name}: {imported.Facts:#,##0} facts imported in {importSeconds:0.0} s; {requests} requests a page; allowed {(fold == 1 ? AllowedAtOne : AllowedAtMany)} ms at p95 and {AllowedBytes:#,##0} bytes"));
        Console.WriteLine("| page | first ms | median ms | p95 ms | CPU ms | bytes | |\n| --- | ---: | ---: | ---: | ---: | ---: | --- |");
        string lot = season.Lots[0].Lot.Text, order = season.Orders[0].Order.Text, day = NodaTime.Text.LocalDatePattern.Iso.Format(new NodaTime.LocalDate(DateTime.UtcNow.Year, DateTime.UtcNow.Month, DateTime.UtcNow.Day));
        foreach ((string page, string? asOf) in new (string, string?)[]
        {
            ("/", null), ("/keep", null), ($"/keep/{lot}", null), ("/plan", null), ($"/plan/{adopted}", null), ($"/plan/{adopted}/tables", null), ("/plan/all", null), ("/plan/again", null),
            ($"/plan/compare?a={adopted}&b={adopted}", null), ("/dock", null), ($"/dock/{order}", null), ("/setup", null), ("/setup/lots", null), ("/setup/orders?find=jumbo&sort=due", null),
            ("/setup/samples?sort=weight_g&down=1", null), ("/setup/orders/3", null), ("/setup/products/1", null), ("/setup/season", null), ("/setup/import", null), ("/setup/ledger", null), ("/setup/how-sure", null), ($"/setup/ledger?lot={lot}", null),
            ("/help", null), ("/help/setup", null), ("/line", null), ($"/line/sizer/{lot}", null), ($"/line-answers/sizer/{lot}?cut=21.7", null), ($"/line/drum/{lot}", null), ($"/line-answers/drum/{lot}", null), ($"/line/sample/{lot}", null),
            ($"/line/count/{lot}", null), ($"/line/sheet/{lot}", null), ("/keep", day + "+then"), ("/dock", day + "+now"),
        })
        {
            await Measure(app, page, asOf, requests, fold == 1 ? AllowedAtOne : AllowedAtMany);
        }

        await MeasureChange(app, Math.Min(requests, MostChanges));
        await app.StopAsync();
    }

    /// <summary>A row changed by its form, and the list shown after it: the whole season is read twice, and the fact is on the disk.</summary>
    private static async Task MeasureChange(WebApplication app, int requests)
    {
        const string Row = "/setup/orders/3", Action = Row + "/change";
        using HttpClient client = new(new HttpClientHandler { CookieContainer = new CookieContainer() }) { BaseAddress = new Uri(app.Urls.Single()) };
        List<double> times = [];
        TimeSpan worked = TimeSpan.Zero;
        for (int at = 0; at <= requests; at++)
        {
            string page = await client.GetStringAsync(Row);
            string form = Regex.Match(page, $"<form[^>]*action=\"{Action}\".*?</form>", RegexOptions.Singleline).Value;
            Dictionary<string, string> fields = Regex.Matches(form, "<input[^>]* name=\"([^\"]*)\"[^>]*>").ToDictionary(input => input.Groups[1].Value, input => WebUtility.HtmlDecode(Regex.Match(input.Value, " value=\"([^\"]*)\"").Groups[1].Value));
            foreach (Match select in Regex.Matches(form, "<select[^>]* name=\"([^\"]*)\".*?</select>", RegexOptions.Singleline))
            {
                fields[select.Groups[1].Value] = WebUtility.HtmlDecode(Regex.Match(select.Value, "<option value=\"([^\"]*)\" selected").Groups[1].Value);
            }

            fields["c.units"] = (100 + at).ToString(CultureInfo.InvariantCulture);
            fields["reason"] = "bench";
            long begun = Stopwatch.GetTimestamp();
            TimeSpan before = Process.GetCurrentProcess().TotalProcessorTime;
            using FormUrlEncodedContent content = new(fields);
            using HttpResponseMessage answer = await client.PostAsync(Action, content);
            string list = await answer.Content.ReadAsStringAsync();
            if (answer.StatusCode != HttpStatusCode.OK || !list.Contains("class=\"said done\"", StringComparison.Ordinal))
            {
                throw new InvalidOperationException($"The change was answered with {answer.StatusCode}.");
            }

            times.Add(Stopwatch.GetElapsedTime(begun).TotalMilliseconds);
            worked += at == 0 ? TimeSpan.Zero : Process.GetCurrentProcess().TotalProcessorTime - before;
        }

        double[] sorted = [.. times.Skip(1).Order()];
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"| a row changed by its form | {times[0]:0} | {sorted[sorted.Length / 2]:0.0} | {sorted[(int)Math.Ceiling(0.95 * sorted.Length) - 1]:0.0} | {worked.TotalMilliseconds / requests:0.0} | | |"));
    }

    private static async Task Measure(WebApplication app, string page, string? asOf, int requests, double allowed)
    {
        CookieContainer cookies = new();
        Uri root = new(app.Urls.Single());
        if (asOf is not null)
        {
            cookies.Add(root, new Cookie(Viewer.AsOfCookie, asOf));
        }

        using HttpClient client = new(new HttpClientHandler { CookieContainer = cookies, AllowAutoRedirect = true }) { BaseAddress = root };
        client.DefaultRequestHeaders.AcceptEncoding.Add(new StringWithQualityHeaderValue("br"));
        List<double> times = [];
        int bytes = 0;
        string trouble = "";
        TimeSpan worked = TimeSpan.Zero;
        for (int at = 0; at <= requests; at++)
        {
            long begun = Stopwatch.GetTimestamp();
            using HttpResponseMessage answer = await client.GetAsync(page);
            bytes = (await answer.Content.ReadAsByteArrayAsync()).Length;
            times.Add(Stopwatch.GetElapsedTime(begun).TotalMilliseconds);
            worked = at == 0 ? Process.GetCurrentProcess().TotalProcessorTime : worked;
            trouble = answer.StatusCode == HttpStatusCode.OK ? "" : $" {(int)answer.StatusCode}";
        }

        double cpu = (Process.GetCurrentProcess().TotalProcessorTime - worked).TotalMilliseconds / requests, first = times[0];
        double[] sorted = [.. times.Skip(1).Order()];
        double p95 = sorted[(int)Math.Ceiling(0.95 * sorted.Length) - 1];
        string verdict = (p95 > allowed ? "slow" : "") + (bytes > AllowedBytes ? " large" : "") + trouble;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {Shown(page)}{(asOf is null ? "" : " (past day)")} | {first:0} | {sorted[sorted.Length / 2]:0.0} | {p95:0.0} | {cpu:0.0} | {bytes:#,##0} | {verdict.Trim()} |"));
    }

    /// <summary>Ids say nothing to a reader and differ from run to run.</summary>
    private static string Shown(string page) => Regex.Replace(page, "[0-9a-f]{8}-[0-9a-f-]{27}", "…");

    private static Guid Adopt(ShedLedger ledger, PlanAnswer plan, Season season)
    {
        FactOrigin origin = FactOrigin.Now(TimeProvider.System, "bench");
        PlanDocument document = PlanDocument.Of(plan, season);
        long basis = ledger.Head().Seq;
        NewFact asked = origin.PlanAsked("Bench", 60, 0.01, 1, "en", basis), made = origin.PlanMade(asked.Id, document.Sha256, plan.Summary.Value, plan.Summary.Bound, plan.Summary.Gap, "gap", basis);
        Taken(ledger.Append([asked, made], new Dictionary<string, byte[]> { [document.Sha256] = document.Bytes }));
        Taken(ledger.Append([origin.PlanAdopted(ledger.Now().Plans.Single())]));
        return made.Id;
    }

    private static void Taken(Appended appended)
    {
        if (appended is Appended.Refused refused)
        {
            throw new InvalidOperationException(refused.Refusals[0].Message);
        }
    }
}
