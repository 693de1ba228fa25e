using System.Globalization;
using System.Text;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>All faults in one go: none hides another, and one is not reported twice.</summary>
public sealed class ManyFaultsTests
{
    /// <summary>Every trial that spoils a file of its own, all at once: as many faults as trials.</summary>
    [Fact]
    public void Faults_of_all_files_come_together_in_the_order_of_files_and_lines()
    {
        SeasonReading reading = new SmallSeason().Replace("season.json", "\"weeks\": 10", "\"weeks\": 1e9").Replace("sizes.csv", "L,64,", "L,65,")
            .Replace("lots.csv", "54000,weighed", "-54000,guessed").Replace("lots.csv", "L2,Yard", "L2,Yarn").Append("samples.csv", "L9,2026-08-01,NaN,,\n")
            .Replace("orders.csv", "M30,,2026-09-24,100", "M30,2026-09-25,2026-09-24,1e9").With("market.csv", "product;week;price;p50\nM30;2026-09-14;38;40,5\n").Read();

        Assert.Equal(
            [
                ("season.json", 5, FaultRule.Range), ("sizes.csv", 4, FaultRule.SizeGap), ("lots.csv", 2, FaultRule.Range), ("lots.csv", 2, FaultRule.Word),
                ("lots.csv", 4, FaultRule.Unknown), ("samples.csv", 5, FaultRule.Unknown), ("samples.csv", 5, FaultRule.NotFinite),
                ("orders.csv", 2, FaultRule.ShipFromAfterDue), ("orders.csv", 2, FaultRule.Range), ("market.csv", 1, FaultRule.Separator),
            ],
            reading.Faults.Select(fault => (fault.File, fault.Line!.Value, fault.Rule)));
    }

    [Fact]
    public void A_fault_that_is_found_late_still_stands_in_the_order_of_lines() =>
        Assert.Equal(
            [(3, FaultRule.LotDiffers), (4, FaultRule.Unknown)],
            new SmallSeason().Replace("lots.csv", "F1,2026-07-22", "F3,2026-07-22").Replace("lots.csv", "L2,Yard", "L2,Yarn").Read().Faults
                .Select(fault => (fault.Line!.Value, fault.Rule)));

    [Fact]
    public void A_name_whose_row_is_faulty_or_whose_file_is_lost_is_not_unknown()
    {
        Assert.Equal([FaultRule.Range], new SmallSeason().Replace("lots.csv", "90000,estimated", "0,estimated").Read().Faults.Select(fault => fault.Rule));
        Assert.Equal([FaultRule.FileMissing], new SmallSeason().Without("products.csv").Read().Faults.Select(fault => fault.Rule));
        Assert.Equal([FaultRule.FieldCount], new SmallSeason().Replace("lots.csv", "L2,Yard", "L2,,Yard").Read().Faults.Select(fault => fault.Rule));
        Assert.Equal([FaultRule.ColumnMissing], new SmallSeason().Replace("places.csv", "capacity_bins", "bins").Read().Faults.Select(fault => fault.Rule));
    }

    [Fact]
    public void Faults_beyond_those_named_are_counted()
    {
        StringBuilder samples = new("lot,date,weight_g\n");
        for (int row = 0; row < 1000; row++)
            samples.Append(CultureInfo.InvariantCulture, $"L1,2026-08-01,-{row}\n");
        SeasonReading reading = new SmallSeason().With("samples.csv", samples.ToString()).Replace("yields.csv", "0.8\n", "8\n").Read();

        Assert.Equal(1001, reading.FaultCount);
        Assert.Equal(201, reading.Faults.Count);
        Assert.Contains(reading.Faults, fault => fault.File == "yields.csv"); // a full file leaves room for the others
    }

    [Fact]
    public void Empty_rows_beyond_those_named_are_counted() =>
        Assert.Equal(1000, new SmallSeason().Replace("yields.csv", "crack,", new string('\n', 1000) + "crack,").Read().FaultCount);
}
