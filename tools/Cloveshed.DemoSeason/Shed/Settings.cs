using System.Globalization;

namespace Cloveshed.DemoSeason.Shed;

/// <summary>season.json.</summary>
public static class Settings
{
    public static string File() => string.Create(
        CultureInfo.InvariantCulture,
        $$"""
        {
          "contract": 1,
          "name": "Quillon Flat Garlic 2026/27",
          "first_week": "{{Scenario.FirstWeek:uuuu-MM-dd}}",
          "weeks": {{Scenario.Weeks}},
          "mass_unit": "lb",
          "currency": "USD",
          "as_of": "{{Scenario.FirstWeek:uuuu-MM-dd}}",
          "end_price": 0.06,
          "seed": 41
        }

        """).ReplaceLineEndings("\n");
}
