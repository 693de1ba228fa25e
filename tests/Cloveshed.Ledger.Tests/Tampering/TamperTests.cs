using Cloveshed.Core;

namespace Cloveshed.Ledger.Tests.Tampering;

/// <summary>Whatever is done to the file behind the ledger's back, verify names it, and so does a restore.</summary>
public sealed class TamperTests : IDisposable
{
    private readonly Shed shed = Shed.WithSeason();

    public TamperTests()
    {
        NewFact asked = shed.Here.PlanAsked("x", 60, 0, null, "en", 1);
        byte[] document = [1, 2, 3];
        string digest = Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(document));
        Assert.IsType<Appended.Accepted>(shed.Ledger.Append(
            [shed.Here.Note("one"), shed.Here.RunBarred(new LotId("A"), new LineId("pack"), new(2030, 7, 1)), asked, shed.Here.PlanRefused(asked.Id, "x", [], digest)],
            new Dictionary<string, byte[]> { [digest] = document }));
        shed.Take(shed.Here.RowDropped(shed.Order(2)), shed.Here.Note("last"));
        Assert.Empty(shed.Ledger.Verify().Flaws);
        shed.Ledger.Dispose();
    }

    public void Dispose() => shed.Dispose();

    public static TheoryData<string, string, string> Deeds => new()
    {
        { "a body", "UPDATE facts SET body = replace(body, 'north', 'south') WHERE body LIKE '%north%'", "hash" },
        { "a body and its hash", "UPDATE facts SET body = replace(body, 'north', 'south'), hash = CASE WHEN hash LIKE 'ab%' THEN 'cd' ELSE 'ab' END || substr(hash, 3) WHERE body LIKE '%north%'", "hash prev" },
        { "a body that is no JSON any more", "UPDATE facts SET body = substr(body, 2) WHERE seq = 3", "hash body" },
        { "a body written otherwise", "UPDATE facts SET body = replace(body, ',', ', ') WHERE seq = 1", "hash body" },
        { "a hash", "UPDATE facts SET hash = CASE WHEN hash LIKE 'ab%' THEN 'cd' ELSE 'ab' END || substr(hash, 3) WHERE seq = 5", "hash prev" },
        { "the last hash", "UPDATE facts SET hash = CASE WHEN hash LIKE 'ab%' THEN 'cd' ELSE 'ab' END || substr(hash, 3) WHERE seq = (SELECT max(seq) FROM facts)", "hash head" },
        { "the hash before", "UPDATE facts SET prev = CASE WHEN prev LIKE 'ab%' THEN 'cd' ELSE 'ab' END || substr(prev, 3) WHERE seq = 5", "prev hash" },
        { "who said it", "UPDATE facts SET said_by = 'another' WHERE kind = 'note'", "hash" },
        { "when it happened", "UPDATE facts SET happened_at = '2030-06-01T10:00:00.0000000-05:00' WHERE seq = 2", "hash" },
        { "when it was taken", "UPDATE facts SET recorded_at = '2030-06-01T10:00:00.0000000+00:00' WHERE seq = 2", "hash" },
        { "its batch", "UPDATE facts SET batch = id WHERE seq = 2", "hash" },
        { "what it corrects", "UPDATE facts SET corrects = NULL WHERE corrects IS NOT NULL", "hash" },
        { "its kind", "UPDATE facts SET kind = 'note' WHERE kind = 'run.barred'", "hash fold" },
        { "a kind that is none", "UPDATE facts SET kind = 'lot.eaten' WHERE seq = 3", "hash kind" },
        { "a fact left out", "DELETE FROM facts WHERE seq = 6", "seq prev" },
        { "the first fact left out", "DELETE FROM facts WHERE seq = 1", "seq prev fold" },
        { "the last fact left out", "DELETE FROM facts WHERE seq = (SELECT max(seq) FROM facts)", "head" },
        { "all facts left out", "DELETE FROM facts", "head fold" },
        { "facts left out and the rest numbered anew", "DELETE FROM facts WHERE seq = 6; UPDATE facts SET seq = seq - 1 WHERE seq > 6", "prev hash" },
        { "two facts exchanged", "UPDATE facts SET seq = -1 WHERE seq = 4; UPDATE facts SET seq = 4 WHERE seq = 5; UPDATE facts SET seq = 5 WHERE seq = -1", "hash prev" },
        { "a fact put in", "INSERT INTO facts SELECT (SELECT max(seq) + 1 FROM facts), '017f22e2-79b0-7cc3-98c4-dc0c0c07398f', kind, happened_at, recorded_at, said_by, device, place, body, corrects, batch, hash, hash FROM facts WHERE seq = (SELECT max(seq) FROM facts)", "hash head" },
        { "the head", "UPDATE ledger_head SET seq = seq - 1", "head" },
        { "no head", "DELETE FROM ledger_head", "head" },
        { "a cell of a read table", "UPDATE season_rows SET cells = replace(cells, 'north', 'south') WHERE cells LIKE '%north%'", "fold" },
        { "a row of a read table gone", "DELETE FROM season_rows WHERE file = 'lots.csv' AND row = 2", "fold" },
        { "a row of a read table more", "INSERT INTO season_rows VALUES ('lots.csv', 3, '{}', NULL, 9)", "fold" },
        { "a dropped row back", "UPDATE season_rows SET cells = '{}' WHERE cells IS NULL", "fold" },
        { "the settings", "UPDATE seasons SET settings = replace(settings, 'USD', 'EUR')", "fold" },
        { "a file's columns", "UPDATE season_files SET columns = 'lot' WHERE file = 'lots.csv'", "fold" },
        { "a hold lifted by hand", "DELETE FROM holds", "fold" },
        { "a job made open again", "INSERT INTO plan_jobs SELECT * FROM plan_ends; DELETE FROM plan_ends", "fold" },
        { "a document", "UPDATE documents SET bytes = x'010204'", "document" },
        { "a document gone", "DELETE FROM documents", "document" },
    };

    [Theory, MemberData(nameof(Deeds))]
    public void Verify_names_it(string deed, string commands, string rules)
    {
        Assert.True(shed.Sql(commands) > 0, $"{deed}: nothing was done.");
        using ShedLedger ledger = ShedLedger.Open(shed.Address, shed.Clock);
        VerifyResult result = ledger.Verify();
        Assert.False(result.Ok, deed);
        Assert.All(rules.Split(' '), rule => Assert.Contains(rule, result.Flaws.Select(flaw => flaw.Rule)));
        Assert.All(result.Flaws, flaw => Assert.True(flaw.Where.Length > 0 && flaw.Found != flaw.Expected, flaw.ToString()));

        LedgerFault unproven = Assert.Throws<LedgerFault>(() => ledger.Backup(shed.At("copy.db")));
        Assert.Equal(LedgerFaultKind.Unproven, unproven.Kind);
        Assert.Equal(LedgerFaultKind.Unproven, Assert.Throws<LedgerFault>(() => ShedLedger.Restore(shed.File, new LedgerAddress(shed.At("new.db")))).Kind);
        Assert.All(Directory.EnumerateFiles(Path.GetDirectoryName(shed.File)!), file => Assert.StartsWith(shed.File, file, StringComparison.Ordinal));
    }

    [Theory, MemberData(nameof(Deeds))]
    public void Rebuild_mends_read_tables_and_makes_nothing_of_a_broken_chain(string deed, string commands, string rules)
    {
        shed.Sql(commands);
        using ShedLedger ledger = ShedLedger.Open(shed.Address, shed.Clock);
        RebuildResult result = ledger.Rebuild();
        if (rules == "fold")
        {
            Assert.True(result is { Rebuilt: true, Ok: false }, deed);
            Assert.All(result.Differences, difference => Assert.Equal("fold", difference.Rule));
            Assert.Empty(ledger.Verify().Flaws);
            Assert.True(ledger.Rebuild().Ok);
        }
        else if (rules == "document")
            Assert.True(result.Ok, deed);
        else
            Assert.True(result is { Rebuilt: false, Ok: false }, deed);
    }

    /// <summary>A damaged page is the database's own to find.</summary>
    [Fact]
    public void Damage_to_the_file_itself_is_named()
    {
        using (FileStream file = new(shed.File, FileMode.Open))
        {
            file.Position = file.Length / 2;
            file.Write(Enumerable.Repeat((byte)0x5A, 8192).ToArray());
        }
        using ShedLedger ledger = ShedLedger.Open(shed.Address, shed.Clock);
        try
        {
            Assert.Contains("storage", ledger.Verify().Flaws.Select(flaw => flaw.Rule));
        }
        catch (LedgerFault fault)
        {
            Assert.Equal(LedgerFaultKind.Corrupt, fault.Kind);
        }
    }
}
