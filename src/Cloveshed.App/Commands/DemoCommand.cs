using System.CommandLine;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Demo;
using Cloveshed.App.Plans;
using Cloveshed.App.Serving;
using Cloveshed.App.Words;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles;

namespace Cloveshed.App.Commands;

/// <summary>demo: the invented season into a folder and a ledger, planned, told, and served.</summary>
internal static class DemoCommand
{
    private const string DefaultFolder = "cloveshed-demo";

    public static Command Build(World world, Phrasebook phrases)
    {
        Option<bool> noServe = new("--no-serve") { Description = phrases[Phrase.DemoNoServe] };
        Option<int?> port = Given.Whole("--port", "P", phrases.Say(Phrase.DemoPort, 8080), 1, 65_535, "8080", phrases);
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
            string place = parsed.GetValue(folder) ?? DefaultFolder;
            PlanQuestion question = new(
                Path.Combine(place, "season"), Path.Combine(place, "plan"), parsed.GetValue(seconds) ?? PlanCommand.DefaultSeconds, PlanCommand.DefaultGap,
                null, parsed.GetValue(mass));
            if (DemoSeason.PutInto(question.Folder) is { } changed)
            {
                world.Error.WriteLine(phrases.Say(Phrase.DemoChanged, changed, question.Folder, question.Out));
                return Entry.Refused;
            }

            if (parsed.GetValue(noServe))
            {
                return PlanTold.Tell(PlanMaking.Make(question, world, phrases), question, parsed.GetValue(json), world, phrases);
            }

            LedgerAddress address = DemoLedger.AddressIn(place);
            if (Recorded(address, question, parsed.GetValue(json), world, phrases) is { } ended)
            {
                return ended;
            }

            string urls = parsed.GetValue(port) is { } chosen ? ServeAddress.At(chosen) : ServeAddress.Default;
            return WebServing.Run(address, urls, parsed.GetValue<bool>(CommandTree.VerboseName), world, phrases);
        });
        return command;
    }

    /// <summary>Brings the demo into its ledger, unless that was done before; an exit code where it could not.</summary>
    private static int? Recorded(LedgerAddress address, PlanQuestion question, bool json, World world, Phrasebook phrases)
    {
        using ShedLedger ledger = ShedLedger.Open(address, TimeProvider.System);
        if (DemoLedger.Kept(ledger, address, SeasonReader.Read(question.Folder).Season!.Settings.Name, phrases) is { } kept)
        {
            world.Error.WriteLine(kept);
            return null;
        }

        PlanOutcome outcome = PlanMaking.Make(question, world, phrases);
        int told = PlanTold.Tell(outcome, question, json, world, phrases);
        if (outcome is not PlanOutcome.Written written)
        {
            return told;
        }

        if (DemoLedger.Fill(ledger, written, question, TimeProvider.System, phrases) is { } obstacle)
        {
            world.Error.WriteLine(obstacle);
            return Entry.Refused;
        }

        world.Error.WriteLine(phrases.Say(Phrase.DemoPlanned, address));
        return null;
    }
}
