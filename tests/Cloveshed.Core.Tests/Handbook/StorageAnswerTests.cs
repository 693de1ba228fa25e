using System.Globalization;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Core.Keep.Stores;
using Cloveshed.Core.Seasons;
using CsCheck;

namespace Cloveshed.Core.Tests.Handbook;

/// <summary>A published storage life, in days of 30.4375 to the month, and the climates and class that it is taken for.</summary>
/// <param name="MostDays">Infinite for "over".</param>
internal sealed record PublishedLife(string Name, GarlicForm Form, KeepClass? Keeps, double FromC, double ToC, double Rh, double LeastDays, double MostDays, string Source)
{
    public override string ToString() => Name;
}

/// <summary>What `keep` answers against every published storage life of the sources at hand, each within its published range.</summary>
public class StorageAnswerTests
{
    private const double Month = 30.4375;
    private static readonly KeepingParameters P = KeepingParameters.Default;

    private static readonly PublishedLife[] Lives =
    [
        new("best cold, over 9 months", GarlicForm.Bulb, null, -1, 0, 65, 9 * Month, double.PositiveInfinity, "UC Davis Produce Facts: Garlic; USDA AH-66: -1 to 0 °C, 60-70%"),
        new("best cold, long keepers, over 9 months", GarlicForm.Bulb, KeepClass.Long, -1, 0, 65, 9 * Month, double.PositiveInfinity, "same"),
        new("ambient, 1-2 months", GarlicForm.Bulb, null, 20, 30, 70, 1 * Month, 2 * Month, "UC Davis; USDA AH-66: 20-30 °C, under 75%"),
        new("ambient, short keepers, 1-2 months", GarlicForm.Bulb, KeepClass.Short, 20, 30, 70, 1 * Month, 2 * Month, "same"),
        new("cold store, 6-7 months", GarlicForm.Bulb, KeepClass.Medium, 0, 0, 65, 6 * Month, 7 * Month, "WFLO Commodity Storage Manual, Garlic, 2018: 32 °F, 60-70%, well cured"),
        new("common storage, 3-4 months", GarlicForm.Bulb, KeepClass.Medium, 22, 22, 50, 3 * Month, 4 * Month, "WFLO 2018; USDA AH-66: California common storage; climate ours"),
        new("cold, 4-9 months", GarlicForm.Bulb, KeepClass.Medium, 0, 2, 65, 4 * Month, 9 * Month, "Embrapa AterMaisDigital: 0-2 °C, 60-70%"),
        new("ambient, long keepers, 4-6 months", GarlicForm.Bulb, KeepClass.Long, 20, 23, 65, 4 * Month, 6 * Month, "Embrapa AterMaisDigital: 20-23 °C"),
        new("ventilated, long keepers, 5-6 months", GarlicForm.Bulb, KeepClass.Long, 27, 27, 65, 5 * Month, 6 * Month, "ICAR-DOGR: ventilated, under 70%; 27 °C ours"),
        new("seed at -3 °C, 6 months", GarlicForm.Seed, KeepClass.Medium, -3, -3, 65, 6 * Month, double.PositiveInfinity, "Volk et al., HortScience 39(3), 2004: fit to plant"),
        new("peeled at 0 °C, 3-4 weeks", GarlicForm.Peeled, null, 0, 0, 95, 21, 28, "Tanamati, Hong and Cantwell, UC Davis 2015"),
        new("peeled at 5 °C, 2-3 weeks", GarlicForm.Peeled, null, 5, 5, 95, 14, 21, "same"),
        new("peeled at 10 °C, 1-2 weeks", GarlicForm.Peeled, null, 10, 10, 95, 7, 14, "same"),
    ];

    public static TheoryData<string> Names => [.. Lives.Select(life => life.Name)];

    private static StorageAnswer Keep(GarlicForm form, double tempC, double rh = 65, KeepClass? keeps = null, double o2 = KeepingLaw.AirO2, double co2 = KeepingLaw.AirCo2, bool inhibitor = false) =>
        StorageLife.Of(new StorageQuestion(form, new Climate(tempC, rh, o2, co2), keeps, inhibitor), P);

