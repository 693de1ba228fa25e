using System.CommandLine;
using System.Text.Json.Nodes;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Sizing;
using Cloveshed.App.Words;
using Cloveshed.Core.Cuts;
using Cloveshed.Core.Grading;
using Cloveshed.Core.Quantities;
using Cloveshed.Core.Sizes;
using Cloveshed.SeasonFiles.Weighing;

namespace Cloveshed.App.Commands;

/// <summary>cuts: where to set the sizer.</summary>
internal static class CutsCommand
{
    private const double DefaultRisk = 0.1;

    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> file = Given.FileName("FILE.csv", phrases[Phrase.WeightsFile], phrases);
        Option<string> chart = LotFile.ChartOption(phrases);
        Option<string> prices = Given.FileOption("--prices", "CSV", phrases[Phrase.CutsPrices], phrases);
        Option<double?> tolerance = Given.Number("--tolerance", "X", phrases[Phrase.CutsTolerance], 0, 1, "0.05", phrases);
        Option<int?> outlets = Given.Whole("--outlets", "N", phrases[Phrase.CutsOutlets], 1, 100, "4", phrases);
        Option<double?> pounds = Given.Number("--inspected-lb", "L", phrases[Phrase.CutsInspected], 0, 1e5, "50", phrases, lowOpen: true);
        Option<double?> risk = Given.Number("--risk", "X", phrases.Say(Phrase.CutsRisk, DefaultRisk), 0, 1, "0.1", phrases, lowOpen: true);
        Option<bool> json = Given.Json(phrases[Phrase.JsonNumbers]);
        ShedCommand command = new("cuts", phrases[Phrase.CutsDoes],
            "cloveshed cuts sample.csv --chart sizes.csv --prices prices.csv", "cloveshed cuts sample.csv --tolerance 0.1 --outlets 4 --inspected-lb 50 --json")
        {
            file, chart, prices, tolerance, outlets, pounds, risk, json,
        };
        command.SetAction(parsed =>
        {
            if (LotFile.Read(parsed.GetRequiredValue(file), parsed.GetValue(chart), world, phrases) is not { } lot)
            {
                return Entry.Refused;
            }

            IReadOnlyList<double>? money = parsed.GetValue(prices) is { } named
                ? FileTold.Take(PriceFile.Read(named, lot.Chart, phrases.FileLanguage), world, phrases)
                : CutQuestion.UsualPrices(lot.Chart.Count);
            if (money is null)
            {
                return Entry.Refused;
            }

            double allowed = parsed.GetValue(tolerance) ?? GradeRule.UsNo1.OffSize;
            CutQuestion question = new(
                MixtureFit.Usual(lot.Bulbs.Cells).Curve, lot.Law.DiameterOnMass, lot.Law.MeanLaw, lot.Chart, money, allowed, CutQuestion.UsualStepG,
                parsed.GetValue(outlets), parsed.GetValue(pounds) is { } looked ? new(looked * Mass.KilogramsPerPound, allowed) : null, parsed.GetValue(risk) ?? DefaultRisk);
            CutAnswer answer = CutChoosing.Choose(question);
            if (parsed.GetValue(json))
            {
                world.Output.WriteLine(Json(question, answer, lot.Law).ToJsonString(JsonForm.Indented));
            }
            else
            {
                Tell(question, answer, world.Output, phrases);
            }

            return Entry.Done;
        });
        return command;
    }

    private static JsonObject Json(CutQuestion question, CutAnswer answer, MassLawFit law)
    {
        string Name(int at) => question.Chart[at].Id.Text;
        JsonArray Names(IEnumerable<int> classes) => new([.. classes.Select(c => (JsonNode)Name(c))]);
        JsonObject Cut(BoxFound box) => new()
        {
            ["class"] = Name(box.Box.Class),
            ["min_g"] = box.Box.MinG,
            ["up_to_class"] = Name(box.Box.Last),
        };
        JsonObject OffSize(BoxFound box) => new()
        {
            ["class"] = Name(box.Box.Class),
            ["below"] = box.Below,
            ["above"] = box.Above,
            ["share"] = box.Share,
            ["mean_g"] = box.MeanG,
            ["count_per_30_lb"] = box.MeanG > 0 ? WindowShare.CartonG / box.MeanG : null,
            ["given_away"] = box.GivenAway,
            ["price_per_kg"] = box.Paid,
            ["refused"] = box.RefusalRisk,
        };
        return new()
        {
            ["cuts"] = new JsonArray([.. answer.Best.Boxes.Select(b => (JsonNode)Cut(b))]),
            ["merged"] = Names(answer.Skipped.Concat(answer.Merged)),
            ["value"] = answer.Best.Value,
            ["off_size"] = new JsonArray([.. answer.Best.Boxes.Select(b => (JsonNode)OffSize(b))]),
            ["nominal_value"] = answer.Nominal.Value,
            ["skipped"] = Names(answer.Skipped),
            ["over_g"] = answer.Best.OverG,
            ["one_gram"] = new JsonArray([.. answer.Grams.Select(g => (JsonNode)new JsonObject { ["min_g"] = g.MinG, ["up"] = g.Up, ["down"] = g.Down })]),
            ["nominal"] = new JsonArray([.. answer.Nominal.Boxes.Select(b =>
            {
                JsonObject row = OffSize(b);
                row["min_g"] = b.Box.MinG;
                return (JsonNode)row;
            })]),
            ["tolerance"] = question.Tolerance,
            ["law"] = SizesCommand.LawJson(law),
        };
    }

    private static void Tell(CutQuestion question, CutAnswer answer, TextWriter output, Phrasebook phrases)
    {
        string Name(int at) => question.Chart[at].Id.Text;
        if (answer.Best.Boxes.Count == 0)
        {
            output.WriteLine(phrases[Phrase.CutsNone]);
        }

        foreach ((int k, BoxFound box) in answer.Best.Boxes.Index())
        {
            string name = box.Box.Last > box.Box.Class ? phrases.Say(Phrase.CutsUpTo, Name(box.Box.Class), Name(box.Box.Last)) : Name(box.Box.Class);
            output.WriteLine(phrases.Say(
                Phrase.CutsRow, name, box.Box.MinG, box.Share * 100, box.Below * 100, box.Above * 100, WindowShare.CartonG / Math.Max(box.MeanG, 1e-9),
                answer.Grams[k].Up * 1000, answer.Grams[k].Down * 1000));
            if (box.RefusalRisk is { } refused)
            {
                output.WriteLine("  " + phrases.Say(Phrase.CutsRefused, refused * 100));
            }
        }

        if (answer.Skipped.Count > 0)
        {
            output.WriteLine(phrases.Say(Phrase.CutsSkipped, string.Join(", ", answer.Skipped.Select(Name))));
        }

        if (answer.Best.OverG is { } over)
        {
            output.WriteLine(phrases.Say(Phrase.CutsOver, over));
        }

        output.WriteLine(phrases.Say(Phrase.CutsValue, answer.Best.Value, answer.Nominal.Value));
        int off = answer.Nominal.Boxes.Count(b => !b.Holds);
        if (off > 0)
        {
            output.WriteLine(phrases.Say(Phrase.CutsNominalOff, off, answer.Nominal.Boxes.Count));
        }
    }
}
