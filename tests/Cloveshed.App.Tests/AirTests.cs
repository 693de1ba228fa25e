using System.Text.Json;

namespace Cloveshed.App.Tests;

/// <summary>air on the command line; its equations are tested with the core.</summary>
public sealed class AirTests : IDisposable
{
    private readonly Trial trial = new();

    public void Dispose() => trial.Dispose();

    /// <summary>ASHRAE Handbook, Fundamentals 2017, ch. 1, tables 2 and 3 at 25 °C (as quoted in a public test file): p_ws 3169.7 Pa to 0.03%, W_s 0.020173, h_s 76504 J/kg to 0.5%.</summary>
    [Fact]
    public void Json_has_the_keys_of_the_contract_in_SI_units()
    {
        Ended ended = trial.Run("air", "--temp", "25", "--rh", "100", "--json");
        Assert.Equal((0, ""), (ended.Code, ended.Error));
        using JsonDocument answer = JsonDocument.Parse(ended.Output);
        double Of(string key) => answer.RootElement.GetProperty(key).GetDouble();
        Assert.Equal(1, Of("p_ws") / 3169.7, 0.0003);
        Assert.Equal(Of("p_ws"), Of("p_w"), 1e-9);
        Assert.Equal(0, Of("vpd"), 1e-9);
        Assert.Equal(1, Of("humidity_ratio") / 0.020173, 0.005);
        Assert.Equal(1, Of("enthalpy") / 76504, 0.005);
        Assert.Equal(25, Of("dew_point"), 1e-6);
        Assert.Equal(25, Of("wet_bulb"), 1e-6);
        Assert.InRange(Of("volume"), 0.868, 0.875);
    }

    /// <summary>Same chapter, standard atmosphere at 500 m; W = 0.621945 p_w / (p - p_w) (arithmetic).</summary>
    [Fact]
    public void Pressure_counts_and_dry_air_has_no_dew_point()
    {
        using JsonDocument high = JsonDocument.Parse(trial.Run("air", "--temp", "20", "--rh", "60", "--pressure", "95461", "--json").Output);
        double vapour = high.RootElement.GetProperty("p_w").GetDouble();
        Assert.Equal(0.621945 * vapour / (95461 - vapour), high.RootElement.GetProperty("humidity_ratio").GetDouble(), 1e-12);
        using JsonDocument dry = JsonDocument.Parse(trial.Run("air", "--temp", "20", "--rh", "0", "--json").Output);
        Assert.Equal(JsonValueKind.Null, dry.RootElement.GetProperty("dew_point").ValueKind);
        Assert.Contains("No dew point", trial.Run("air", "--temp", "20", "--rh", "0").Output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("air --temp 20", "--rh PCT is missing.")]
    [InlineData("air --temp 20 --rh 100.5", "--rh wants a number from 0 to 100")]
    [InlineData("air --temp 201 --rh 10", "--temp wants a number from -100 to 200")]
    [InlineData("air --temp 20 --rh 10 --pressure 0", "--pressure wants a number from 1000")]
    [InlineData("air --temp 120 --rh 90", "its vapour alone would have more pressure")]
    public void What_cannot_be_ends_with_2(string line, string said)
    {
        Ended ended = trial.Run(line.Split(' '));
        Assert.Equal((2, ""), (ended.Code, ended.Output));
        Assert.Contains(said, ended.Error, StringComparison.Ordinal);
        Assert.Equal(1, ended.Error.Count(c => c == '\n'));
    }

    [Fact]
    public void The_manuals_example_is_what_is_said() =>
        Assert.Contains(string.Join('\n', trial.Run("air", "--temp", "30", "--rh", "50").Output.ReplaceLineEndings("\n").TrimEnd().Split('\n').Select(line => "    " + line)), Manual.Page("air"), StringComparison.Ordinal);
}
