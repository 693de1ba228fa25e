using System.CommandLine;
using System.Text.Json.Nodes;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Words;
using Cloveshed.Core.Keep.Air;

namespace Cloveshed.App.Commands;

/// <summary>air: moist air from its temperature and humidity.</summary>
internal static class AirCommand
{
    public static Command Build(World world, Phrasebook phrases)
    {
        Option<double?> temp = Given.Number("--temp", "C", phrases[Phrase.AirTemp], MoistAir.ColdestC, MoistAir.WarmestC, "20", phrases);
        Option<double?> rh = Given.Number("--rh", "PCT", phrases[Phrase.AirRh], 0, 100, "65", phrases);
        Option<double?> pressure = Given.Number("--pressure", "PA", phrases[Phrase.AirPressure], 1000, 10_000_000, "95461", phrases);
        temp.Required = rh.Required = true;
        Option<bool> json = Given.Json(phrases[Phrase.JsonNumbers]);
        ShedCommand command = new("air", phrases[Phrase.AirDoes], "cloveshed air --temp 30 --rh 50", "cloveshed air --temp -1 --rh 65 --pressure 95461 --json")
        {
            temp, rh, pressure, json,
        };
        command.SetAction(parsed =>
        {
            double t = parsed.GetRequiredValue(temp)!.Value, humid = parsed.GetRequiredValue(rh)!.Value, pa = parsed.GetValue(pressure) ?? MoistAir.StandardPressurePa;
            if (Core.Keep.SaturatedAir.PressureKpa(t) * 1000 * humid / 100 >= pa)
            {
                world.Error.WriteLine(phrases.Say(Phrase.AirTooHumid, JsonForm.Number(t), JsonForm.Number(humid), JsonForm.Number(pa)) + " " + phrases.Say(Phrase.SeeHelp, "cloveshed air --help"));
                return Entry.UsedWrongly;
            }

            MoistAir air = MoistAir.Of(t, humid, pa);
            world.Output.WriteLine(parsed.GetValue(json) ? Json(air).ToJsonString(JsonForm.Indented) : Text(air, phrases));
            return Entry.Done;
        });
        return command;
    }

    private static JsonObject Json(MoistAir air) => new()
    {
        ["p_ws"] = air.SaturationPa,
        ["p_w"] = air.VapourPa,
        ["vpd"] = air.DeficitPa,
        ["humidity_ratio"] = air.HumidityRatio,
        ["enthalpy"] = air.Enthalpy,
        ["dew_point"] = air.DewPointC,
        ["wet_bulb"] = air.WetBulbC,
        ["volume"] = air.Volume,
    };

    private static string Text(MoistAir air, Phrasebook phrases) => string.Join(Environment.NewLine,
        phrases.Say(Phrase.AirPressures, air.SaturationPa, air.VapourPa, air.DeficitPa),
        phrases.Say(Phrase.AirWater, air.HumidityRatio * 1000, air.Enthalpy / 1000, air.Volume),
        air.DewPointC is { } dew ? phrases.Say(Phrase.AirDew, dew, air.WetBulbC) : phrases.Say(Phrase.AirNoDew, air.WetBulbC));
}
