using System.Globalization;
using System.Net;
using System.Net.Http.Headers;
using System.Text;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Yard;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Yard;
using Cloveshed.SeasonFiles.Tests;
using Cloveshed.Web.Tests.Setup;
using Cloveshed.Web.Yard;
using NodaTime;

namespace Cloveshed.Web.Tests.Yard;

/// <summary>Curing rows by the weather and the sacks that the shed has, and the forms that bring these.</summary>
public sealed class YardPageTests
{
    /// <summary>L1 in the yard, dug on 20 August and not known to be cured; it is 2 September.</summary>
    private static Task<ServedShed> Open() => ServedShed.Open(ledger =>
    {
        Assert.True(SeasonImport.Import(ledger, new SmallSeason().Files, SmallShed.Origin).Taken);
        // All rows of a lot say alike whether it is cured, so they change together.
        Assert.IsType<Appended.Accepted>(ledger.Append(
        [
            .. ledger.Now().Rows!.Of("lots.csv").Where(row => row.Cells["lot"] == "L1")
                .Select(row => SmallShed.Origin.RowChanged(row, new Dictionary<string, string>(row.Cells) { ["cured"] = "no", ["harvested"] = "2026-08-20" })),
        ]));
    });

    private static string Csv(int days, double tempC = 30, double rh = 40, string extra = "")
    {
        StringBuilder text = new("at,temp_c,rh,rain_mm\n");
        for (int hour = 0; hour < days * 24; hour++)
            text.Append(CultureInfo.InvariantCulture, $"{new LocalDateTime(2026, 8, 20, 0, 0).PlusHours(hour).ToString("uuuu-MM-dd'T'HH:mm", CultureInfo.InvariantCulture)},{tempC},{rh},0\n");
        return text + extra;
    }

