using System.Globalization;
using System.Reflection;
using Cloveshed.Core.Keep;
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
        Assert.Contains(Row("Polish.ChoicesAtMost", Constant(Inner("Polish"), "ChoicesAtMost")), page, StringComparison.Ordinal);
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
