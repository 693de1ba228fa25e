using System.CommandLine;
using System.Text.Json.Nodes;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Plans;
using Cloveshed.App.Words;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Planning.Supposing;
using NodaTime.Text;

namespace Cloveshed.App.Commands;

/// <summary>suppose FOLDER PLAN: what would come of changes to orders, lines, lots, runs and rooms, while the plan stands.</summary>
internal static class SupposeCommand
{
    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> folder = Given.Folder("FOLDER", phrases[Phrase.PlanFolder], phrases);
        Argument<string> plan = Given.Folder("PLAN", phrases[Phrase.PromisePlan], phrases);
        Option<SeasonChange[]?>[] changes =
        [
            GivenChanges.Cancelled(phrases), GivenChanges.Resized(phrases), GivenChanges.Moved(phrases), GivenChanges.Added(phrases), GivenChanges.Stopped(phrases), GivenChanges.PersonHours(phrases),
            GivenChanges.DugLater(phrases), GivenChanges.KeepsLess(phrases), GivenChanges.WeighsLess(phrases), GivenChanges.Ran(phrases, noMore: false), GivenChanges.Ran(phrases, noMore: true), GivenChanges.Opened(phrases),
        ];
        Option<double?> seconds = PlanCommand.Seconds(phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonNumbers]);
        ShedCommand command = new("suppose", phrases[Phrase.SupposeDoes],
            "cloveshed suppose my-season plan --cancel O-17", "cloveshed suppose my-season plan --stop pack=2026-10-05..2026-10-16 --person-hours 2026-10-05=900 --json")
        {
            folder, plan, seconds, json,
        };
        foreach (Option<SeasonChange[]?> option in changes)
        {
            command.Options.Add(option);
        }

        command.Validators.Add(result =>
        {
            if (changes.All(option => result.GetResult(option) is null))
            {
                result.AddError(phrases.Say(Phrase.SupposeNothing, string.Join(", ", changes.Select(option => option.Name))));
            }
        });
        command.SetAction(parsed =>
        {
            SeasonChange[] supposed = [.. changes.SelectMany(option => parsed.GetValue(option) ?? [])];
            if (SupposeMaking.Make(parsed.GetRequiredValue(folder), parsed.GetRequiredValue(plan), supposed, parsed.GetValue(seconds) ?? PlanCommand.DefaultSeconds, world, phrases) is not { } told)
            {
                return Entry.Refused;
            }

            world.Output.WriteLine(parsed.GetValue(json) ? Json(told).ToJsonString(JsonForm.Indented) : SupposeText.Of(told, phrases));
            return Entry.Done;
        });
        return command;
    }

    private static JsonObject Json(SupposeTold told) => new()
    {
        ["value_before"] = told.Answer.ValueBefore,
        ["value"] = told.Answer.Value,
        ["bound"] = told.Answer.Bound,
        ["model_gap"] = told.Gap,
        ["moved"] = told.Answer.Moved,
        ["runs"] = new JsonArray([.. told.Answer.Runs.Select(run => new JsonObject
        {
            ["lot"] = run.Lot.Text, ["line"] = run.Line.Text, ["week"] = LocalDatePattern.Iso.Format(run.Monday), ["mass_before"] = run.Before, ["mass"] = run.After,
        })]),
        ["less"] = Names(told.Answer.Less),
        ["more"] = Names(told.Answer.More),
    };

    private static JsonArray Names(IReadOnlyList<PromiseExpense> who) => new([.. who.Select(one => new JsonObject
    {
        ["kind"] = one.KindName,
        ["name"] = one.Name, ["product"] = one.Product?.Text, ["amount"] = one.Less, ["money"] = one.Money,
    })]);
}
