using System.Text;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Weighing;
using Cloveshed.SeasonFiles.Yard;
using Cloveshed.Core.Yard;
using NodaTime;

namespace Cloveshed.SeasonFiles.Tests.Rooms;

/// <summary>Weather by the hour and sacks' weights from files: all rows, or every fault at once and no row.</summary>
public sealed class YardFileTests
{
    private static readonly TimeZoneInfo Sorrel = TimeZoneInfo.CreateCustomTimeZone("Sorrel", TimeSpan.FromHours(-4.5), "Sorrel", "Sorrel");
    private static readonly DateTimeOffset Latest = new(2026, 9, 2, 10, 0, 0, TimeSpan.FromHours(-4.5));

    private static FileReading<IReadOnlyList<WeatherRow>> Weather(string text) => WeatherHoursFile.Parse("w.csv", Encoding.UTF8.GetBytes(text), Sorrel, Latest, TextLanguage.English);

    private static FileReading<IReadOnlyList<SackRow>> Sacks(string text) => SackWeightsFile.Parse("s.csv", Encoding.UTF8.GetBytes(text), ["L1", "L2"], Sorrel, Latest, TextLanguage.English);

    [Fact]
    public void Weather_comes_in_the_order_of_time_by_the_sheds_clock()
    {
        IReadOnlyList<WeatherRow> rows = Weather("rh,at,temp_c,rain_mm,wind_ms,forced_c\n60,2026-08-01T19:30:00Z,24,0.5,1.2,40\n80,2026-08-01 06:00,14,,,\n").Value!;
        Assert.Equal([new(new LocalDateTime(2026, 8, 1, 6, 0), 14, 80), new(new LocalDateTime(2026, 8, 1, 15, 0), 24, 60, 0.5, 1.2, 40)], rows);
    }

    [Fact]
    public void Every_fault_of_the_weather_is_told_at_once()
    {
        FileReading<IReadOnlyList<WeatherRow>> reading = Weather(
            "at,temp_c,rh,rain_mm\n2026-08-01 06:00,74,80,0\n2026-08-01 07:00,14,101,0\nnoon,14,80,0\n2026-12-01 06:00,14,80,0\n2026-08-01 08:00,14,,0\n2026-08-01 09:00,14,80,-1\n2026-08-01 10:00,14,80,0\n2026-08-01 10:00,15,80,0\n");
        Assert.Null(reading.Value);
        Assert.Equal(
            [(2, FaultRule.CelsiusRange), (3, FaultRule.PercentRange), (4, FaultRule.Moment), (5, FaultRule.MomentAhead), (6, FaultRule.CellEmpty), (7, FaultRule.Range), (9, FaultRule.KeyTwice)],
            reading.Faults.Select(fault => (fault.Line!.Value, fault.Rule)));
        Assert.Equal(FaultRule.ColumnMissing, Assert.Single(Weather("at,temp_c\n2026-08-01 06:00,14\n").Faults).Rule);
    }

    [Fact]
    public void Sacks_are_of_the_seasons_lots_and_weighed_once_a_moment()
    {
        Assert.Equal([31.5, 30.2], Sacks("lot,sack,at,weight\nL1,A,2026-08-01 08:00,31.5\nL2,A,2026-08-01 08:00,30.2\n").Value!.Select(row => row.Weight));
        FileReading<IReadOnlyList<SackRow>> reading = Sacks("lot,sack,at,weight\nL9,A,2026-08-01 08:00,31.5\nL1,,2026-08-01 08:00,31\nL1,A,2026-08-01 08:00,0\nL1,B,2026-08-01 08:00,9\nL1,B,2026-08-01 08:00,8\n");
        Assert.Equal([(2, FaultRule.Unknown), (3, FaultRule.CellEmpty), (4, FaultRule.Range), (6, FaultRule.KeyTwice)], reading.Faults.Select(fault => (fault.Line!.Value, fault.Rule)));
    }
}
