using Cloveshed.Core.Keep;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using CsCheck;

namespace Cloveshed.Core.Tests.Keep;

public class KeepingLawTests
{
    private static readonly KeepingParameters P = KeepingParameters.Default;
    private static readonly Gen<Climate> Airs = Gen.Select(Gen.Double[-4, 45], Gen.Double[0, 100], (t, rh) => new Climate(t, rh, KeepingLaw.AirO2, KeepingLaw.AirCo2));
    private static readonly Gen<KeepingTraits> Traits = Gen.Select(Gen.Enum<KeepClass>(), Gen.Bool, Gen.Bool, (k, i, c) => new KeepingTraits(k, i, c));

    // The shipped numbers and each of them a fifth up and down: what the planner will ask about.
    private static readonly KeepingParameters[] Turned =
        [P, .. KeepingParameters.Names.SelectMany(n => (KeepingParameters[])[P.With(n, 0.8), P.With(n, 1.2)])];

    private static readonly Gen<KeepingParameters> Parameters = Gen.Int[0, Turned.Length - 1].Select(i => Turned[i]);

    [Fact]
    public void A_week_takes_weight_and_life_within_the_contracts_bounds() =>
        Gen.Select(Parameters, Traits, Airs, Gen.Int[-5, 80]).Sample((p, traits, air, weeks) =>
        {
            WeekOfKeeping week = KeepingLaw.Week(p, traits, air, weeks);
            Assert.True(week.WeightLoss is > 0.0005 and <= 0.2);
            Assert.True(week.LifeUsed > 0 && double.IsFinite(week.LifeUsed));
        });

    [Fact]
    public void Sound_share_starts_whole_loses_a_fifth_in_one_life_and_only_falls() =>
        Gen.Select(Parameters, Gen.Double[0, 300], Gen.Double[0.001, 5]).Sample((p, life, more) =>
        {
            Assert.Equal(1, KeepingLaw.SoundShare(p, 0));
            Assert.Equal(0.8, KeepingLaw.SoundShare(p, 1), 1e-12);
            double now = KeepingLaw.SoundShare(p, life), later = KeepingLaw.SoundShare(p, life + more);
            Assert.True(later < now, $"{now} at {life}, {later} {more} on");
            Assert.True(later > 0);
        });

    [Fact]
    public void The_sound_share_has_no_step_where_its_tail_begins() =>
        Assert.Equal(KeepingLaw.SoundShare(P, 3), KeepingLaw.SoundShare(P, 3 + 1e-9), 1e-10);

    [Fact]
    public void A_colder_room_always_decays_slower_and_dries_slower() =>
        Gen.Select(Parameters, Traits, Airs, Gen.Double[0.1, 10]).Sample((p, traits, air, colder) =>
        {
            Climate cold = air with { TempC = air.TempC - colder };
            Assert.True(KeepingLaw.Decay(p, cold.TempC, cold.Rh) < KeepingLaw.Decay(p, air.TempC, air.Rh));
            Assert.True(KeepingLaw.WeightLoss(p, traits, cold, 10) <= KeepingLaw.WeightLoss(p, traits, air, 10));
        });

    [Fact]
    public void Damp_over_70_percent_never_helps_against_decay() =>
        Gen.Select(Parameters, Gen.Double[-4, 45], Gen.Double[0, 99], Gen.Double[0.1, 30]).Sample((p, t, rh, more) =>
        {
            double dry = KeepingLaw.Decay(p, t, rh), damp = KeepingLaw.Decay(p, t, rh + more);
            Assert.True(rh + more > 70 ? damp > dry : damp == dry);
        });

    [Fact]
    public void An_inhibitor_never_shortens_life_nor_does_curing() =>
        Gen.Select(Parameters, Traits, Airs).Sample((p, traits, air) =>
        {
            Assert.True(KeepingLaw.LifeUsed(p, traits with { Inhibitor = true }, air) < KeepingLaw.LifeUsed(p, traits with { Inhibitor = false }, air));
            Assert.True(KeepingLaw.LifeUsed(p, traits with { Cured = true }, air) < KeepingLaw.LifeUsed(p, traits with { Cured = false }, air));
            for (int weeks = 0; weeks < 10; weeks++)
                Assert.True(KeepingLaw.WeightLoss(p, traits with { Cured = true }, air, weeks) <= KeepingLaw.WeightLoss(p, traits with { Cured = false }, air, weeks));
        });

    [Fact]
    public void Short_keeps_shorter_than_medium_and_medium_than_long() =>
        Gen.Select(Parameters, Traits, Airs).Sample((p, traits, air) =>
        {
            double Used(KeepClass keeps) => KeepingLaw.LifeUsed(p, traits with { Keeps = keeps }, air);
            Assert.True(Used(KeepClass.Short) > Used(KeepClass.Medium) && Used(KeepClass.Medium) > Used(KeepClass.Long));
        });

