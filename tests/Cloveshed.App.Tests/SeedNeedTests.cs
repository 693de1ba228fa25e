using System.Text.Json;

namespace Cloveshed.App.Tests;

/// <summary>seed-need on the command line; the arithmetic itself is tested with the core.</summary>
public sealed class SeedNeedTests : IDisposable
{
    private readonly Trial trial = new();

    public void Dispose() => trial.Dispose();

    /// <summary>43,560 x 144 x 4 / (40 x 4) plants to the acre; 4 g each over 453.59237 g to the pound (arithmetic).</summary>
    [Fact]
    public void Json_has_the_keys_of_the_contract()
    {
        Ended ended = trial.Run("seed-need", "--bed-inches", "40", "--lines", "4", "--spacing-inches", "4", "--clove-g", "4", "--acres", "10", "--json");
        Assert.Equal((0, ""), (ended.Code, ended.Error));
        using JsonDocument answer = JsonDocument.Parse(ended.Output);
        double Of(string key) => answer.RootElement.GetProperty(key).GetDouble();
        Assert.Equal(156_816, Of("plants_per_acre"), 1e-6);
        Assert.Equal(156_816 / 0.40468564224, Of("plants_per_ha"), 1e-6);
        Assert.Equal(156_816 * 4 / 453.59237, Of("seed_lb_per_acre"), 1e-9);
        Assert.Equal(156_816 * 4 / 1000.0 / 0.40468564224, Of("seed_kg_per_ha"), 1e-9);
        Assert.Equal(10 * 156_816 * 4 / 453.59237, Of("seed_lb"), 1e-4);
    }

    [Fact]
    public void Without_acres_there_is_no_total()
    {
        string[] asked = ["seed-need", "--bed-inches", "40", "--lines", "4", "--spacing-inches", "4", "--clove-g", "4"];
        using JsonDocument answer = JsonDocument.Parse(trial.Run([.. asked, "--json"]).Output);
        Assert.Equal(JsonValueKind.Null, answer.RootElement.GetProperty("seed_lb").ValueKind);
        Assert.Equal("156,816 plants an acre (387,501 a hectare); 1,383 lb of seed an acre (1,550 kg a hectare)", trial.Run(asked).Output.TrimEnd());
    }
}
