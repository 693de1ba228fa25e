using System.Globalization;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Lots;

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

    private static string Row(string name, double value) => $"| {name} | {value.ToString("0.#####", CultureInfo.InvariantCulture)} |";
}
