using System.CommandLine;
using System.Text.Json.Nodes;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Words;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Stores;
using Cloveshed.Core.Seasons;

namespace Cloveshed.App.Commands;

/// <summary>keep: storage life and loss in one climate.</summary>
internal static class KeepCommand
{
    private static readonly Dictionary<string, GarlicForm> Forms = new(StringComparer.Ordinal) { ["bulb"] = GarlicForm.Bulb, ["seed"] = GarlicForm.Seed, ["peeled"] = GarlicForm.Peeled };
    private static readonly Dictionary<string, KeepClass> Classes = new(StringComparer.Ordinal) { ["short"] = KeepClass.Short, ["medium"] = KeepClass.Medium, ["long"] = KeepClass.Long };

    public static Command Build(World world, Phrasebook phrases)
    {
        Option<double?> temp = Given.Number("--temp", "C", phrases[Phrase.AirTemp], -20, 60, "-0.5", phrases);
        Option<double?> rh = Given.Number("--rh", "PCT", phrases[Phrase.AirRh], 0, 100, "65", phrases);
        Option<double?> o2 = Given.Number("--o2", "PCT", phrases[Phrase.KeepO2], 0, 100, "2", phrases);
        Option<double?> co2 = Given.Number("--co2", "PCT", phrases[Phrase.KeepCo2], 0, 100, "10", phrases);
        Option<GarlicForm?> form = Given.Word("--form", phrases[Phrase.KeepForm], Forms, phrases);
        Option<KeepClass?> keeps = Given.Word("--keeps", phrases[Phrase.KeepKeeps], Classes, phrases);
        temp.Required = rh.Required = true;
        Option<bool> json = Given.Json(phrases[Phrase.JsonNumbers]);
        ShedCommand command = new("keep", phrases[Phrase.KeepDoes],
            "cloveshed keep --temp -0.5 --rh 65 --keeps long", "cloveshed keep --temp 0 --rh 65 --o2 2 --co2 10 --json", "cloveshed keep --temp 5 --rh 95 --form peeled")
        {
            temp, rh, o2, co2, form, keeps, json,
        };
        command.SetAction(parsed =>
        {
            double oxygen = parsed.GetValue(o2) ?? KeepingLaw.AirO2, carbonDioxide = parsed.GetValue(co2) ?? KeepingLaw.AirCo2;
            if (oxygen + carbonDioxide > 100)
            {
                world.Error.WriteLine(phrases.Say(Phrase.KeepTooMuchGas, JsonForm.Number(oxygen), JsonForm.Number(carbonDioxide)) + " " + phrases.Say(Phrase.SeeHelp, "cloveshed keep --help"));
                return Entry.UsedWrongly;
            }

            StorageQuestion question = new(
                parsed.GetValue(form) ?? GarlicForm.Bulb,
                new Climate(parsed.GetRequiredValue(temp)!.Value, parsed.GetRequiredValue(rh)!.Value, oxygen, carbonDioxide), parsed.GetValue(keeps));
            StorageAnswer answer = StorageLife.Of(question, KeepingParameters.Default);
            world.Output.WriteLine(parsed.GetValue(json) ? Json(answer, phrases).ToJsonString(JsonForm.Indented) : Text(answer, phrases));
            return Entry.Done;
        });
        return command;
    }

    private static JsonObject Json(StorageAnswer answer, Phrasebook phrases) => new()
    {
        ["life_days"] = answer.LifeDays,
        ["life_days_low"] = answer.LifeDaysLow,
        ["life_days_high"] = answer.LifeDaysHigh,
        ["weight_loss_per_week"] = answer.WeightLossPerWeek,
        ["respiration_ml_co2_per_kg_h"] = answer.Respiration.Middle,
        ["respiration_low"] = answer.Respiration.Low,
        ["respiration_high"] = answer.Respiration.High,
        ["heat_w_per_t"] = answer.Respiration.HeatWPerTonne,
        ["cautions"] = new JsonArray([.. Cautions(answer, phrases).Select(text => JsonValue.Create(text))]),
    };

    private static string Text(StorageAnswer answer, Phrasebook phrases) => string.Join(Environment.NewLine,
    [
        phrases.Say(Phrase.KeepLife, answer.LifeDays, answer.LifeDaysLow, answer.LifeDaysHigh, answer.LifeDays / 30.4375),
        phrases.Say(Phrase.KeepLoss, answer.WeightLossPerWeek * 100),
        phrases.Say(Phrase.KeepBreath, answer.Respiration.Middle, answer.Respiration.Low, answer.Respiration.High, answer.Respiration.HeatWPerTonne),
        .. Cautions(answer, phrases).Select(caution => phrases.Say(Phrase.KeepCautionLine, caution)),
    ]);

    /// <summary>Rooms that kill come with everything that is to be done before a door is opened.</summary>
    private static IEnumerable<string> Cautions(StorageAnswer answer, Phrasebook phrases)
    {
        bool deadly = false;
        foreach (KeepCaution caution in answer.Cautions)
        {
            deadly |= caution.Rule is KeepRule.OxygenDeficient or KeepRule.OxygenEnriched or KeepRule.CarbonDioxideDangerous or KeepRule.CarbonDioxideShortTerm or KeepRule.CarbonDioxideDay;
            yield return phrases.Say(Of(caution.Rule), caution.Found, caution.Limit);
        }

        if (deadly)
        {
            yield return phrases[Phrase.CautionEntry];
            yield return phrases[Phrase.CautionLocalFirst];
        }
    }

    private static Phrase Of(KeepRule rule) => rule switch
    {
        KeepRule.OxygenDeficient => Phrase.CautionOxygenLow,
        KeepRule.OxygenEnriched => Phrase.CautionOxygenHigh,
        KeepRule.CarbonDioxideDangerous => Phrase.CautionCo2Danger,
        KeepRule.CarbonDioxideShortTerm => Phrase.CautionCo2Short,
        KeepRule.CarbonDioxideDay => Phrase.CautionCo2Day,
        KeepRule.CarbonDioxideInjures => Phrase.CautionCo2Injures,
        KeepRule.LowOxygenAlone => Phrase.CautionLowOxygenAlone,
        KeepRule.MayFreeze => Phrase.CautionFreeze,
        KeepRule.SproutingZone => Phrase.CautionSprout,
        KeepRule.Damp => Phrase.CautionDamp,
        KeepRule.Dry => Phrase.CautionDry,
        KeepRule.BeyondPublished => Phrase.CautionBeyond,
        KeepRule.SeedTooCold => Phrase.CautionSeedCold,
        KeepRule.SeedTooWarm => Phrase.CautionSeedWarm,
        KeepRule.SeedHumidity => Phrase.CautionSeedHumidity,
        KeepRule.SeedAtmosphere => Phrase.CautionSeedAtmosphere,
        KeepRule.PeeledTooWarm => Phrase.CautionPeeledWarm,
        KeepRule.PeeledKeepCold => Phrase.CautionPeeledCold,
        _ => throw new ArgumentOutOfRangeException(nameof(rule), rule, null),
    };
}
