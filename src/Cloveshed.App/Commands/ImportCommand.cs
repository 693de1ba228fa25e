using System.CommandLine;
using System.Text.Json.Nodes;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Plans;
using Cloveshed.App.Words;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.App.Commands;

/// <summary>import FOLDER: a season's files into a ledger.</summary>
internal static class ImportCommand
{
    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> folder = Given.Folder("FOLDER", phrases[Phrase.ImportFolder], phrases);
        Option<string> ledger = Given.Ledger("URL", phrases[Phrase.LedgerOption], phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonLedger]);
        ShedCommand command = new("import", phrases[Phrase.ImportDoes], "cloveshed import data/demo-season --db shed.db") { folder, ledger, json };
        command.SetAction(parsed =>
        {
            LedgerAddress address = LedgerAddress.Of(parsed.GetValue(ledger), world.Variable);
            // Read before the ledger is opened: faulty files make no ledger where there was none.
            SeasonEntry entry = SeasonEntry.Of(parsed.GetRequiredValue(folder), phrases.FileLanguage);
            if (entry.Reading.Season is null)
            {
                return TellFaults(entry.Reading.Faults, entry.Reading.FaultCount, parsed.GetRequiredValue(folder), world, phrases);
            }

            using ShedLedger opened = ShedLedger.Open(address, world.Clock);
            ImportResult result = entry.Into(opened, FactOrigin.Now(world.Clock, "command"));
            foreach (Refusal refusal in result.Refusals)
            {
                world.Error.WriteLine($"{refusal.Message} {refusal.Remedy}");
            }

            if (!result.Taken)
            {
                return Entry.Refused;
            }

            Tell(result, entry.Reading.Season.Settings.Name, address, parsed.GetValue(json), world, phrases);
            return Entry.Done;
        });
        return command;
    }

    private static void Tell(ImportResult result, string season, LedgerAddress address, bool json, World world, Phrasebook phrases)
    {
        foreach (SeasonWarning warning in result.Warnings)
        {
            world.Error.WriteLine(phrases.Say(Phrase.WarningLine, warning));
        }

        world.Output.WriteLine(
            json ? LedgerText.Json(("facts", result.Facts), ("warnings", LedgerText.Texts(result.Warnings))).ToJsonString(JsonForm.Indented)
            : result.Already ? phrases.Say(Phrase.ImportAlready, address)
            : phrases.Say(Phrase.ImportTaken, result.Facts, season, address));
    }

    private static int TellFaults(IReadOnlyList<Fault> faults, int count, string folder, World world, Phrasebook phrases)
    {
        world.Error.WriteLine(phrases.Say(count == 1 ? Phrase.ImportRefusedOnce : Phrase.ImportRefused, folder, count));
        FaultsTold.Tell(faults, count, world, phrases);
        return Entry.Refused;
    }
}