    [Theory, MemberData(nameof(Names))]
    public void A_published_life_is_answered_within_its_range(string name)
    {
        PublishedLife life = Lives.Single(l => l.Name == name);
        for (double t = life.FromC; t <= life.ToC; t += 0.25)
        {
            StorageAnswer answer = Keep(life.Form, t, life.Rh, life.Keeps);
            Assert.InRange(answer.LifeDays, life.LeastDays, life.MostDays);
            Assert.True(answer.LifeDaysLow <= answer.LifeDays && answer.LifeDays <= answer.LifeDaysHigh);
        }
    }

    /// <summary>Without a class the band is to reach over every published life of whole bulbs, whoever published it of whatever garlic.</summary>
    [Fact]
    public void Without_a_class_the_band_reaches_over_all_that_is_published()
    {
        foreach (PublishedLife life in Lives.Where(l => l.Form == GarlicForm.Bulb))
        {
            StorageAnswer answer = Keep(GarlicForm.Bulb, (life.FromC + life.ToC) / 2, life.Rh);
            Assert.True(answer.LifeDaysLow <= life.MostDays && answer.LifeDaysHigh >= life.LeastDays, life.Name);
        }
    }

    /// <summary>The formula page prints what comes out.</summary>
    [Fact]
    public void The_page_prints_each_life_and_its_answer()
    {
        string page = FormulaPage.Read("keeping.md");
        foreach (PublishedLife life in Lives)
        {
            StorageAnswer[] ends = [Keep(life.Form, life.FromC, life.Rh, life.Keeps), Keep(life.Form, life.ToC, life.Rh, life.Keeps)];
            string days = string.Join(" to ", ends.Select(a => a.LifeDays.ToString("0", CultureInfo.InvariantCulture)).Distinct());
            Assert.Contains($"| {life.Name} | {days} | {life.Source} |", page, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void The_factor_of_long_keepers_is_the_least_that_over_nine_months_needs()
    {
        double medium = 7 / KeepingLaw.LifeUsed(P, new KeepingTraits(KeepClass.Medium, false, true), new Climate(0, 65, KeepingLaw.AirO2, KeepingLaw.AirCo2));
        Assert.True(medium * StorageLife.LongLife > 9 * 31);
        Assert.True(medium * (StorageLife.LongLife - 0.01) < 9 * 31);
    }

    /// <summary>Student's t of 4 degrees of freedom at 90% is 1.533 (tables; from memory).</summary>
    [Fact]
    public void The_band_is_that_of_the_fits_residuals()
    {
        int freedom = StorageRows.All.Count - 6;
        Assert.Equal(4, freedom);
        Assert.Equal(StorageLife.Band, Math.Exp(1.533 * Math.Sqrt(StorageRows.SquaredError(P) / freedom)), 0.01);
    }

    /// <summary>UC Davis Produce Facts: Garlic, fresh peeled cloves; 122 kcal per tonne and day for each mL: 12 mL are 70.9 W per tonne, 35 to 50 are 207 to 295 (arithmetic).</summary>
    [Theory]
    [InlineData(0, 12, 12)]
    [InlineData(5, 15, 20)]
    [InlineData(10, 35, 50)]
    public void Peeled_cloves_breathe_as_published(double tempC, double low, double high)
    {
        RespirationRate rate = Keep(GarlicForm.Peeled, tempC).Respiration;
        Assert.Equal((low, high), (rate.Low, rate.High));
        Assert.Equal((low + high) / 2 * 122 * 4184 / 86400, rate.HeatWPerTonne, 1e-9);
    }

    [Fact]
    public void Twelve_mL_are_71_W_a_tonne() => Assert.Equal(70.9, Keep(GarlicForm.Peeled, 0).Respiration.HeatWPerTonne, 0.05);

    /// <summary>Cantwell, Acta Hort.: 5 to 15% CO2 in air, or 1 to 3% O2: three weeks at 5 and 10 °C; Future of Food Journal, article 650: 3% O2 with 15% CO2, 20 days at 5 °C, good for 16 at 10 °C.</summary>
    [Fact]
    public void An_atmosphere_keeps_peeled_cloves_about_three_weeks()
    {
        foreach (StorageAnswer answer in (StorageAnswer[])[Keep(GarlicForm.Peeled, 5, co2: 10), Keep(GarlicForm.Peeled, 5, o2: 3, co2: 15), Keep(GarlicForm.Peeled, 5, o2: 2)])
            Assert.InRange(answer.LifeDays, 20, 21);
        StorageAnswer warmer = Keep(GarlicForm.Peeled, 10, o2: 3, co2: 15);
        Assert.InRange(warmer.LifeDays, 16, 21);
        Assert.True(warmer.LifeDaysHigh >= 20.999);
    }

    /// <summary>
    /// M. E. Saltveit, Respiratory metabolism, USDA AH-66: with Q10 of 3.0, 2.5, 2.0, 1.5 per 10 °C from 0 on, relative rates 1, 3, 7.5, 15, 22.5 and lives
    /// 100, 33, 13, 7, 4 at 0 to 40 °C. Garlic's sprouting does not go so; its decay does, with a Q10 within those of 10 to 30 °C (2.0 to 2.5, 1.5 to 2.0).
    /// </summary>
    [Fact]
    public void Decay_goes_by_a_Q10_as_the_handbooks_table()
    {
        double rate = 1;
        (double Q10, double Rate, double Life)[] table = [(3.0, 3.0, 33), (2.5, 7.5, 13), (2.0, 15, 7), (1.5, 22.5, 4)];
        for (int i = 0; i < table.Length; i++)
        {
            KeepingParameters p = P with { DecayQ10 = table[i].Q10 };
            rate *= KeepingLaw.Decay(p, 10 * (i + 1), 65) / KeepingLaw.Decay(p, 10 * i, 65);
            Assert.Equal(table[i].Rate, rate, 1e-9);
            Assert.Equal(table[i].Life, 100 / rate, 0.5);
        }

        Assert.InRange(P.DecayQ10, 2.0, 2.5);
        Assert.InRange(P.DecayQ10, 1.5, 2.0);
        // A single law of this kind from 0 to 20 °C would be wrong for the whole bulb: UC Davis's respiration peaks at 10 °C.
        Assert.True(KeepingLaw.LifeUsed(P, new KeepingTraits(KeepClass.Medium, false, true), new Climate(10, 65, 20.9, 0.04)) > KeepingLaw.LifeUsed(P, new KeepingTraits(KeepClass.Medium, false, true), new Climate(25, 65, 20.9, 0.04)));
    }

    /// <summary>WFLO 2018: lots with maleic hydrazide were held for a year at 32 °F.</summary>
    [Fact]
    public void A_sprout_inhibitor_is_the_strongest_lever()
    {
        Assert.True(Keep(GarlicForm.Bulb, 0, keeps: KeepClass.Medium, inhibitor: true).LifeDays > 365);
        // Stronger than the best atmosphere of the trial, and than half a degree.
        Assert.True(Keep(GarlicForm.Bulb, 10, keeps: KeepClass.Medium, inhibitor: true).LifeDays > 2 * Keep(GarlicForm.Bulb, 10, keeps: KeepClass.Medium).LifeDays);
        Assert.Equal(Keep(GarlicForm.Seed, 10).LifeDays, Keep(GarlicForm.Seed, 10, inhibitor: true).LifeDays);
    }

    /// <summary>USDA AH-66: planting stock keeps best at about 10 °C, 65 to 70%; under 5 °C rough bulbs, over 18 °C late.</summary>
    [Fact]
    public void Seed_is_best_at_ten_degrees_and_warned_outside_of_five_to_eighteen()
    {
        double best = Enumerable.Range(-40, 281).Select(i => i / 10.0).MaxBy(t => Keep(GarlicForm.Seed, t, 67).LifeDays);
        Assert.Equal(10, best, 0.5);
        Assert.True(Keep(GarlicForm.Seed, 10, 67).LifeDays > 5 * Month);
        Assert.Empty(Keep(GarlicForm.Seed, 10, 67).Cautions);
        Assert.Contains(Keep(GarlicForm.Seed, 0, 67).Cautions, c => c.Rule == KeepRule.SeedTooCold);
        Assert.Contains(Keep(GarlicForm.Seed, 22, 67).Cautions, c => c.Rule == KeepRule.SeedTooWarm);
        Assert.Contains(Keep(GarlicForm.Seed, 10, 90).Cautions, c => c.Rule == KeepRule.SeedHumidity);
        Assert.Contains(Keep(GarlicForm.Seed, 10, 67, co2: 10).Cautions, c => c.Rule == KeepRule.SeedAtmosphere);
    }

    /// <summary>UC Davis; USDA AH-66: sprouting is fastest at 5 to 18 °C, so life is shorter there than both in the cold and in warmth.</summary>
    [Fact]
    public void Life_is_shortest_in_the_sprouting_zone()
    {
        foreach (KeepClass? keeps in (KeepClass?[])[null, KeepClass.Short, KeepClass.Medium, KeepClass.Long])
            for (double t = 7; t <= 16; t += 0.5)
                Assert.True(Keep(GarlicForm.Bulb, t, keeps: keeps).LifeDays < Math.Min(Keep(GarlicForm.Bulb, 0, keeps: keeps).LifeDays, Keep(GarlicForm.Bulb, 24, keeps: keeps).LifeDays));
    }

    /// <summary>OSHA 29 CFR 1910.146(b): under 19.5 and over 23.5% oxygen; 5,000 ppm CO2 (OSHA, table Z-1), 30,000 and 40,000 ppm (NIOSH), as secondary pages print them.</summary>
    [Theory]
    [InlineData(19.4, 0.04, KeepRule.OxygenDeficient)]
    [InlineData(23.6, 0.04, KeepRule.OxygenEnriched)]
    [InlineData(20.9, 0.51, KeepRule.CarbonDioxideDay)]
    [InlineData(20.9, 3.1, KeepRule.CarbonDioxideShortTerm)]
    [InlineData(20.9, 4.0, KeepRule.CarbonDioxideDangerous)]
    public void Air_that_harms_people_is_said_first(double o2, double co2, KeepRule rule)
    {
        foreach (GarlicForm form in Enum.GetValues<GarlicForm>())
            Assert.Equal(rule, Keep(form, 0, o2: o2, co2: co2).Cautions[0].Rule);
    }

    [Theory]
    [InlineData(19.5, 0.04)]
    [InlineData(23.5, 0.04)]
    [InlineData(20.9, 0.5)]
    public void The_limits_themselves_are_within(double o2, double co2) =>
        Assert.DoesNotContain(Keep(GarlicForm.Bulb, 0, o2: o2, co2: co2).Cautions, c => c.Rule <= KeepRule.CarbonDioxideDay);

    [Fact]
    public void OSHA_figures_are_as_published()
    {
        Assert.Equal((19.5, 23.5), (AtmosphereLimits.LeastO2, AtmosphereLimits.MostO2));
        Assert.Equal((5_000, 30_000, 40_000), (AtmosphereLimits.WorkdayCo2Ppm, AtmosphereLimits.ShortTermCo2Ppm, AtmosphereLimits.DangerousCo2Ppm));
    }

    [Fact]
    public void Garlics_own_limits_are_warned_of()
    {
        KeepRule[] Rules(StorageAnswer answer) => [.. answer.Cautions.Select(c => c.Rule)];
        Assert.Equal([], Rules(Keep(GarlicForm.Bulb, -0.5)));
        Assert.Equal([KeepRule.MayFreeze], Rules(Keep(GarlicForm.Bulb, -2)));
        Assert.Equal([KeepRule.SproutingZone, KeepRule.Damp], Rules(Keep(GarlicForm.Bulb, 12, 80)));
        Assert.Equal([KeepRule.BeyondPublished, KeepRule.Dry], Rules(Keep(GarlicForm.Bulb, 35, 30)));
        Assert.Contains(KeepRule.CarbonDioxideInjures, Rules(Keep(GarlicForm.Bulb, 0, co2: 16)));
        Assert.Contains(KeepRule.LowOxygenAlone, Rules(Keep(GarlicForm.Bulb, 0, o2: 0.5)));
        Assert.Equal([KeepRule.PeeledTooWarm, KeepRule.PeeledKeepCold], Rules(Keep(GarlicForm.Peeled, 8)));
    }

    [Fact]
    public void Any_climate_has_a_sound_answer() =>
        Gen.Select(Gen.Enum<GarlicForm>(), Gen.Double[-20, 60], Gen.Double[0, 100], Gen.Double[0, 60], Gen.Double[0, 40], Gen.Int[0, 3]).Sample((form, t, rh, o2, co2, k) =>
        {
            StorageAnswer answer = Keep(form, t, rh, k == 3 ? null : (KeepClass)k, o2, co2);
            Assert.True(answer.LifeDaysLow > 0 && answer.LifeDaysLow <= answer.LifeDays && answer.LifeDays <= answer.LifeDaysHigh && double.IsFinite(answer.LifeDaysHigh));
            Assert.True(answer.WeightLossPerWeek is > 0 and <= 0.2);
            Assert.True(answer.Respiration.Low <= answer.Respiration.High);
        });
}
