using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Cloveshed.App.Tests;

/// <summary>cure on the command line: files in several spellings, answers, refusals. Its law is tested with the core.</summary>
public sealed class CureTests : IDisposable
{
    private readonly Trial trial = new();

    public void Dispose() => trial.Dispose();

    private string File(string name, string text)
    {
        System.IO.File.WriteAllText(trial.At(name), text);
        return trial.At(name);
    }

    /// <summary>Steady days of 30 °C, 45%, hour by hour from 8 o'clock.</summary>
    private static string Weather(int days, string header = "time,temp_c,rh", Func<DateTime, string>? row = null)
    {
        StringBuilder text = new(header + "\n");
        for (int hour = 0; hour < 24 * days; hour++)
        {
            DateTime at = new DateTime(2026, 7, 10, 8, 0, 0, DateTimeKind.Unspecified).AddHours(hour);
            text.Append(row?.Invoke(at) ?? at.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture) + ",30,45").Append('\n');
        }

        return text.ToString();
    }

    private JsonElement Cure(params string[] arguments)
    {
        Ended ended = trial.Run(["cure", .. arguments, "--json"]);
        Assert.True(ended.Code == 0, ended.Error);
        return JsonDocument.Parse(ended.Output).RootElement;
    }

    [Fact]
    public void Json_has_the_keys_of_the_contract()
    {
        JsonElement answer = Cure(File("w.csv", Weather(25)));
        DateTime At(string key) => DateTime.Parse(answer.GetProperty(key).GetString()!, CultureInfo.InvariantCulture);
        Assert.InRange((At("cured_at") - At("dug_at")).TotalDays, 6, 14);
        Assert.True(At("low80") < At("cured_at") && At("cured_at") < At("high80"));
        Assert.InRange(answer.GetProperty("weight_loss").GetDouble(), 0.15, 0.3);
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("sacks").ValueKind);
        Assert.Empty(answer.GetProperty("warnings").EnumerateArray());
    }

    /// <summary>The same weather in other words is the same answer.</summary>
    [Fact]
    public void Columns_go_by_several_names_and_units()
    {
        string plain = trial.Run("cure", File("w.csv", Weather(25)), "--json").Output;
        string Said(string header, Func<DateTime, string> row) => trial.Run("cure", File("v.csv", Weather(25, header, row)), "--json").Output;
        string Iso(DateTime at, string form) => at.ToString(form, CultureInfo.InvariantCulture);
        Assert.Equal(plain, Said("RH (%),Temperature (°C),Timestamp", at => $"45,30,{Iso(at, "yyyy-MM-dd HH:mm:ss")}"));
        Assert.Equal(plain, Said("date,hour,humidity,temp_f,rain", at => $"{Iso(at, "yyyy-MM-dd")},{at.Hour},45,86,0"));
        Assert.Equal(plain, Said("date,time,rh,temp", at => $"{Iso(at, "yyyy-MM-dd")},{Iso(at, "HH:mm")},45,30"));
        string zoned = Said("time,temp_c,relative_humidity", at => $"{Iso(at, "yyyy-MM-dd'T'HH:mm:ss")}-07:00,30,45");
        Assert.Equal(plain, zoned.Replace("-07:00", "", StringComparison.Ordinal));
        Assert.Contains("-07:00\"", zoned, StringComparison.Ordinal);
        Assert.Contains("Z\"", Said("time,temp_c,rh", at => $"{Iso(at, "yyyy-MM-dd'T'HH:mm")}Z,30,45"), StringComparison.Ordinal);
        Ended shares = trial.Run("cure", File("v.csv", Weather(25, "time,temp_c,rh,mood", at => $"{Iso(at, "yyyy-MM-dd'T'HH:mm")},30,0.45,good")), "--json");
        Assert.Equal(plain, shares.Output);
        Assert.Equal(2, shares.Error.Count(c => c == '\n'));
        Assert.Contains("column mood is not known", shares.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Rain_and_still_air_delay_and_hot_air_is_warned_of()
    {
        string With(string more, Func<DateTime, string> cell) => File(more + ".csv", Weather(30, "time,temp_c,rh," + more, at => at.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture) + ",30,45," + cell(at)));
        double Days(string file) => Cure(file).GetProperty("days").GetDouble();
        double plain = Days(File("w.csv", Weather(30)));
        Assert.True(Days(With("rain_mm", at => at is { Day: 15, Hour: 12 } ? "20" : "")) > plain + 1);
        Assert.True(Days(With("wind_kmh", _ => "0")) > plain + 1);
        Assert.Equal(plain, Days(With("wind", _ => "3")), 1e-9);
        JsonElement forced = Cure(With("forced_c", at => at is { Day: 15, Hour: < 6 } ? "47" : ""));
        Assert.True(forced.GetProperty("days").GetDouble() < plain);
        Assert.Contains("6 hours over 45 °C, from 2026-07-15T00:00:00", forced.GetProperty("warnings")[0].GetString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Damp_air_never_cures_and_that_is_an_answer()
    {
        JsonElement answer = Cure(File("d.csv", Weather(5, row: at => at.ToString("yyyy-MM-dd'T'HH:mm", CultureInfo.InvariantCulture) + ",18,96")));
        Assert.Equal(JsonValueKind.Null, answer.GetProperty("cured_at").ValueKind);
        Assert.True(answer.GetProperty("weight_loss").GetDouble() > 0);
        Assert.Contains("Not cured within 60 days", trial.Run("cure", trial.At("d.csv")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public void Sacks_move_the_date_and_narrow_the_band()
    {
        string weather = File("w.csv", Weather(25));
        // 10 kg of which 2 kg go, half of what is left to go every 3 days: slower than our default.
        string sacks = "Sack,Weighed At,Weight (kg)\n" + string.Concat(Enumerable.Range(0, 12).SelectMany(day => ((string, double)[])[("A", 10), ("B", 12)],
            (day, sack) => FormattableString.Invariant($"{sack.Item1},2026-07-{10 + day:00}T09:00,{sack.Item2 * (0.79 + 0.21 * Math.Pow(0.5, day / 3.0)):0.000}\n")));
        JsonElement plain = Cure(weather), sacked = Cure(weather, "--sacks", File("s.csv", sacks));
        Assert.NotEqual(plain.GetProperty("cured_at").GetString(), sacked.GetProperty("cured_at").GetString());
        Assert.Equal(0.21, sacked.GetProperty("weight_loss").GetDouble(), 0.045);
        DateTime At(JsonElement of, string key) => DateTime.Parse(of.GetProperty(key).GetString()!, CultureInfo.InvariantCulture);
        double Spread(JsonElement of) => Math.Log((At(of, "high80") - At(of, "dug_at")) / (At(of, "low80") - At(of, "dug_at")));
        Assert.True(Spread(sacked) < Spread(plain) / 1.5);
        Assert.Equal((2, 24), (sacked.GetProperty("sacks").GetProperty("sacks").GetInt32(), sacked.GetProperty("sacks").GetProperty("weighings").GetInt32()));
        Assert.True(sacked.GetProperty("sacks").GetProperty("residual_sd").GetDouble() < 0.01);
    }

    public static TheoryData<string, string> Broken => new()
    {
        { "", "is empty: it needs a header row" },
        { "time,temp_c,rh\n2026-07-10T08:00,30,45\n", "line 1: found 1 rows under the header; expected two or more." },
        { "time,rh\n2026-07-10T08:00,45\n2026-07-10T09:00,45\n", "line 1: there is no column temp_c; expected °C, such as 31.5." },
        { "time,temp_c,rh\n2026-07-10T08:00,30,45\n2026-07-10T09:00,hot,45\n", "line 3, temp_c: found \"hot\"; expected a number from -60 to 80 with a decimal point. Correct the cell" },
        { "time,temp_c,rh\n2026-07-10T08:00,30,45\n2026-07-10T09:00,30,145\n", "line 3, rh: found \"145\"; expected a number from 0 to 100" },
        { "time,temp_c,rh\n2026-07-10T08:00,30,45\n2026-07-10T09:00,,45\n", "line 3, temp_c: empty; expected °C" },
        { "time,temp_c,rh\n2026-07-10T08:00,30,45\n2026-07-10T08:00,30,45\n", "line 3, time: found \"2026-07-10T08:00\"; expected a moment after that of the row before, 2026-07-10T08:00:00." },
        { "time,temp_c,rh\n10.7.2026 8:00,30,45\n10.7.2026 9:00,30,45\n", "line 2, time: found \"10.7.2026 8:00\"; expected a moment as ISO 8601 writes it" },
        { "time,temp_c,rh\n2026-07-10T08:00Z,30,45\n2026-07-10T09:00,30,45\n", "line 3, time: found \"2026-07-10T09:00\"; expected an offset from UTC in all rows or in none, as in line 2" },
        { "time,temp_c,rh\n2026-07-10T08:00,30,45,1\n2026-07-10T09:00,30,45\n", "line 2: found 4 cells; expected 3" },
        { "time;temp_c;rh\n2026-07-10T08:00;30;45\n", "expected columns separated by commas" },
        { "time,temp,temperature,rh\n2026-07-10T08:00,30,30,45\n", "temp and temperature both mean temp_c" },
        { "time,temp_c,rh\n2026-07-10T08:00,\"30,45\n", "line 2: a quotation mark is out of place" },
    };

    [Theory, MemberData(nameof(Broken))]
    public void A_file_that_cannot_be_understood_is_refused_in_one_line(string text, string said)
    {
        Ended ended = trial.Run("cure", File("w.csv", text));
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        Assert.Contains("w.csv", ended.Error, StringComparison.Ordinal);
        Assert.Contains(said, ended.Error, StringComparison.Ordinal);
        Assert.Equal(1, ended.Error.Count(c => c == '\n'));
        Assert.Equal(1, trial.Run("cure", trial.At("w.csv"), "--lang", "es", "--json").Code);
    }

    [Theory]
    [InlineData("sack,time,weight\nA,2026-07-10T09:00,10\nA,2027-07-11T09:00,9\n", "line 3, time: found \"2027-07-11T09:00\"; expected a moment within the weather")]
    [InlineData("sack,time,weight\nA,2026-07-10T09:00,10\nA,2026-07-11T09:00,0\n", "line 3, weight: found \"0\"; expected a weight above 0")]
    [InlineData("sack,time,weight\nA,2026-07-10T09:00,10\nB,2026-07-11T09:00,9\n", "no sack was weighed twice")]
    [InlineData("sack,time,weight\nA,2026-07-10T09:00,10\nA,2026-07-10T09:00,9\n", "expected one weighing of sack A at a moment")]
    [InlineData("sack,time,weight\nA,2026-07-10T09:00Z,10\nA,2026-07-11T09:00Z,9\n", "expected an offset from UTC if the weather's moments have one")]
    [InlineData("sack,time\nA,2026-07-10T09:00\n", "there is no column weight")]
    public void Sacks_that_cannot_be_understood_are_refused_likewise(string text, string said)
    {
        Ended ended = trial.Run("cure", File("w.csv", Weather(10)), "--sacks", File("s.csv", text));
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        Assert.Contains("s.csv", ended.Error, StringComparison.Ordinal);
        Assert.Contains(said, ended.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_not_there_is_said()
    {
        Ended ended = trial.Run("cure", trial.At("none.csv"));
        Assert.Equal((1, ""), (ended.Code, ended.Output));
        Assert.Contains("Name a file that is there", ended.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_text_says_date_loss_and_band()
    {
        string said = trial.Run("cure", File("w.csv", Weather(3))).Output;
        Assert.Contains("if days like the last one follow; four times in five between", said, StringComparison.Ordinal);
        Assert.Contains("Weight lost by then:", said, StringComparison.Ordinal);
        Assert.Contains("of air warmed to 40.6 °C", said, StringComparison.Ordinal);
    }
}
