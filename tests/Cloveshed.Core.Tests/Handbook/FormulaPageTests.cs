using System.Globalization;
using System.Reflection;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Core.Keep.Stores;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Yard;

namespace Cloveshed.Core.Tests.Handbook;

/// <summary>The numbers that the formula pages print are the code's.</summary>
public class FormulaPageTests
{
    [Fact]
    public void The_lot_page_lists_every_default_with_its_value()
    {
        string page = FormulaPage.Read("lot-knowledge.md");
        foreach (Dial<LotDefaults> dial in LotDefaults.Dials)
            Assert.Contains(Row(dial.Name, dial.Read(LotDefaults.Default)), page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_keeping_page_prints_the_shipped_coefficients()
    {
        string page = FormulaPage.Read("keeping.md");
        foreach (Dial<KeepingParameters> dial in KeepingParameters.Dials)
            Assert.Contains(Row(dial.Name, dial.Read(KeepingParameters.Default)), page, StringComparison.Ordinal);
        foreach (Dial<ClimateDefaults> dial in ClimateDefaults.Dials)
            Assert.Contains(Row(dial.Name, dial.Read(ClimateDefaults.Default)), page, StringComparison.Ordinal);
    }

    [Fact]
    public void The_curing_page_prints_the_shipped_coefficients()
    {
        string page = FormulaPage.Read("curing.md");
        foreach (Dial<CuringParameters> dial in CuringParameters.Dials)
            Assert.Contains(Row(dial.Name, dial.Read(CuringParameters.Default)), page, StringComparison.Ordinal);
        Assert.Equal(typeof(CuringParameters).GetConstructors().Max(c => c.GetParameters().Length), CuringParameters.Dials.Count);
        foreach (Dial<CuringParameters> dial in CuringParameters.Dials)
            Assert.Equal(2 * dial.Read(CuringParameters.Default), dial.Read(CuringParameters.Default.With(dial.Name, 2)), 1e-12);
    }

    [Fact]
    public void The_rooms_page_prints_the_numbers_of_clocks_rooms_and_limits()
    {
        string page = FormulaPage.Read("rooms.md");
        string Text(double value) => value.ToString("0.######", CultureInfo.InvariantCulture);
        Assert.Contains($"| least oxygen, percent | {Text(AtmosphereLimits.LeastO2)} |", page, StringComparison.Ordinal);
        Assert.Contains($"| most oxygen, percent | {Text(AtmosphereLimits.MostO2)} |", page, StringComparison.Ordinal);
        Assert.Contains($"8 hours, ppm | {Text(AtmosphereLimits.WorkdayCo2Ppm)} |", page, StringComparison.Ordinal);
        Assert.Contains($"short-term, ppm | {Text(AtmosphereLimits.ShortTermCo2Ppm)} |", page, StringComparison.Ordinal);
        Assert.Contains($"immediately dangerous, ppm | {Text(AtmosphereLimits.DangerousCo2Ppm)} |", page, StringComparison.Ordinal);
        Assert.Contains($"percent of the lower limit | {Text(AtmosphereLimits.MostFlammable)} |", page, StringComparison.Ordinal);
        Assert.Contains($"by (1 - q) x {Text(BulbLosses.UncuredHeadStart)}, and in injured bulbs it runs {Text(BulbLosses.InjuredHaste)} times", page, StringComparison.Ordinal);
        ClockPrior prior = ClockPrior.Default;
        Assert.Contains($"{Text(prior.Weight)} (weight), {Text(prior.Sprout)} (sprouting), {Text(prior.Decay)} (decay)", page, StringComparison.Ordinal);
        Assert.Contains($"weight x {Text(RoomHeat.HeatAbove)} +", page, StringComparison.Ordinal);
        Assert.Contains($"garlic / {Text(RoomGas.BulbDensity)} kg per m³", page, StringComparison.Ordinal);
        Assert.Contains($"rate x {new RespirationRate(1, 1).HeatWPerTonne.ToString("0.000", CultureInfo.InvariantCulture)} W per tonne", page, StringComparison.Ordinal);
        RoomLimits limits = new();
        Assert.Contains(
            $"{Text(limits.ColdestC)} to {Text(limits.WarmestC)} °C, {Text(limits.DriestRh)} to {Text(limits.DampestRh)}% humidity, {Text(limits.LeastO2)} to {Text(limits.MostO2)}% oxygen and "
            + $"{Text(limits.LeastCo2)} to {Text(limits.MostCo2)}% carbon dioxide in a sealed room, {Text(limits.QuietHours)} hours", page, StringComparison.Ordinal);
        string keeping = FormulaPage.Read("keeping.md");
        Assert.Contains($"long keepers have {Text(StorageLife.LongLife)} for", keeping, StringComparison.Ordinal);
        Assert.Contains($"a factor of {Text(StorageLife.Band)} either way", keeping, StringComparison.Ordinal);
        Assert.Contains($"band {Text(PlantingStock.Band)} either way", keeping, StringComparison.Ordinal);
    }

    /// <summary>Read from the planner itself, most of which is its own affair.</summary>
    [Fact]
    public void The_planning_page_prints_the_planners_numbers_and_names()
    {
        string page = FormulaPage.Read("planning.md");
        Type Inner(string name) => typeof(PathTable).Assembly.GetType($"Cloveshed.Core.Planning.{name}", throwOnError: true)!;
        double Constant(Type of, string name) => Convert.ToDouble(of.GetField(name, BindingFlags.NonPublic | BindingFlags.Static)!.GetRawConstantValue(), CultureInfo.InvariantCulture);
        double step = Constant(typeof(PathTable), "Step");
        Assert.Contains(Row("PathTable.Points", Constant(typeof(PathTable), "Points")), page, StringComparison.Ordinal);
        Assert.Contains(Row("PathTable.Step", step), page, StringComparison.Ordinal);
        Assert.Contains(Row("PolishModel.ChoicesAtMost", Constant(Inner("PolishModel"), "ChoicesAtMost")), page, StringComparison.Ordinal);
        Func<double, double> sound = u => KeepingLaw.SoundShare(KeepingParameters.Default, u);
        double bend = ((double[])typeof(PathTable).GetMethod("BendsDown", BindingFlags.NonPublic | BindingFlags.Static)!.Invoke(null, [sound])!)[0];
        Assert.Contains(Row("bending of the shipped sound share", Math.Round(bend, 3)), page, StringComparison.Ordinal);
        Assert.Contains($"the term is {(bend * step * step / 8).ToString("0.0000000", CultureInfo.InvariantCulture)} of", page, StringComparison.Ordinal);

        string[] columns = [.. Enum.GetNames(Inner("ColumnKind")).Except(["Choice"])];
        string[] rows = [.. Inner("MasterRows").GetProperties(BindingFlags.NonPublic | BindingFlags.Instance).Where(p => p.PropertyType.IsArray).Select(p => p.Name)];
        Assert.True(columns.Length > 10 && rows.Length > 12);
        Assert.All(columns.Concat(rows).Concat(Enum.GetNames<ExitKind>()), name => Assert.Contains($"`{name}`", page, StringComparison.Ordinal));
    }

    private static string Row(string name, double value) => $"| {name} | {value.ToString("0.#####", CultureInfo.InvariantCulture)} |";
}
