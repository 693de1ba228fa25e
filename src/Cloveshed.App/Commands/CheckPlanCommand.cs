using System.CommandLine;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Plans;
using Cloveshed.App.Words;
using Cloveshed.Check;

namespace Cloveshed.App.Commands;

/// <summary>check-plan FOLDER OUT: the independent check of an answer that may have been made anywhere.</summary>
internal static class CheckPlanCommand
{
    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> folder = Given.Folder("FOLDER", phrases[Phrase.CheckFolder], phrases);
        Argument<string> answer = Given.Folder("OUT", phrases[Phrase.CheckOut], phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonCheck]);
        ShedCommand command = new("check-plan", phrases[Phrase.CheckDoes],
            "cloveshed check-plan data/demo-season plan", "cloveshed check-plan my-season plan --json")
        {
            folder, answer, json,
        };
        command.SetAction(parsed =>
        {
            CheckResult result = PlanCheck.Check(parsed.GetRequiredValue(folder), parsed.GetRequiredValue(answer));
            if (parsed.GetValue(json))
            {
                world.Output.WriteLine(result.ToJson().ToJsonString(JsonForm.Indented));
            }
            else
            {
                foreach (Breach breach in result.Breaches)
                {
                    world.Output.WriteLine(phrases.Say(Phrase.BreachLine, breach.Rule, breach.Where, breach.Found, breach.Allowed));
                }

                if (result.Holds)
                {
                    world.Output.WriteLine(phrases.Say(Phrase.CheckHolds, result.Value is { } value ? JsonForm.Number(value) : ""));
                }
            }

            if (result.Holds)
            {
                return Entry.Done;
            }

            world.Error.WriteLine(phrases.Say(result.Breaches.Count == 1 ? Phrase.CheckBrokenOnce : Phrase.CheckBroken, result.Breaches.Count));
            return Entry.Refused;
        });
        return command;
    }
}
