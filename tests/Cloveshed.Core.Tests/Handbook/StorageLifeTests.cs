using System.Globalization;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Tests.Handbook;

/// <summary>The keeping law against published storage lives and losses; sources are beside the rows.</summary>
public class StorageLifeTests
{
    private static readonly KeepingParameters P = KeepingParameters.Default;

    [Fact]
    public void Shipped_coefficients_are_the_least_squares_fit_to_the_rows()
    {
        KeepingParameters fit = StorageRows.Fit();
        Assert.Equal(fit.SproutPeak, P.SproutPeak, 0.0001);
        Assert.Equal(fit.SproutColdEdgeC, P.SproutColdEdgeC, 0.001);
        Assert.Equal(fit.InhibitorShare, P.InhibitorShare, 0.001);
        Assert.Equal(fit.DecayAtZero, P.DecayAtZero, 0.00001);
        Assert.Equal(fit.ShortLife, P.ShortLife, 0.001);
        Assert.Equal(fit.LongGain, P.LongGain, 0.001);
        // No step of 2% in any fitted number does better.
        double best = StorageRows.SquaredError(P);
        foreach (string name in (string[])["sprout_peak", "sprout_cold_edge_c", "inhibitor_share", "decay_at_zero", "short_life", "long_gain"])
        {
            Assert.True(StorageRows.SquaredError(P.With(name, 1.02)) > best - 1e-6, name);
            Assert.True(StorageRows.SquaredError(P.With(name, 0.98)) > best - 1e-6, name);
        }
    }

    [Fact]
    public void Shipped_weight_losses_are_the_least_squares_fit_to_the_rows()
    {
        KeepingParameters fit = WeightRows.Fit();
        Assert.Equal(fit.LossBase, P.LossBase, 0.00005);
        Assert.Equal(fit.LossPerKpa, P.LossPerKpa, 0.00005);
    }

    [Fact]
    public void Every_published_life_is_met_within_a_quarter()
    {
        foreach (StorageRow row in StorageRows.All)
            Assert.True(Math.Abs(row.Residual(P)) < Math.Log(1.25), row.Name);
    }

    [Fact]
    public void Every_published_loss_is_met_within_an_eighth()
    {
        foreach (WeightRow row in WeightRows.All)
            Assert.True(Math.Abs(row.Residual(P)) < Math.Log(1.125), row.Name);
    }

    [Fact]
    public void The_formula_page_states_the_residuals_that_the_law_has()
    {
        string page = FormulaPage.Read("keeping.md");
        foreach (StorageRow row in StorageRows.All)
            Assert.Contains($"| {row.Name} | {Percent(row.Residual(P))} |", page, StringComparison.Ordinal);
        foreach (WeightRow row in WeightRows.All)
            Assert.Contains($"| {row.Name} | {Percent(row.Residual(P))} |", page, StringComparison.Ordinal);
    }

    [Fact]
    public void Garlic_in_its_best_cold_lasts_over_nine_months_and_in_a_warm_shed_one_to_two_as_UC_Davis_says()
    {
        // UC Davis Produce Facts: Garlic; USDA AH-66.
        Assert.True(LifeWeeks(KeepClass.Long, -0.5, 65) > 39);
        double warm = LifeWeeks(KeepClass.Short, 25, 70) / 4.348;
        Assert.InRange(warm, 1, 2);
    }

    private static double LifeWeeks(KeepClass keeps, double tempC, double rh) =>
        1 / KeepingLaw.LifeUsed(P, new KeepingTraits(keeps, false, true), new Climate(tempC, rh, KeepingLaw.AirO2, KeepingLaw.AirCo2));

    private static string Percent(double residual) =>
        (100 * (Math.Exp(residual) - 1)).ToString("+0;-0;0", CultureInfo.InvariantCulture) + "%";
}
