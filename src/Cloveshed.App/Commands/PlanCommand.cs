using System.CommandLine;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Plans;
using Cloveshed.App.Words;
using Cloveshed.Core.Seasons;

namespace Cloveshed.App.Commands;

/// <summary>plan FOLDER --out OUT: reads a season's files, plans, checks the answer and only then writes it.</summary>
internal static class PlanCommand
{
    public const double DefaultSeconds = 60, DefaultGap = 0.001;

    private const double WeekInSeconds = 604_800;

    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> folder = Given.Folder("FOLDER", phrases[Phrase.PlanFolder], phrases);
        Option<string> into = Given.FolderOption("--out", "OUT", phrases[Phrase.PlanOut], phrases);
        into.Required = true;
        Option<double?> seconds = Seconds(phrases);
        Option<double?> gap = Given.Number("--gap", "X", phrases[Phrase.PlanGap], 0, 1, "0.001", phrases);
        Option<int?> seed = Given.Whole("--seed", "N", phrases[Phrase.PlanSeed], 0, int.MaxValue, "7", phrases);
        Option<MassUnit?> mass = Given.Mass(phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonSummary]);
        ShedCommand command = new("plan", phrases[Phrase.PlanDoes],
            "cloveshed plan data/demo-season --out plan", "cloveshed plan my-season --out plan --seconds 300 --gap 0.005", "cloveshed plan my-season --out plan --json > summary.json")
        {
            folder, into, seconds, gap, seed, mass, json,
        };
        command.SetAction(parsed =>
        {
            PlanQuestion question = new(
                parsed.GetRequiredValue(folder), parsed.GetRequiredValue(into), parsed.GetValue(seconds) ?? DefaultSeconds, parsed.GetValue(gap) ?? DefaultGap,
                parsed.GetValue(seed), parsed.GetValue(mass));
            return PlanTold.Tell(PlanMaking.Make(question, world, phrases), question, parsed.GetValue(json), world, phrases);
        });
        return command;
    }

    internal static Option<double?> Seconds(Phrasebook phrases) =>
        Given.Number("--seconds", "N", phrases[Phrase.PlanSeconds], 0, WeekInSeconds, "60", phrases, lowOpen: true);
}
