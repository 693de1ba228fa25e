using System.CommandLine;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Words;
using Cloveshed.Ledger;

namespace Cloveshed.App.Commands;

/// <summary>backup FILE: a whole ledger, copied while the program runs.</summary>
internal static class BackupCommand
{
    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> file = Given.FileName("FILE", phrases[Phrase.BackupFile], phrases);
        Option<string> ledger = Given.Ledger("URL", phrases[Phrase.LedgerOption], phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonLedger]);
        ShedCommand command = new("backup", phrases[Phrase.BackupDoes], "cloveshed backup shed-2026-11-30.db --db shed.db") { file, ledger, json };
        command.SetAction(parsed =>
        {
            using ShedLedger opened = ShedLedger.OpenExisting(LedgerAddress.Of(parsed.GetValue(ledger), world.Variable), world.Clock);
            BackupResult result = opened.Backup(parsed.GetRequiredValue(file));
            world.Output.WriteLine(
                parsed.GetValue(json) ? LedgerText.Json(("facts", result.Facts), ("head", result.Head.Hash)).ToJsonString(JsonForm.Indented)
                : phrases.Say(Phrase.BackupDone, result.Facts, parsed.GetRequiredValue(file), result.Head.Hash));
            return Entry.Done;
        });
        return command;
    }
}
