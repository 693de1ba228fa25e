using System.CommandLine;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Words;
using Cloveshed.Ledger;

namespace Cloveshed.App.Commands;

/// <summary>restore FILE --db NEW: a backup as a new ledger.</summary>
internal static class RestoreCommand
{
    public static Command Build(World world, Phrasebook phrases)
    {
        Argument<string> file = Given.FileName("FILE", phrases[Phrase.RestoreFile], phrases);
        Option<string> into = Given.Ledger("NEW", phrases[Phrase.RestoreInto], phrases);
        into.Required = true;
        Option<bool> json = Given.Json(phrases[Phrase.JsonLedger]);
        ShedCommand command = new("restore", phrases[Phrase.RestoreDoes], "cloveshed restore shed-2026-11-30.db --db shed-restored.db") { file, into, json };
        command.SetAction(parsed =>
        {
            LedgerAddress address = LedgerAddress.Parse(parsed.GetRequiredValue(into));
            RestoreResult result = ShedLedger.Restore(parsed.GetRequiredValue(file), address);
            world.Output.WriteLine(
                parsed.GetValue(json) ? LedgerText.Json(("facts", result.Facts), ("head", result.Head.Hash)).ToJsonString(JsonForm.Indented)
                : phrases.Say(Phrase.RestoreDone, result.Facts, address));
            return Entry.Done;
        });
        return command;
    }
}
