using System.Globalization;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Tests.Today;
using CsCheck;

namespace Cloveshed.Web.Tests.Keep;

/// <summary>What a row reads after some of it was found spoiled.</summary>
public sealed class SpoiledTests
{
    /// <summary>60 bins, 54,000 lb between 53,000 and 55,000; 0.8 makes grade, 0.1 is for the cracker.</summary>
    private static readonly LotRow Row = HandDay.Season.Lots[0];

    private static readonly SoundShares Shares = new(0.8, 0.1);

    [Fact]
    public void Thrown_out_the_weight_goes_and_the_rest_keeps_its_shares()
    {
        SpoiledRow after = SpoiledRow.Of(new SpoiledFound(Row, Shares, 4000, true, 5))!;
        Assert.Equal((50_000, 55, 0.8, 0.1, false), (after.Net, after.Bins, after.Fresh, after.Crack, after.Gone));
        Assert.Equal(new Dictionary<string, string> { ["net"] = "50000", ["net_low"] = "49000", ["net_high"] = "51000", ["bins"] = "55" }, after.Cells);
    }

    [Fact]
    public void Still_in_the_bins_the_weight_stays_and_both_sound_shares_fall()
    {
        SpoiledRow after = SpoiledRow.Of(new SpoiledFound(Row, Shares, 5400, false, 0))!;
        Assert.Equal((54_000, 60, false), (after.Net, after.Bins, after.Gone));
        Assert.Equal(new Dictionary<string, string> { ["fresh_share"] = "0.72", ["crack_share"] = "0.09" }, after.Cells);
    }

    [Fact]
    public void All_of_it_thrown_out_is_gone() => Assert.True(SpoiledRow.Of(new SpoiledFound(Row, Shares, 54_000, true, 60))!.Gone);

    [Theory]
    [InlineData(0, 0)]
    [InlineData(-1, 0)]
    [InlineData(54_001, 0)]
    [InlineData(100, 61)]
    [InlineData(100, -1)]
    public void None_or_more_than_stands_there_is_no_answer(double mass, double bins) => Assert.Null(SpoiledRow.Of(new SpoiledFound(Row, Shares, mass, true, bins)));

    [Fact]
    public void Either_way_what_is_sound_falls_by_the_sound_part_of_what_spoiled() => Gen.Select(Gen.Double[1, 53_999], Gen.Double[0, 1], Gen.Double[0, 1]).Sample((mass, fresh, rest) =>
    {
        SoundShares shares = new(fresh, (1 - fresh) * rest);
        SpoiledRow thrown = SpoiledRow.Of(new SpoiledFound(Row, shares, mass, true, 0))!, kept = SpoiledRow.Of(new SpoiledFound(Row, shares, mass, false, 0))!;
        double expected = (54_000 - mass) * (shares.Fresh + shares.Crack);
        // The cells hold six digits of a share, which is a twentieth of a pound here.
        return Math.Abs(thrown.Sound - expected) < 1e-6 && Math.Abs(kept.Sound - expected) < 54_000 * 1e-6;
    });

    [Fact]
    public void What_is_written_is_what_is_shown() => Gen.Select(Gen.Double[1, 53_999], Gen.Bool).Sample((mass, thrown) =>
    {
        SpoiledRow after = SpoiledRow.Of(new SpoiledFound(Row, Shares, mass, thrown, 0))!;
        double Cell(string name, double otherwise) => after.Cells.TryGetValue(name, out string? text) ? double.Parse(text, CultureInfo.InvariantCulture) : otherwise;
        return Math.Abs(Cell("net", Row.Net) - after.Net) < 1e-6 && Math.Abs(Cell("fresh_share", Shares.Fresh) - after.Fresh) < 1e-9 && Math.Abs(Cell("crack_share", Shares.Crack) - after.Crack) < 1e-9
            && Cell("net_low", 0) <= Cell("net", 54_000) && Cell("net_high", 55_000) >= Cell("net", 54_000);
    });
}
