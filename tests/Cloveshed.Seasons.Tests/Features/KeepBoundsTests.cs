using Cloveshed.Core.Keep;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Features;

/// <summary>
/// The bounds of the keeping features take it that a week takes 0.05 to 5% of a lot's weight and fitness together and two weeks
/// at most 15%. If the keeping law ever says otherwise, it is said here and not as a plan of the wrong value.
/// </summary>
public sealed class KeepBoundsTests
{
    [Fact]
    public void The_keeping_law_stays_within_what_the_features_assume()
    {
        foreach (Place place in new[] { Tiny.Yard, Tiny.Cold, Tiny.Room })
        {
            Assert.InRange(Left(place, 1), 0.95, 0.9995);
            Assert.InRange(Left(place, 2), 0.85, 0.9995 * 0.9995);
        }
        // Unsealed for thirty weeks: a ninth of the lot must still be there.
        Assert.True(Left(Tiny.Room, 30) > 2.0 / 9);
    }

    /// <summary>Weight times sound share after so many weeks, of the first week's start.</summary>
    private static double Left(Place place, int weeks)
    {
        Season season = Tiny.Shed(weeks + 1, Tiny.Lot("A", 1000) with { Place = place.Id }) with { Places = [place] };
        KeepingParameters law = KeepingParameters.Default;
        ClimateDefaults defaults = ClimateDefaults.Default;
        double start = LifeAtStart.Of(season, place, season.Lots[0], law, defaults), life = start, weight = 1;
        for (int week = 0; week < weeks; week++)
        {
            WeekOfKeeping lost = KeepingLaw.Week(law, LotTraits.Of(season, season.Lots[0]), PlaceClimate.Of(season, place, week, false, defaults), week + 1);
            weight *= 1 - lost.WeightLoss;
            life += lost.LifeUsed;
        }
        return weight * KeepingLaw.SoundShare(law, life) / KeepingLaw.SoundShare(law, start);
    }
}
