using System.CommandLine;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Plans;
using Cloveshed.App.Words;

namespace Cloveshed.App.Commands;

/// <summary>scenarios FOLDER PLAN: what a plan returns when the season turns out otherwise, and where it breaks first.</summary>
internal static class ScenariosCommand
{
    internal const int DefaultCount = 200, MostCount = 10000, DefaultSeconds = 30;

    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> folder = Given.Folder("FOLDER", phrases[Phrase.PlanFolder], phrases);
        Argument<string> plan = Given.Folder("PLAN", phrases[Phrase.ScenariosPlan], phrases);
        Option<int?> count = Given.Whole("--count", "N", phrases[Phrase.ScenariosCount], 10, MostCount, "200", phrases);
        Option<int?> seed = Given.Whole("--seed", "N", phrases[Phrase.ScenariosSeed], 0, int.MaxValue, "7", phrases);
        Option<bool> compare = new("--compare") { Description = phrases[Phrase.ScenariosCompare] };
        Option<double?> seconds = Given.Number("--seconds", "N", phrases[Phrase.ScenariosSeconds], 1, 86400, "30", phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonNumbers]);
        ShedCommand command = new("scenarios", phrases[Phrase.ScenariosDoes],
            "cloveshed scenarios my-season plan", "cloveshed scenarios my-season plan --count 400 --seed 7 --json", "cloveshed scenarios my-season plan --compare --seconds 60")
        {
            folder, plan, count, seed, compare, seconds, json,
        };
        command.SetAction(parsed =>
        {
            ScenariosAsked asked = new(parsed.GetRequiredValue(folder), parsed.GetRequiredValue(plan), parsed.GetValue(count) ?? DefaultCount, parsed.GetValue(seed),
                parsed.GetValue(compare) ? parsed.GetValue(seconds) ?? DefaultSeconds : null);
            if (ScenariosMaking.Make(asked, world, phrases) is not { } told)
            {
                return Entry.Refused;
            }

            world.Output.WriteLine(parsed.GetValue(json) ? ScenariosJson.Of(told).ToJsonString(JsonForm.Indented) : ScenariosText.Of(told, phrases));
            return Entry.Done;
        });
        return command;
    }
}
