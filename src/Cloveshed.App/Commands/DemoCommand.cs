using System.CommandLine;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Demo;
using Cloveshed.App.Plans;
using Cloveshed.App.Words;
using Cloveshed.Core.Seasons;

namespace Cloveshed.App.Commands;

/// <summary>demo: the invented season into a folder, planned, told. Serving it comes with the web application.</summary>
internal static class DemoCommand
{
    private const string DefaultFolder = "cloveshed-demo";

    public static Command Build(World world, Phrasebook phrases)
    {
        Option<bool> noServe = new("--no-serve") { Description = phrases[Phrase.DemoNoServe] };
        Option<int?> port = Given.Whole("--port", "P", phrases[Phrase.DemoPort], 1, 65_535, "8080", phrases);
        Option<string> folder = Given.FolderOption("--folder", "F", phrases.Say(Phrase.DemoFolder, DefaultFolder), phrases);
        Option<double?> seconds = PlanCommand.Seconds(phrases);
        Option<MassUnit?> mass = Given.Mass(phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonSummary]);
        ShedCommand command = new("demo", phrases[Phrase.DemoDoes], "cloveshed demo", "cloveshed demo --no-serve --folder trial --lang es")
        {
            noServe, port, folder, seconds, mass, json,
        };
        command.SetAction(parsed =>
        {
            if (!parsed.GetValue(noServe))
            {
                world.Error.WriteLine(phrases[Phrase.DemoNotServed]);
            }

            string place = parsed.GetValue(folder) ?? DefaultFolder;
            PlanQuestion question = new(
                Path.Combine(place, "season"), Path.Combine(place, "plan"), parsed.GetValue(seconds) ?? PlanCommand.DefaultSeconds, PlanCommand.DefaultGap,
                null, parsed.GetValue(mass));
            if (DemoSeason.PutInto(question.Folder) is { } changed)
            {
                world.Error.WriteLine(phrases.Say(Phrase.DemoChanged, changed, question.Folder, question.Out));
                return Entry.Refused;
            }

            return PlanTold.Tell(PlanMaking.Make(question, world, phrases), question, parsed.GetValue(json), world, phrases);
        });
        return command;
    }
}
