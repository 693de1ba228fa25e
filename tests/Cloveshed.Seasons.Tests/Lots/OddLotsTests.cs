using Cloveshed.Core.Keep;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Odd;
using CsCheck;

namespace Cloveshed.Seasons.Tests.Lots;

/// <summary>Lot knowledge and keeping over seasons that are odd on purpose: everything finite, everything sums, every default named once.</summary>
public class OddLotsTests
{
    [Fact]
    public void Any_odd_season_is_known() => OddSeasons.Any.Sample(Look, iter: 60);

    [Fact]
    public void Every_oddity_is_known()
    {
        foreach (Oddity oddity in Oddity.All)
            Look(OddSeasons.Make(oddity, 7));
    }

    private static void Look(Season season)
    {
        LotsKnown known = LotKnowing.Know(season);
        foreach (LotKnowledge k in known.Lots.Values)
        {
            Assert.True(k.MeanG > 0 && double.IsFinite(k.MeanG) && k.Cv >= 0 && double.IsFinite(k.Cv), k.Lot.Text);
            double[] shares = [.. k.ClassShares, k.Under, .. k.GradeShares, k.Ungraded, k.FreshShare, k.CrackShare, k.WasteShare];
            Assert.All(shares, s => Assert.InRange(s, 0, 1));
            Assert.Equal(1, k.ClassShares.Sum() + k.Under, 1e-9);
            Assert.Equal(1, k.GradeShares.Sum() + k.Ungraded, 1e-9);
            Band[] bands = [.. k.ClassBands, k.FreshBand, k.CrackBand, k.WasteBand];
            Assert.All(bands, b => Assert.True(b.Low >= 0 && b.Low <= b.High && b.High <= 1, $"{k.Lot.Text} {b}"));
        }

        foreach (LotRow row in season.Lots)
        {
            SoundShares shares = known.Lots[row.Lot].SharesOf(row);
            Assert.True(shares.Fresh >= 0 && shares.Crack >= 0 && shares.Fresh + shares.Crack <= 1 + 1e-12);
            Place place = season.Places.Single(p => p.Id == row.Place);
            double life = LifeAtStart.Of(season, place, row, KeepingParameters.Default, ClimateDefaults.Default);
            Assert.True(life >= 0 && double.IsFinite(life));
            Assert.InRange(KeepingLaw.SoundShare(KeepingParameters.Default, life), double.Epsilon, 1);
        }

        string[] names = [.. known.Defaults.Concat(PlaceClimate.DefaultsTaken(season, ClimateDefaults.Default)).Concat(LotTraits.DefaultsTaken(season)).Select(d => d.Name)];
        Assert.Equal(names.Distinct(), names);
    }
}