    private static async Task<Got> SendFile(Visitor visitor, Got page, string action, string csv)
    {
        using MultipartFormDataContent content = [];
        foreach ((string name, string value) in SmallShed.Fields(page, action))
            content.Add(new StringContent(name == "who" ? "K7" : value), name);
        ByteArrayContent file = new(Encoding.UTF8.GetBytes(csv));
        file.Headers.ContentType = new MediaTypeHeaderValue("text/csv");
        content.Add(file, "file", "weather.csv");
        using HttpResponseMessage answer = await visitor.Client.PostAsync(new Uri(action, UriKind.Relative), content, TestContext.Current.CancellationToken);
        return new Got(answer.StatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), answer);
    }

    private static CuringBook Book(ServedShed shed) =>
        new(shed.Ledger.Now().Season!, new YardLog(shed.Ledger.YardRecords(), shed.Clock.LocalTimeZone), new LocalDate(2026, 9, 2));

    [Fact]
    public async Task A_row_cures_by_the_weather_that_was_told_as_the_curing_law_says()
    {
        await using ServedShed shed = await Open();
        using Visitor visitor = shed.Visitor();
        CuringRow typical = Assert.Single(Book(shed).Rows);
        Assert.Equal(0, typical.HoursTold);
        Got answer = await SendFile(visitor, await visitor.Get("/yard"), "/yard/weather-file", Csv(13));
        Assert.Equal(HttpStatusCode.SeeOther, answer.Status);
        CuringRow row = Assert.Single(Book(shed).Rows);
        WeatherRow[] hours = [.. Enumerable.Range(0, 12 * 24 + 24).Select(hour => new WeatherRow(new LocalDateTime(2026, 8, 20, 12, 0).PlusHours(hour), 30, 40))];
        CuringAnswer alone = Curing.Of(new CuringQuestion(hours, CuringParameters.Default, KeepingParameters.Default, YardKnowledge.None(CuringParameters.Default)));
        Assert.Equal(12.5 * 24, row.HoursTold);
        Assert.Equal(alone.CuredAt, row.Answer.CuredAt);
        Assert.NotEqual(typical.Answer.CuredAt, row.Answer.CuredAt);
        Assert.Contains("our default, no published value", (await visitor.Get("/yard")).Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_sent_again_and_longer_adds_what_is_new_and_a_faulty_one_nothing()
    {
        await using ServedShed shed = await Open();
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/yard");
        await SendFile(visitor, page, "/yard/weather-file", Csv(3));
        await SendFile(visitor, page, "/yard/weather-file", Csv(4));
        Assert.Equal(4, shed.Ledger.YardRecords().Count);
        Got faulty = await SendFile(visitor, page, "/yard/weather-file", Csv(5, extra: "soon,20,40,0\n2026-08-29 10:00,86,40,0\n"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, faulty.Status);
        Assert.Contains("weather.csv", faulty.Read(), StringComparison.Ordinal);
        Assert.Contains("soon", faulty.Read(), StringComparison.Ordinal);
        Assert.Contains("86", faulty.Read(), StringComparison.Ordinal);
        Assert.Equal(4, shed.Ledger.YardRecords().Count);
    }

    /// <summary>A roof keeps rain off; without one the same rain comes in and the row is later.</summary>
    [Fact]
    public async Task Rain_counts_where_there_is_no_roof()
    {
        await using ServedShed shed = await Open();
        using Visitor visitor = shed.Visitor();
        await SendFile(visitor, await visitor.Get("/yard"), "/yard/weather-file", Csv(13).Replace("2026-08-24T06:00,30,40,0", "2026-08-24T06:00,30,40,25", StringComparison.Ordinal));
        LocalDateTime wet = Book(shed).Rows[0].Answer.CuredAt!.Value;
        Got answer = await visitor.Fill(await visitor.Get("/yard"), "/yard/is", ("roof", "yes"), ("who", "K7"));
        Assert.Equal(HttpStatusCode.SeeOther, answer.Status);
        Assert.True(Book(shed).Rows[0].Answer.CuredAt < wet);
        Assert.Contains("A roof keeps rain off.", (await visitor.Get("/yard")).Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Published_limits_are_warned_of_on_the_page()
    {
        await using ServedShed shed = await Open();
        using Visitor visitor = shed.Visitor();
        await SendFile(visitor, await visitor.Get("/yard"), "/yard/weather-file", Csv(13, tempC: 47, rh: 30));
        string page = (await visitor.Get("/yard")).Read();
        Assert.Contains("over 45 °C", page, StringComparison.Ordinal);
        Assert.Contains("the published cure lasts 8 to 12 h (WFLO 2018)", page, StringComparison.Ordinal);
    }

    /// <summary>Sacks made by the law at twice the default rate pull the yard's rate up, in the weather that was told; without weather they say nothing.</summary>
    [Fact]
    public async Task Sacks_correct_the_yard_where_weather_was_told()
    {
        await using ServedShed shed = await Open();
        using Visitor visitor = shed.Visitor();
        CuringParameters fast = CuringParameters.Default with { NeckRate = CuringParameters.Default.NeckRate * 2 };
        StringBuilder csv = new("lot,sack,at,weight\n");
        CuringState state = CuringLaw.Dug(fast);
        LocalDateTime at = new(2026, 8, 20, 12, 0);
        for (int day = 0; day < 9; day++, at = at.PlusDays(1))
        {
            foreach (string sack in new[] { "A", "B" })
                csv.Append(CultureInfo.InvariantCulture, $"L1,{sack},{at.ToString("uuuu-MM-dd'T'HH:mm", CultureInfo.InvariantCulture)},{50 * CuringLaw.MassRatio(fast, state):0.0000}\n");
            for (int hour = 0; hour < 24; hour++)
                state = CuringLaw.After(fast, KeepingParameters.Default, state, new WeatherRow(at.PlusHours(hour), 30, 40), 1);
        }

        Assert.Equal(HttpStatusCode.SeeOther, (await SendFile(visitor, await visitor.Get("/yard"), "/yard/sack-file", csv.ToString())).Status);
        Assert.Contains("For these days no weather was told", (await visitor.Get("/yard")).Read(), StringComparison.Ordinal);
        await SendFile(visitor, await visitor.Get("/yard"), "/yard/weather-file", Csv(13));
        YardSight yard = Book(shed).Yards.First(one => one.Sacks.Count > 0);
        Assert.InRange(Math.Exp(yard.Knowledge.LnRate), 1.7, 2.3);
        Assert.True(yard.Knowledge.LnRateSd < CuringParameters.Default.RateSd);
        Assert.Contains("2 sacks, 18 weighings", (await visitor.Get("/yard")).Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task By_hand_an_hour_a_sack_and_that_it_is_cured()
    {
        await using ServedShed shed = await Open();
        using Visitor visitor = shed.Visitor();
        Got page = await visitor.Get("/yard");
        await visitor.Fill(page, "/yard/weather", ("at", "2026-09-02T09:00"), ("temp_c", "21"), ("rh", "66"), ("who", "K7"));
        await visitor.Fill(page, "/yard/sack", ("lot", "L1"), ("sack", "A"), ("at", "2026-09-02T09:00"), ("weight", "48.2"), ("who", "K7"));
        Assert.Equal([FactKinds.SackWeighed, FactKinds.WeatherTold], shed.Ledger.ReadBack(2).Select(fact => fact.Kind));
        Got wrong = await visitor.Fill(page, "/yard/weather", ("at", ""), ("temp_c", "warm"), ("rh", "66"), ("who", ""));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, wrong.Status);
        Assert.Contains("°C should be a number, not \"warm\".", wrong.Read(), StringComparison.Ordinal);
        Assert.Contains("value=\"warm\"", wrong.Text, StringComparison.Ordinal);
        await visitor.Fill(await visitor.Get("/yard"), "/yard/cured");
        Assert.All(shed.Ledger.Now().Season!.Lots.Where(lot => lot.Lot.Text == "L1"), lot => Assert.True(lot.Cured));
        Assert.Contains("Nothing that was dug within 90 days", (await visitor.Get("/yard")).Read(), StringComparison.Ordinal);
    }
}
