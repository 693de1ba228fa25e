using System.CommandLine;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Words;
using Cloveshed.Ledger;

namespace Cloveshed.App.Commands;

/// <summary>ledger verify, ledger rebuild, ledger show.</summary>
internal static class LedgerCommand
{
    public static Command Build(World world, Phrasebook phrases) =>
        new ShedCommand("ledger", phrases[Phrase.LedgerDoes], "cloveshed ledger verify --db shed.db", "cloveshed ledger show --lot 26-001 --db shed.db")
        {
            Verify(world, phrases), Rebuild(world, phrases), Show(world, phrases),
        };

    private static ShedCommand Verify(World world, Phrasebook phrases)
    {
        Option<string> ledger = Given.Ledger("URL", phrases[Phrase.LedgerOption], phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonLedger]);
        ShedCommand command = new("verify", phrases[Phrase.LedgerVerifyDoes], "cloveshed ledger verify --db shed.db") { ledger, json };
        command.SetAction(parsed =>
        {
            using ShedLedger opened = Opened(parsed.GetValue(ledger), world);
            VerifyResult result = opened.Verify();
            Tell(result.Facts, result.Ok, result.Head, result.Flaws, parsed.GetValue(json), phrases.Say(Phrase.VerifyHolds, result.Facts, result.Head.Hash), world, phrases);
            return Ended(result.Ok, phrases.Say(Phrase.VerifyBroken, result.Flaws.Count), world);
        });
        return command;
    }

    private static ShedCommand Rebuild(World world, Phrasebook phrases)
    {
        Option<string> ledger = Given.Ledger("URL", phrases[Phrase.LedgerOption], phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonLedger]);
        ShedCommand command = new("rebuild", phrases[Phrase.LedgerRebuildDoes], "cloveshed ledger rebuild --db shed.db") { ledger, json };
        command.SetAction(parsed =>
        {
            using ShedLedger opened = Opened(parsed.GetValue(ledger), world);
            RebuildResult result = opened.Rebuild();
            Tell(result.Facts, result.Ok, result.Head, result.Differences, parsed.GetValue(json), phrases.Say(Phrase.RebuildSame, result.Facts), world, phrases);
            return Ended(result.Ok, phrases.Say(result.Rebuilt ? Phrase.RebuildMended : Phrase.RebuildBroken, result.Differences.Count, result.Facts), world);
        });
        return command;
    }

    private static ShedCommand Show(World world, Phrasebook phrases)
    {
        Option<string> kind = Given.Word("--kind", "K", phrases[Phrase.LedgerKind]);
        Option<string> lot = Given.Word("--lot", "L", phrases[Phrase.LedgerLot]);
        Option<string> ledger = Given.Ledger("URL", phrases[Phrase.LedgerOption], phrases);
        Option<bool> json = Given.Json(phrases[Phrase.JsonLedger]);
        ShedCommand command = new("show", phrases[Phrase.LedgerShowDoes], "cloveshed ledger show --kind lot.changed --db shed.db", "cloveshed ledger show --lot 26-001 --json")
        {
            kind, lot, ledger, json,
        };
        command.SetAction(parsed =>
        {
            string? ofKind = parsed.GetValue(kind), ofLot = parsed.GetValue(lot);
            if (ofKind is not null && !FactKinds.All.Contains(ofKind))
            {
                return Ended(false, phrases.Say(Phrase.KindUnknown, ofKind), world);
            }

            using ShedLedger opened = Opened(parsed.GetValue(ledger), world);
            // A lot's trail runs over kinds: a change of a row need not name the lot again.
            IEnumerable<Fact> facts = ofLot is null ? opened.Read(kind: ofKind) : LotTrail.Of(opened.Read(), ofLot).Where(fact => ofKind is null || fact.Kind == ofKind);
            int broken = parsed.GetValue(json) ? ShowJson(facts, opened.Head(), world.Output) : ShowLines(facts, world.Output);
            return Ended(broken == 0, phrases.Say(Phrase.ShowHashBroken, broken), world);
        });
        return command;
    }

    private static int ShowLines(IEnumerable<Fact> facts, TextWriter output)
    {
        int broken = 0;
        foreach (Fact fact in facts)
        {
            output.WriteLine(LedgerText.Line(fact));
            broken += fact.HashHolds ? 0 : 1;
        }

        return broken;
    }

    /// <summary>Written as it is read: a ledger may be larger than memory is wide.</summary>
    private static int ShowJson(IEnumerable<Fact> facts, LedgerHead head, TextWriter output)
    {
        int broken = 0, shown = 0;
        output.Write("{\n  \"shown\": [");
        foreach (Fact fact in facts)
        {
            output.Write((shown++ == 0 ? "\n    " : ",\n    ") + LedgerText.Fact(fact).ToJsonString(JsonForm.Plain));
            broken += fact.HashHolds ? 0 : 1;
        }

        output.WriteLine($"\n  ],\n  \"facts\": {shown},\n  \"ok\": {(broken == 0 ? "true" : "false")},\n  \"head\": \"{head.Hash}\"\n}}");
        return broken;
    }

    private static void Tell(
        long facts, bool ok, LedgerHead head, IReadOnlyList<LedgerFlaw> flaws, bool json, string holds, World world, Phrasebook phrases)
    {
        if (json)
        {
            world.Output.WriteLine(LedgerText.Json(("facts", facts), ("ok", ok), ("head", head.Hash), ("flaws", LedgerText.Flaws(flaws))).ToJsonString(JsonForm.Indented));
            return;
        }

        LedgerText.WriteFlaws(flaws, world.Output, phrases);
        if (ok)
        {
            world.Output.WriteLine(holds);
        }
    }

    private static ShedLedger Opened(string? given, World world) => ShedLedger.OpenExisting(LedgerAddress.Of(given, world.Variable), world.Clock);

    private static int Ended(bool ok, string otherwise, World world)
    {
        if (ok)
        {
            return Entry.Done;
        }

        world.Error.WriteLine(otherwise);
        return Entry.Refused;
    }
}
