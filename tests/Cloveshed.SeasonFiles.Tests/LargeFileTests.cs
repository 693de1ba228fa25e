using System.Diagnostics;
using System.Globalization;
using System.Text;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>Files of the wrong size end in a clear answer, soon and without filling the memory. Times are generous: a slow machine passes.</summary>
public sealed class LargeFileTests
{
    private const string Header =
        "lot,place,variety,field,harvested,bins,net,state,net_low,net_high,organic,cured,inhibitor,fresh_share,crack_share,seed_class,mean_g,cv,ready,hold\n";

    [Fact]
    public void Fifty_megabytes_of_lots_are_refused_soon() => RefusedSoon(50);

    [Fact, Trait("size", "full")]
    public void Two_hundred_megabytes_of_lots_are_refused_soon() => RefusedSoon(200);

    private static void RefusedSoon(int megabytes)
    {
        using TemporaryFolder folder = new();
        new SmallSeason().WriteTo(folder.Path);
        using (StreamWriter lots = new(folder["lots.csv"], false, new UTF8Encoding(false)))
        {
            lots.Write(Header);
            for (int lot = 0; lots.BaseStream.Length < megabytes * 1_000_000L; lot++)
                lots.Write(string.Create(CultureInfo.InvariantCulture, $"L{lot},Yard,Early Sorrel,F1,2026-07-20,0.001,54,weighed,53,55,no,yes,no,0.8,0.1,B,52,0.25,,\n"));
        }
        Stopwatch watch = Stopwatch.StartNew();

        SeasonReading reading = SeasonReader.Read(folder.Path);

        Fault fault = Assert.Single(reading.Faults, it => it.Rule == FaultRule.TooManyRows);
        Assert.Equal(("lots.csv", 50_002), (fault.File, fault.Line));
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 60);
    }

    /// <summary>One cell as large as the file, and a file of commas, of quotes, of line ends: each is one clear fault or nothing.</summary>
    [Theory]
    [InlineData("x", FaultRule.TextTooLong)]
    [InlineData(",", null)] // an empty row at the end, as spreadsheets leave them
    [InlineData("\"\"", FaultRule.TextAfterQuote)]
    [InlineData("\n", null)]
    public void Ten_megabytes_of_one_sign_end_soon(string sign, FaultRule? rule)
    {
        string row = string.Concat(Enumerable.Repeat(sign, 10_000_000 / sign.Length));
        string text = rule == FaultRule.TextAfterQuote ? "place,sealed\n\"" + row + "\"x,2026-08-01\n" : "place,sealed\n" + row + (sign == "x" ? ",2026-08-01\n" : "\n");
        SmallSeason season = new SmallSeason().With("rooms.csv", text);
        Stopwatch watch = Stopwatch.StartNew();

        SeasonReading reading = season.Read();

        Assert.Equal(rule, reading.Faults is [var first, ..] ? first.Rule : null);
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 60);
    }

    [Fact]
    public void A_season_of_ordinary_size_is_read_in_well_under_a_second()
    {
        StringBuilder lots = new(Header), orders = new("order,line,customer,product,due,units,price\n"), samples = new("lot,date,weight_g,diameter_mm\n");
        for (int lot = 0; lot < 90; lot++)
            lots.Append(CultureInfo.InvariantCulture, $"L{lot},Yard,Early Sorrel,F1,2026-07-20,1.5,1350,weighed,,,no,yes,no,0.8,0.1,B,52,0.25,,\n");
        for (int order = 0; order < 1500; order++)
            orders.Append(CultureInfo.InvariantCulture, $"O{order},1,Brask Foods,M30,2026-09-24,{order},45.5\n");
        for (int bulb = 0; bulb < 6000; bulb++)
            samples.Append(CultureInfo.InvariantCulture, $"L{bulb % 90},2026-08-01,{40 + bulb % 30},{50 + bulb % 7}.5\n");
        SmallSeason season = new SmallSeason().With("lots.csv", lots.ToString()).With("orders.csv", orders.ToString()).With("samples.csv", samples.ToString());
        season.Read(); // the first reading also compiles the code
        Stopwatch watch = Stopwatch.StartNew();

        SeasonReading reading = season.Read();

        Assert.Equal((90, 1500, 6000), (reading.Season!.Lots.Count, reading.Season.Orders.Count, reading.Season.Samples.Count));
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 1);
    }
}
