using System.Text.Json;
using System.Text.RegularExpressions;
using Cloveshed.App.Words;

namespace Cloveshed.App.Tests;

/// <summary>keep on the command line; what it answers is held to published lives with the core.</summary>
public sealed class KeepTests : IDisposable
{
    private readonly Trial trial = new();

    public void Dispose() => trial.Dispose();

    private JsonElement Keep(string options)
    {
        Ended ended = trial.Run(["keep", .. options.Split(' '), "--json"]);
        Assert.Equal((0, ""), (ended.Code, ended.Error));
        return JsonDocument.Parse(ended.Output).RootElement;
    }

    /// <summary>UC Davis Produce Facts: Garlic: 2 to 6 mL at 0 °C; 4 mL x 122 kcal per tonne and day = 23.6 W (arithmetic). Over 9 months at -1 to 0 °C.</summary>
    [Fact]
    public void Json_has_the_keys_of_the_contract()
    {
        JsonElement answer = Keep("--temp 0 --rh 65");
        Assert.InRange(answer.GetProperty("life_days").GetDouble(), 9 * 30.4, 400);
        Assert.True(answer.GetProperty("life_days_low").GetDouble() < answer.GetProperty("life_days").GetDouble());
        Assert.True(answer.GetProperty("life_days_high").GetDouble() > answer.GetProperty("life_days").GetDouble());
        Assert.InRange(answer.GetProperty("weight_loss_per_week").GetDouble(), 0.001, 0.01);
        Assert.Equal(4, answer.GetProperty("respiration_ml_co2_per_kg_h").GetDouble(), 1e-12);
        Assert.Equal(23.6, answer.GetProperty("heat_w_per_t").GetDouble(), 0.05);
        Assert.Empty(answer.GetProperty("cautions").EnumerateArray());
    }

    /// <summary>Tanamati, Hong and Cantwell, UC Davis 2015: 3-4, 2-3, 1-2 weeks at 0, 5, 10 °C.</summary>
    [Theory]
    [InlineData(0, 21, 28)]
    [InlineData(5, 14, 21)]
    [InlineData(10, 7, 14)]
    public void Peeled_cloves_keep_as_published(double tempC, double low, double high)
    {
        JsonElement answer = Keep(FormattableString.Invariant($"--temp {tempC} --rh 95 --form peeled"));
        Assert.InRange(answer.GetProperty("life_days").GetDouble(), low, high);
        Assert.NotEmpty(answer.GetProperty("cautions").EnumerateArray());
    }

    [Fact]
    public void Options_reach_the_answer()
    {
        double Days(string options) => Keep("--temp 0 --rh 65 " + options).GetProperty("life_days").GetDouble();
        Assert.True(Days("--keeps short") < Days("--keeps medium") && Days("--keeps medium") < Days("--keeps long"));
        Assert.True(Days("--co2 10") > Days("--form bulb"));
        Assert.True(Days("--o2 1") > Days("--form bulb"));
        Assert.NotEqual(Days("--form seed"), Days("--form bulb"));
    }

    /// <summary>OSHA 29 CFR 1910.146(b): under 19.5% oxygen; NIOSH: 40,000 ppm of carbon dioxide.</summary>
    [Fact]
    public void A_sealed_room_comes_with_every_caution_and_never_with_leave_to_enter()
    {
        string[] said = [.. Keep("--temp 0 --rh 65 --o2 1 --co2 10").GetProperty("cautions").EnumerateArray().Select(c => c.GetString()!)];
        string all = string.Join('\n', said);
        Assert.Contains("19.5%", said[0], StringComparison.Ordinal);
        Assert.Contains("40,000 ppm", said[1], StringComparison.Ordinal);
        Assert.Contains("oxygen is tested first, then flammable gas, then carbon dioxide", all, StringComparison.Ordinal);
        Assert.Contains("nobody goes in alone", all, StringComparison.Ordinal);
        Assert.Contains("locked and tagged", all, StringComparison.Ordinal);
        Assert.Equal("Local codes and licensed practice come first.", said[^1]);
    }

    [Fact]
    public void Nothing_that_the_program_says_calls_a_room_safe()
    {
        foreach (Phrasebook phrases in (Phrasebook[])[Phrasebook.English, Phrasebook.Spanish])
            Assert.All(Enum.GetValues<Phrase>(), phrase => Assert.DoesNotMatch(new Regex("safe to enter|seguro entrar|sin peligro", RegexOptions.IgnoreCase), phrases[phrase]));
        Assert.DoesNotMatch(new Regex("safe to enter", RegexOptions.IgnoreCase), Manual.Page("keep"));
    }

    [Theory]
    [InlineData("keep --temp 0", "--rh PCT is missing.")]
    [InlineData("keep --temp 61 --rh 65", "--temp wants a number from -20 to 60")]
    [InlineData("keep --temp 0 --rh 65 --form cloves", "--form does not know \"cloves\"; it is one of bulb|seed|peeled.")]
    [InlineData("keep --temp 0 --rh 65 --keeps forever", "--keeps does not know \"forever\"; it is one of short|medium|long.")]
    [InlineData("keep --temp 0 --rh 65 --o2 -1", "--o2 wants a number from 0 to 100")]
    [InlineData("keep --temp 0 --rh 65 --o2 60 --co2 50", "are more than all of the air")]
    public void What_is_used_wrongly_ends_with_2(string line, string said)
    {
        Ended ended = trial.Run(line.Split(' '));
        Assert.Equal((2, ""), (ended.Code, ended.Output));
        Assert.Contains(said, ended.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void The_manuals_example_is_what_is_said() =>
        Assert.Contains(
            string.Join('\n', trial.Run("keep", "--temp", "-0.5", "--rh", "65", "--keeps", "long").Output.ReplaceLineEndings("\n").TrimEnd().Split('\n').Select(line => "    " + line)),
            Manual.Page("keep"), StringComparison.Ordinal);

    [Fact]
    public void Every_caution_can_be_said_in_Spanish()
    {
        string said = trial.Run("keep", "--temp", "12", "--rh", "80", "--o2", "1", "--co2", "20", "--lang", "es").Output;
        Assert.Equal(4 + 3 + 2, said.Split('\n').Count(line => line.Length > 0 && !line.StartsWith("Pierde", StringComparison.Ordinal) && !line.StartsWith("Respira", StringComparison.Ordinal)) + 1);
        Assert.Contains("Los códigos locales", said, StringComparison.Ordinal);
    }
}
