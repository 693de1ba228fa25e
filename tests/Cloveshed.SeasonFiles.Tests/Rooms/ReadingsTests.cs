using System.Text;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Rooms;
using Cloveshed.SeasonFiles.Weighing;

namespace Cloveshed.SeasonFiles.Tests.Rooms;

/// <summary>Readings of air from a file: all rows, or every fault at once and no row.</summary>
public sealed class ReadingsTests
{
    private static readonly TimeZoneInfo Sorrel = TimeZoneInfo.CreateCustomTimeZone("Sorrel", TimeSpan.FromHours(-4.5), "Sorrel", "Sorrel");

    private static FileReading<IReadOnlyList<ReadingRow>> Read(string text, bool needsWho = false, TextLanguage language = TextLanguage.English) => ReadingsFile.Parse(
        "logger.csv", Encoding.UTF8.GetBytes(text), new ReadingsAsked(["Cold 1", "Sealed A"], Sorrel, new DateTimeOffset(2026, 9, 2, 10, 0, 0, TimeSpan.FromHours(-4.5)), needsWho), language);

    [Fact]
    public void Columns_come_in_any_order_and_moments_in_each_form()
    {
        IReadOnlyList<ReadingRow> rows = Read(
            "at,place,rh,temp_c,o2,co2,who,instrument\n2026-09-01 08:00,Cold 1,65,0.2,,,K7,probe 3\n2026-09-01T12:30:00Z,Sealed A,,,1.1,9.5,,\n2026-09-01T08:00:15-05:00,Cold 1,,-0.4,,,,\n").Value!;
        Assert.Equal([new DateTimeOffset(2026, 9, 1, 8, 0, 0, TimeSpan.FromHours(-4.5)), new DateTimeOffset(2026, 9, 1, 12, 30, 0, TimeSpan.Zero), new DateTimeOffset(2026, 9, 1, 8, 0, 15, TimeSpan.FromHours(-5))], rows.Select(row => row.At));
        Assert.Equal((0.2, 65.0, null, "K7", "probe 3"), (rows[0].TempC!.Value, rows[0].Rh!.Value, rows[0].O2, rows[0].Who, rows[0].Instrument));
        Assert.Equal((null, 1.1, 9.5, null), (rows[1].TempC, rows[1].O2!.Value, rows[1].Co2!.Value, rows[1].Who));
    }

    [Fact]
    public void Every_fault_is_told_at_once_with_its_line_and_no_row_is_taken()
    {
        FileReading<IReadOnlyList<ReadingRow>> reading = Read(
            "place,at,temp_c,rh\nCold 1,2026-09-01 08:00,0.2,65\nCold 9,2026-09-01 08:00,0.2,65\nCold 1,yesterday,0.2,65\nCold 1,2026-09-02 10:01,0.2,65\nCold 1,2026-09-01 09:00,75,65\nCold 1,2026-09-01 10:00,,\nCold 1,2026-09-01 08:00,0.3,65\n");
        Assert.Null(reading.Value);
        Assert.Equal(
            [(3, FaultRule.Unknown, "place", "Cold 9"), (4, FaultRule.Moment, "at", "yesterday"), (5, FaultRule.MomentAhead, "at", "2026-09-02 10:01"), (6, FaultRule.CelsiusRange, "temp_c", "75"), (7, FaultRule.OneCellOf, "temp_c, rh, o2, co2", null), (8, FaultRule.KeyTwice, "place, at", "Cold 1, 2026-09-01 08:00")],
            reading.Faults.Select(fault => (fault.Line!.Value, fault.Rule, fault.Column!, fault.Value)));
        Assert.All(reading.Faults, fault => Assert.EndsWith(".", fault.Remedy, StringComparison.Ordinal));
    }

    [Fact]
    public void Who_is_asked_of_each_row_where_nobody_is_named_for_the_file()
    {
        const string Rows = "place,at,temp_c,who\nCold 1,2026-09-01 08:00,0.2,K7\nCold 1,2026-09-01 09:00,0.2,\n";
        Assert.Equal((3, FaultRule.CellEmpty, "who"), Assert.Single(Read(Rows, needsWho: true).Faults) is var fault ? (fault.Line!.Value, fault.Rule, fault.Column!) : default);
        Assert.Equal(2, Read(Rows).Value!.Count);
        Assert.Equal(FaultRule.ColumnMissing, Assert.Single(Read("place,at,temp_c\nCold 1,2026-09-01 08:00,0.2\n", needsWho: true).Faults).Rule);
    }

    [Fact]
    public void Spanish_says_the_same_faults_in_its_own_words()
    {
        const string Rows = "place,at,temp_c\nCold 1,mañana,0.2\nCold 1,2026-12-01 08:00,0.2\n";
        foreach ((Fault english, Fault spanish) in Read(Rows).Faults.Zip(Read(Rows, language: TextLanguage.Spanish).Faults))
        {
            Assert.Equal((english.Rule, english.Line, english.Column, english.Value), (spanish.Rule, spanish.Line, spanish.Column, spanish.Value));
            Assert.NotEqual((english.Expected, english.Remedy), (spanish.Expected, spanish.Remedy));
        }
    }
}
