using System.CommandLine;
using System.Text.Json.Nodes;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Sizing;
using Cloveshed.App.Words;
using Cloveshed.Core.Drum;
using Cloveshed.Core.Lots;
using Cloveshed.SeasonFiles.Weighing;

namespace Cloveshed.App.Commands;

/// <summary>holes: what the clove drum is to be fitted with.</summary>
internal static class HolesCommand
{
    private const double DefaultStep = 0.1, DefaultLoad = 1;

    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> file = Given.FileName("FILE.csv", phrases[Phrase.ClovesFile], phrases);
        Option<string> split = Given.FileOption("--split", "CSV", phrases[Phrase.HolesSplit], phrases);
        split.Required = true;
        Option<double?> step = Given.Number("--step", "MM", phrases.Say(Phrase.HolesStep, DefaultStep), 0.01, 5, "0.5", phrases);
        Option<double?> load = Given.Number("--load", "X", phrases.Say(Phrase.HolesLoad, DefaultLoad), 0, 3, "0.8", phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonNumbers]);
        ShedCommand command = new("holes", phrases[Phrase.HolesDoes], "cloveshed holes cloves.csv --split grades.csv", "cloveshed holes cloves.csv --split grades.csv --step 0.5 --load 0.8 --json")
        {
            file, split, step, load, json,
        };
        command.SetAction(parsed =>
        {
            IReadOnlyList<SampledClove>? cloves = FileTold.Take(CloveFile.Read(parsed.GetRequiredValue(file), phrases.FileLanguage), world, phrases);
            IReadOnlyList<GradeWanted>? grades = FileTold.Take(SplitFile.Read(parsed.GetRequiredValue(split), phrases.FileLanguage), world, phrases);
            if (cloves is null || grades is null)
            {
                return Entry.Refused;
            }

            CloveWidths widths = CloveWidths.OfSample([.. cloves.Select(c => (c.WeightG, c.WidthMm, c.Count))], LotDefaults.Default.CloveLaw);
            DrumAnswer answer = HoleChoosing.Choose(new(
                widths, grades, DrumNature.Usual, parsed.GetValue(load) ?? DefaultLoad, parsed.GetValue(step) ?? DefaultStep, HoleOrder.SmallestFirst));
            if (cloves.All(c => c.WidthMm is null))
            {
                world.Error.WriteLine(phrases[Phrase.HolesByLaw]);
            }

            foreach (Outflow flow in answer.Outflows.Where(f => !f.Held))
            {
                world.Error.WriteLine(phrases.Say(Phrase.HolesNotHeld, flow.Name, flow.Contamination * 100, grades.First(g => g.Name == flow.Name).MostContamination * 100));
            }

            if (parsed.GetValue(json))
            {
                world.Output.WriteLine(Json(answer).ToJsonString(JsonForm.Indented));
            }
            else
            {
                Tell(answer, world.Output, phrases);
            }

            return Entry.Done;
        });
        return command;
    }

    private static JsonObject Json(DrumAnswer answer) => new()
    {
        ["holes"] = new JsonArray([.. answer.HolesMm.Select(mm => (JsonNode)new JsonObject { ["mm"] = mm })]),
        ["grades"] = new JsonArray([.. answer.Outflows.Where(f => f.Name is not null).Select(f => (JsonNode)Flow(f))]),
        ["ungraded"] = answer.Outflows.Where(f => f.Name is null).Sum(f => f.Share),
        ["misplaced"] = answer.Misplaced,
        ["held"] = answer.AllHeld,
    };

    private static JsonObject Flow(Outflow flow) => new()
    {
        ["grade"] = flow.Name,
        ["share"] = flow.Share,
        ["contamination"] = flow.Contamination,
        ["smaller"] = flow.Smaller,
        ["recovered"] = flow.Recovered,
        ["min_mm"] = flow.FromMm,
        ["max_mm"] = flow.ToMm,
        ["held"] = flow.Held,
    };

    private static void Tell(DrumAnswer answer, TextWriter output, Phrasebook phrases)
    {
        output.WriteLine(
            answer.HolesMm.Count == 0 ? phrases[Phrase.HolesNone] : phrases.Say(Phrase.HolesHead, string.Join(", ", answer.HolesMm.Select(JsonForm.Number))));
        int width = answer.Outflows.Max(f => (f.Name ?? phrases[Phrase.HolesUngraded]).Length);
        foreach (Outflow flow in answer.Outflows)
        {
            output.WriteLine("  " + phrases.Say(Phrase.HolesRow, (flow.Name ?? phrases[Phrase.HolesUngraded]).PadRight(width), flow.Share * 100, flow.Contamination * 100, flow.Recovered * 100));
        }

        output.WriteLine(phrases[Phrase.HolesCaution]);
    }
}
