using System.CommandLine;
using System.Text.Json.Nodes;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Weather;
using Cloveshed.App.Words;
using Cloveshed.Core.Fits;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Yard;
using NodaTime;

namespace Cloveshed.App.Commands;

/// <summary>cure WEATHER.csv: when a lot dug at the first row is cured, and what it has lost by then.</summary>
internal static class CureCommand
{
    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> file = Given.FileName("WEATHER.csv", phrases[Phrase.CureWeather], phrases);
        Option<string> sacks = Given.FileOption("--sacks", "CSV", phrases[Phrase.CureSacks], phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonNumbers]);
        ShedCommand command = new("cure", phrases[Phrase.CureDoes], "cloveshed cure weather.csv", "cloveshed cure weather.csv --sacks sacks.csv --json")
        {
            file, sacks, json,
        };
        command.SetAction(parsed =>
        {
            try
            {
                WeatherRead weather = WeatherFile.Read(parsed.GetRequiredValue(file), phrases);
                CalibrationAnswer? sacked = parsed.GetValue(sacks) is { } path ? Sacked(path, weather, world, phrases) : null;
                foreach (string name in weather.Unknown)
                {
                    world.Error.WriteLine(phrases.Say(Phrase.WarningLine, phrases.Say(Phrase.SheetUnknown, parsed.GetRequiredValue(file), name)));
                }

                if (weather.HumidityAsShares)
                {
                    world.Error.WriteLine(phrases.Say(Phrase.WarningLine, phrases.Say(Phrase.SheetShares, parsed.GetRequiredValue(file))));
                }

                CuringParameters p = CuringParameters.Default;
                CuringAnswer answer = Curing.Of(new CuringQuestion(weather.Rows, p, KeepingParameters.Default, sacked?.Yard ?? YardKnowledge.None(p)));
                world.Output.WriteLine(parsed.GetValue(json) ? Json(answer, sacked, weather, phrases).ToJsonString(JsonForm.Indented) : Text(answer, sacked, weather, phrases));
                return Entry.Done;
            }
            catch (SheetRefused refused)
            {
                world.Error.WriteLine(refused.Message);
                return Entry.Refused;
            }
        });
        return command;
    }

    private static CalibrationAnswer Sacked(string path, WeatherRead weather, World world, Phrasebook phrases)
    {
        IReadOnlyList<SackWeight> sacks = SacksFile.Read(path, weather, phrases, out IReadOnlyList<string> unknown);
        foreach (string name in unknown)
        {
            world.Error.WriteLine(phrases.Say(Phrase.WarningLine, phrases.Say(Phrase.SheetUnknown, path, name)));
        }

        CalibrationAnswer answer = SackCalibration.Of(new CalibrationQuestion(weather.Rows, sacks, CuringParameters.Default, KeepingParameters.Default));
        foreach (string sack in answer.LeftOut)
        {
            world.Error.WriteLine(phrases.Say(Phrase.WarningLine, phrases.Say(Phrase.CureSackOnce, sack)));
        }

        if (answer.End != FitEnd.Converged)
        {
            throw new SheetRefused(phrases.Say(Phrase.CureNoFit, path));
        }

        return answer;
    }

    private static JsonObject Json(CuringAnswer answer, CalibrationAnswer? sacked, WeatherRead weather, Phrasebook phrases) => new()
    {
        ["cured_at"] = At(answer.CuredAt, weather),
        ["low80"] = At(answer.Low80, weather),
        ["high80"] = At(answer.High80, weather),
        ["weight_loss"] = answer.WeightLoss,
        ["weight_loss_low80"] = answer.LossLow80,
        ["weight_loss_high80"] = answer.LossHigh80,
        ["dug_at"] = At(weather.Rows[0].From, weather),
        ["days"] = answer.CuredAt is { } cured ? Days(weather, cured) : null,
        ["beyond_weather"] = answer.BeyondWeather,
        ["water"] = answer.WetThen,
        ["forced_air_hours"] = answer.ForcedHours,
        ["wet_again"] = answer.RewetAfter,
        ["sacks"] = sacked is null ? null : new JsonObject
        {
            ["sacks"] = sacked.Sacks,
            ["weighings"] = sacked.Weighings,
            ["rate_factor"] = Math.Exp(sacked.Yard.LnRate),
            ["rate_factor_sd_ln"] = sacked.Yard.LnRateSd,
            ["green_factor"] = Math.Exp(sacked.Yard.LnGreen),
            ["green_factor_sd_ln"] = sacked.Yard.LnGreenSd,
            ["clove_factor"] = Math.Exp(sacked.Yard.LnClove),
            ["clove_factor_sd_ln"] = sacked.Yard.LnCloveSd,
            ["residual_sd"] = sacked.ResidualSd,
            ["correlation"] = sacked.Correlation,
            ["condition"] = sacked.Condition,
            ["steps"] = sacked.Steps,
            ["worst"] = new JsonObject { ["sack"] = sacked.Worst.Sack, ["time"] = At(sacked.Worst.At, weather), ["by"] = sacked.WorstBy },
        },
        ["warnings"] = new JsonArray([.. answer.Warnings.Select(warning => JsonValue.Create(Warning(warning, weather, phrases)))]),
    };

    private static string Text(CuringAnswer answer, CalibrationAnswer? sacked, WeatherRead weather, Phrasebook phrases)
    {
        List<string> lines = [];
        lines.Add(answer.CuredAt is { } cured
            ? phrases.Say(answer.BeyondWeather ? Phrase.CureBeyond : Phrase.CureDate, Day(cured), Days(weather, cured), answer.Low80 is { } low ? Day(low) : "-", answer.High80 is { } high ? Day(high) : phrases[Phrase.CureNotWithin])
            : phrases[Phrase.CureNever]);
        lines.Add(phrases.Say(answer.CuredAt is null ? Phrase.CureLossSoFar : Phrase.CureLoss, answer.WeightLoss * 100, answer.LossLow80 * 100, answer.LossHigh80 * 100, answer.WetThen * 100));
        if (answer.ForcedHours is not 0)
        {
            lines.Add(answer.ForcedHours is { } hours ? phrases.Say(Phrase.CureForced, hours, CuringParameters.ReferenceC) : phrases[Phrase.CureForcedNever]);
        }

        if (answer.RewetAfter)
        {
            lines.Add(phrases[Phrase.CureRewet]);
        }

        if (sacked is not null)
        {
            lines.Add(phrases.Say(Phrase.CureSacksSay, sacked.Sacks, sacked.Weighings, Math.Exp(sacked.Yard.LnRate), Math.Exp(sacked.Yard.LnGreen), (sacked.ResidualSd ?? 0) * 100));
        }

        lines.AddRange(answer.Warnings.Select(warning => phrases.Say(Phrase.WarningLine, Warning(warning, weather, phrases))));
        return string.Join(Environment.NewLine, lines);
    }

    private static string Warning(CuringWarning warning, WeatherRead weather, Phrasebook phrases)
    {
        Phrase phrase = warning.Rule switch
        {
            CuringRule.OverFortyFive => Phrase.CureOver45,
            CuringRule.OverPublishedCure => Phrase.CureOver46,
            CuringRule.LongHeat => Phrase.CureLongHeat,
            CuringRule.Damp => Phrase.CureDamp,
            CuringRule.Slow => Phrase.CureSlow,
            CuringRule.Gaps => Phrase.CureGaps,
            _ => throw new ArgumentOutOfRangeException(nameof(warning), warning.Rule, null),
        };
        return phrases.Say(phrase, warning.Amount, warning.Limit, At(warning.First, weather));
    }

    private static string? At(LocalDateTime? moment, WeatherRead weather) => moment is { } at ? Moments.Text(at, weather.Offset) : null;

    private static string Day(LocalDateTime at) => at.ToString("uuuu-MM-dd HH:mm", System.Globalization.CultureInfo.InvariantCulture);

    private static double Days(WeatherRead weather, LocalDateTime cured) => Period.Between(weather.Rows[0].From, cured, PeriodUnits.Seconds).Seconds / 86400.0;
}
