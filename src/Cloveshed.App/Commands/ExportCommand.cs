using System.CommandLine;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Words;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.App.Commands;

/// <summary>export FOLDER: the current season out of a ledger, as files.</summary>
internal static class ExportCommand
{
    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> folder = Given.Folder("FOLDER", phrases[Phrase.ExportFolder], phrases);
        Option<string> ledger = Given.Ledger("URL", phrases[Phrase.LedgerOption], phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonLedger]);
        ShedCommand command = new("export", phrases[Phrase.ExportDoes], "cloveshed export my-season --db shed.db") { folder, ledger, json };
        command.SetAction(parsed =>
        {
            LedgerAddress address = LedgerAddress.Of(parsed.GetValue(ledger), world.Variable);
            string into = parsed.GetRequiredValue(folder);
            using ShedLedger opened = ShedLedger.OpenExisting(address, world.Clock);
            ShedState now = opened.Now();
            if (now.Rows is null)
            {
                return Refuse(phrases.Say(Phrase.ExportNone, address), world);
            }

            if (SeasonExport.Stray(now, into) is { } stray)
            {
                return Refuse(phrases.Say(Phrase.ExportStray, into, stray), world);
            }

            int facts = SeasonExport.Export(now, into);
            foreach (SeasonWarning warning in now.Warnings)
            {
                world.Error.WriteLine(phrases.Say(Phrase.WarningLine, warning));
            }

            world.Output.WriteLine(
                parsed.GetValue(json) ? LedgerText.Json(("facts", facts), ("warnings", LedgerText.Texts(now.Warnings))).ToJsonString(JsonForm.Indented)
                : phrases.Say(Phrase.ExportDone, facts - 1, into));
            return Entry.Done;
        });
        return command;
    }

    private static int Refuse(string why, World world)
    {
        world.Error.WriteLine(why);
        return Entry.Refused;
    }
}