    [Fact]
    public void An_atmosphere_never_keeps_worse_than_air_and_carbon_dioxide_helps_up_to_15_percent() =>
        Gen.Select(Parameters, Traits, Airs, Gen.Double[0, 30], Gen.Double[0, 40]).Sample((p, traits, air, o2, co2) =>
        {
            Climate sealedAir = air with { O2 = o2, Co2 = co2 };
            WeekOfKeeping inside = KeepingLaw.Week(p, traits, sealedAir, 5), outside = KeepingLaw.Week(p, traits, air, 5);
            Assert.True(inside.LifeUsed <= outside.LifeUsed && inside.WeightLoss <= outside.WeightLoss);
            Assert.True(KeepingLaw.LifeUsed(p, traits, sealedAir with { Co2 = co2 + 2 }) <= inside.LifeUsed);
        });

    /// <summary>UC Davis Produce Facts: Garlic and USDA AH-66 (fastest at 5 to 18 °C); H. D. Rabinowitch and J. L. Brewster (between 15 and 30 °C time to sprouting rises).</summary>
    [Fact]
    public void Sprouting_is_fastest_between_5_and_18_degrees_and_not_a_rising_law()
    {
        foreach (KeepingParameters p in Turned)
        {
            double fastest = Enumerable.Range(-40, 840).Select(i => i / 20.0).MaxBy(t => KeepingLaw.Sprouting(p, t));
            Assert.InRange(fastest, 5, 18);
            Assert.True(KeepingLaw.Sprouting(p, 10) > KeepingLaw.Sprouting(p, 0) && KeepingLaw.Sprouting(p, 10) > KeepingLaw.Sprouting(p, 25));
            for (int t = 16; t < 40; t++)
                Assert.True(KeepingLaw.Sprouting(p, t + 1) < KeepingLaw.Sprouting(p, t));
            Assert.True(KeepingLaw.Sprouting(p, -2) < KeepingLaw.Sprouting(p, 0));
        }

        // As shipped, the whole published window is faster than anywhere outside of it.
        double slowestInside = Math.Min(KeepingLaw.Sprouting(P, 5), KeepingLaw.Sprouting(P, 18));
        Assert.True(slowestInside > KeepingLaw.Sprouting(P, 0) && slowestInside > KeepingLaw.Sprouting(P, 25));
    }

    [Theory]
    [InlineData(KeepClass.Short, false)]
    [InlineData(KeepClass.Medium, false)]
    [InlineData(KeepClass.Long, false)]
    [InlineData(KeepClass.Long, true)]
    public void Life_at_10_degrees_is_shorter_than_at_0_and_at_0_than_at_minus_2(KeepClass keeps, bool inhibitor)
    {
        double Used(double t) => KeepingLaw.LifeUsed(P, new KeepingTraits(keeps, inhibitor, true), new Climate(t, 65, KeepingLaw.AirO2, KeepingLaw.AirCo2));
        Assert.True(Used(10) > Used(0));
        Assert.True(Used(0) > Used(-2));
    }

    [Fact]
    public void Uncured_garlic_loses_its_field_water_in_its_first_weeks_only()
    {
        var uncured = new KeepingTraits(KeepClass.Medium, false, false);
        var cured = uncured with { Cured = true };
        var yard = new Climate(25, 40, KeepingLaw.AirO2, KeepingLaw.AirCo2);
        Assert.True(KeepingLaw.WeightLoss(P, uncured, yard, 0) > 2 * KeepingLaw.WeightLoss(P, cured, yard, 0));
        Assert.Equal(KeepingLaw.WeightLoss(P, cured, yard, 4), KeepingLaw.WeightLoss(P, uncured, yard, 4));
    }

    [Fact]
    public void Every_coefficient_turns_by_itself()
    {
        foreach (Dial<KeepingParameters> dial in KeepingParameters.Dials)
        {
            KeepingParameters turned = P.With(dial.Name, 1.2);
            foreach (Dial<KeepingParameters> other in KeepingParameters.Dials)
                Assert.Equal(other.Read(P) * (other.Name == dial.Name ? 1.2 : 1), other.Read(turned), 1e-12);
        }

        Assert.Equal(typeof(KeepingParameters).GetConstructors().Max(c => c.GetParameters().Length), KeepingParameters.Names.Count);
        Assert.Throws<ArgumentException>(() => P.With("no such coefficient", 1));
    }

    [Fact]
    public void Every_coefficient_matters_somewhere()
    {
        Climate[] airs =
        [
            new(-2, 65, KeepingLaw.AirO2, KeepingLaw.AirCo2), new(12, 80, 1, 10), new(28, 90, KeepingLaw.AirO2, KeepingLaw.AirCo2),
        ];
        KeepingTraits[] traits =
            [.. Enum.GetValues<KeepClass>().SelectMany(k => (KeepingTraits[])[new(k, false, false), new(k, true, true)])];
        double Sum(KeepingParameters p) => airs.Sum(a => traits.Sum(t =>
            KeepingLaw.Week(p, t, a, 0).WeightLoss + KeepingLaw.Week(p, t, a, 4).WeightLoss
            + KeepingLaw.LifeUsed(p, t, a))) + KeepingLaw.SoundShare(p, 0.7);
        foreach (string name in KeepingParameters.Names)
            Assert.True(Math.Abs(Sum(P.With(name, 1.2)) - Sum(P)) > 1e-6, name);
    }
}
