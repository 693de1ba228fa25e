using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;
using CsCheck;

namespace Cloveshed.Core.Tests.Shift;

/// <summary>What each shift gets of a run that is split over several; common sense of a sheet, no published source: parts are whole and add up.</summary>
public class RunSharesTests
{
    private static readonly ProductId Jumbo = HandWeek.Jumbo, Peeled = new("PEELED");

    [Fact]
    public void Parts_follow_the_minutes_and_add_up()
    {
        // 300, 480 and 20 of 800 minutes: of 41 bins 15.375, 24.6 and 1.025; of 1,001 units 375.375, 600.6, 25.025. Largest remainder gives what is left to the second.
        IReadOnlyList<RunShare> shares = RunShares.Of(Run(40.2, new RunMakes(Jumbo, 1000.6), new RunMakes(Peeled, 0.4)), [300, 480, 20], 16_080);

        Assert.Equal([15L, 25, 1], shares.Select(share => share.Bins));
        Assert.All(shares, share => Assert.Equal(41, share.OfBins));
        Assert.Equal([6030L, 9648, 402], shares.Select(share => share.Mass));
        Assert.Equal([375L, 601, 25], shares.Select(share => Assert.Single(share.Makes).Units));
        Assert.All(shares, share => Assert.Equal((Jumbo, 1001L), (share.Makes[0].Product, share.Makes[0].OfUnits)));
    }

    [Fact]
    public void Of_pieces_alike_the_earlier_gets_what_is_left_over() =>
        Assert.Equal([(1L, 3L), (1, 2), (1, 2)], RunShares.Of(Run(3.0000001, new RunMakes(Jumbo, 7)), [60, 60, 60], 100).Select(share => (share.Bins, share.Makes[0].Units)));

    [Fact]
    public void A_run_in_one_piece_has_all_of_it()
    {
        RunShare whole = Assert.Single(RunShares.Of(Run(0, new RunMakes(Jumbo, 12.5)), [1], 0));
        Assert.Equal((0L, 0L, 13L), (whole.Bins, whole.Mass, whole.Makes[0].Units));
    }

    [Fact]
    public void Nothing_is_lost_however_it_is_split() => Gen.Select(Gen.Int[0, 900].Array[1, 12].Where(minutes => minutes.Sum() > 0), Gen.Double[0, 500], Gen.Double[0, 9000], Gen.Long[0, 1_000_000]).Sample((minutes, bins, units, mass) =>
    {
        IReadOnlyList<RunShare> shares = RunShares.Of(Run(bins, new RunMakes(Jumbo, units)), minutes, mass);
        return shares.Sum(share => share.Bins) == shares[0].OfBins && shares[0].OfBins >= bins - 1e-6 && shares[0].OfBins < bins + 1
            && shares.Sum(share => share.Mass) == mass
            && shares.Sum(share => share.Makes.Sum(made => made.Units)) == shares[0].Makes.Sum(made => made.OfUnits)
            && shares.Zip(minutes).All(one => one.Second > 0 || (one.First.Bins == 0 && one.First.Mass == 0));
    });

    private static ShiftRun Run(double bins, params RunMakes[] makes) =>
        new("R1", new LineId("Pack 1"), LineMode.Fresh, new LotId("26-001"), null, false, false, [], 1, bins, 60, "JU", makes, []);
}
