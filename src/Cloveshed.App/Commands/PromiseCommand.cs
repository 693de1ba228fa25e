using System.CommandLine;
using System.Text.Json.Nodes;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Plans;
using Cloveshed.App.Words;
using Cloveshed.Core.Planning.Promises;
using NodaTime.Text;

namespace Cloveshed.App.Commands;

/// <summary>promise FOLDER PLAN: whether an order that somebody asks for can be had, from when, how much of it, at what cost and at whose.</summary>
internal static class PromiseCommand
{
    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> folder = Given.Folder("FOLDER", phrases[Phrase.PlanFolder], phrases);
        Argument<string> plan = Given.Folder("PLAN", phrases[Phrase.PromisePlan], phrases);
        Option<PromiseLine[]?> lines = Given.PromiseLines(phrases);
        Option<NodaTime.LocalDate?> due = Given.Date("--due", phrases[Phrase.PromiseDue], "2026-10-23", phrases);
        (lines.Required, due.Required) = (true, true);
        Option<NodaTime.LocalDate?> from = Given.Date("--from", phrases[Phrase.PromiseFrom], "2026-10-19", phrases);
        Option<bool> larger = new("--larger-ok") { Description = phrases[Phrase.PromiseLarger] };
        Option<double?> seconds = PlanCommand.Seconds(phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonNumbers]);
        ShedCommand command = new("promise", phrases[Phrase.PromiseDoes],
            "cloveshed promise my-season plan --line M30=200 --due 2026-10-23", "cloveshed promise my-season plan --line M30=400@31.50 --line L30=100@34 --from 2027-01-04 --due 2027-01-15 --larger-ok --json")
        {
            folder, plan, lines, due, from, larger, seconds, json,
        };
        command.SetAction(parsed =>
        {
            bool largerOk = parsed.GetValue(larger);
            PromiseAsked asked = new(parsed.GetRequiredValue(folder), parsed.GetRequiredValue(plan),
                [.. parsed.GetRequiredValue(lines)!.Select(line => line with { LargerOk = largerOk })], parsed.GetValue(from), parsed.GetRequiredValue(due)!.Value, parsed.GetValue(seconds) ?? PlanCommand.DefaultSeconds);
            if (PromiseMaking.Make(asked, world, phrases) is not { } told)
            {
                return Entry.Refused;
            }

            world.Output.WriteLine(parsed.GetValue(json) ? Json(told).ToJsonString(JsonForm.Indented) : PromiseText.Of(told, phrases));
            return Entry.Done;
        });
        return command;
    }

    private static JsonObject Json(PromiseTold told) => new()
    {
        ["verdict"] = Name(told.Answer.Verdict),
        ["cost"] = told.Answer.Cost,
        ["paid"] = told.Answer.Paid,
        ["model_gap"] = told.Gap,
        ["lines"] = new JsonArray([.. told.Answer.Lines.Select(line => new JsonObject
        {
            ["product"] = line.Product.Text, ["asked"] = line.Asked, ["by_due"] = line.ByDue,
            ["all_from"] = line.AllFrom is { } day ? LocalDatePattern.Iso.Format(day) : null, ["worth"] = line.Worth, ["cost_low"] = line.CostLow, ["cost"] = line.Cost,
        })]),
        ["expenses"] = new JsonArray([.. told.Answer.Expenses.Select(one => new JsonObject
        {
            ["kind"] = one.KindName,
            ["name"] = one.Name, ["product"] = one.Product?.Text, ["less"] = one.Less, ["money"] = one.Money,
        })]),
    };

    private static string Name(PromiseVerdict verdict) => verdict switch
    {
        PromiseVerdict.Yes => "yes",
        PromiseVerdict.AtALoss => "at-a-loss",
        PromiseVerdict.Later => "later",
        PromiseVerdict.Part => "part",
        _ => "no",
    };
}
