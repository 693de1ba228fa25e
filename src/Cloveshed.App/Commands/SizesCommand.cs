using System.CommandLine;
using System.Text.Json.Nodes;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Sizing;
using Cloveshed.App.Words;
using Cloveshed.Core.Sizes;

namespace Cloveshed.App.Commands;

/// <summary>sizes: what is in a lot, from weighed bulbs.</summary>
internal static class SizesCommand
{
    private const int DefaultSeed = 1;

    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> file = Given.FileName("FILE.csv", phrases[Phrase.WeightsFile], phrases);
        Option<string> chart = LotFile.ChartOption(phrases);
        Option<int?> seed = Given.Whole("--seed", "N", phrases.Say(Phrase.BandSeed, DefaultSeed), 0, int.MaxValue, "7", phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonNumbers]);
        ShedCommand command = new("sizes", phrases[Phrase.SizesDoes], "cloveshed sizes sample.csv", "cloveshed sizes sizer.csv --chart sizes.csv --json > curve.json")
        {
            file, chart, seed, json,
        };
        command.SetAction(parsed =>
        {
            if (LotFile.Read(parsed.GetRequiredValue(file), parsed.GetValue(chart), world, phrases) is not { } lot)
            {
                return Entry.Refused;
            }

            int chance = parsed.GetValue(seed) ?? DefaultSeed;
            SizeAnswer answer = SizeReading.Read(new(lot.Bulbs.Cells, lot.Bulbs.Grams, lot.Law, lot.Chart, SizeReading.UsualDraws, chance));
            if (parsed.GetValue(json))
            {
                world.Output.WriteLine(Json(answer, chance).ToJsonString(JsonForm.Indented));
            }
            else
            {
                Tell(answer, world.Output, phrases);
            }

            return Entry.Done;
        });
        return command;
    }

    private static JsonObject Json(SizeAnswer answer, int seed) => new()
    {
        ["n"] = (long)answer.Bulbs,
        ["mean_g"] = answer.MeanG,
        ["cv"] = answer.Cv,
        ["components"] = answer.Fit.Curve.Parts.Count,
        ["classes"] = new JsonArray([.. answer.Classes.Select(c => (JsonNode)Window("class", c))]),
        ["under"] = Window(null, answer.Under),
        ["over"] = answer.Over is { } over ? Window(null, over) : null,
        ["mixture"] = new JsonArray([.. answer.Fit.Curve.Parts.Select(p => (JsonNode)new JsonObject { ["share"] = p.Share, ["mean_g"] = p.MeanG, ["cv"] = p.Cv })]),
        ["bic"] = answer.Fit.Bic,
        ["law"] = LawJson(answer.Law),
        ["odd"] = new JsonArray([.. answer.Law.Odd.Select(o => (JsonNode)new JsonObject
        {
            ["line"] = o.Bulb.Line,
            ["weight_g"] = o.Bulb.WeightG,
            ["diameter_mm"] = o.Bulb.DiameterMm,
            ["why"] = o.Reason == OddReason.Shape ? "shape" : "far from law",
        })]),
        ["seed"] = seed,
    };

    internal static JsonObject LawJson(MassLawFit law) => new()
    {
        ["a"] = law.MeanLaw.A,
        ["b"] = law.MeanLaw.B,
        ["s"] = law.MeanLaw.S,
        ["bulbs"] = law.Pairs,
        ["by_default"] = law.ByDefault,
    };

    private static JsonObject Window(string? key, WindowShare window)
    {
        JsonObject row = [];
        if (key is not null)
        {
            row[key] = window.Name;
        }

        row["share"] = window.Share;
        row["low80"] = window.Low80;
        row["high80"] = window.High80;
        row["count_per_30_lb"] = window.CountPer30Lb;
        row["low95"] = window.Low95;
        row["high95"] = window.High95;
        row["count_share"] = window.CountShare;
        row["mean_g"] = window.MeanG;
        return row;
    }

    private static void Tell(SizeAnswer answer, TextWriter output, Phrasebook phrases)
    {
        output.WriteLine(phrases.Say(answer.Fit.Curve.Parts.Count == 1 ? Phrase.SizesHeadOne : Phrase.SizesHead, answer.Bulbs, answer.MeanG, answer.Cv, answer.Fit.Curve.Parts.Count));
        WindowShare under = answer.Under with { Name = phrases[Phrase.SizesUnder] };
        WindowShare[] rows = [under, .. answer.Classes, .. answer.Over is { } over ? [over with { Name = phrases[Phrase.SizesOver] }] : Array.Empty<WindowShare>()];
        int width = rows.Max(r => r.Name.Length);
        foreach (WindowShare row in rows)
        {
            output.WriteLine("  " + phrases.Say(Phrase.SizesRow, row.Name.PadRight(width), row.Share * 100, row.Low80 * 100, row.High80 * 100, row.CountPer30Lb));
        }
    }
}
