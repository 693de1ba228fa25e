namespace Cloveshed.Ledger.Tests.Outside;

/// <summary>Several writers on one file: one chain without forks, and nothing lost.</summary>
public sealed class TogetherTests : IDisposable
{
    private readonly Shed shed = new();

    public void Dispose() => shed.Dispose();

    [Fact]
    public async Task Threads_of_several_ledgers_make_one_chain()
    {
        const int Ledgers = 3, Each = 40;
        ShedLedger[] ledgers = [.. Enumerable.Range(0, Ledgers).Select(_ => ShedLedger.Open(shed.Address, shed.Clock))];
        NewFact[][] notes = [.. Enumerable.Range(0, Ledgers * 2).Select(writer => Enumerable.Range(0, Each).Select(at => shed.Here.Note($"{writer} {at}")).ToArray())];
        await Task.WhenAll(notes.Select((mine, writer) => Task.Run(() =>
        {
            ShedLedger ledger = ledgers[writer % Ledgers];
            foreach (NewFact note in mine)
            {
                Appended.Accepted taken = Assert.IsType<Appended.Accepted>(ledger.Append([note]));
                // What was answered is there for everybody at once.
                Assert.True(ledgers[(writer + 1) % Ledgers].Now().Head.Seq >= taken.Facts[0].Seq);
            }
        })));
        Fact[] facts = [.. shed.Ledger.Read()];
        Assert.Equal(Enumerable.Range(1, Ledgers * 2 * Each).Select(at => (long)at), facts.Select(fact => fact.Seq));
        Assert.Equal(notes.SelectMany(mine => mine).Select(note => note.Id).Order(), facts.Select(fact => fact.Id).Order());
        // Each writer's own facts are in the order in which it handed them in.
        foreach (NewFact[] mine in notes)
            Assert.Equal(mine.Select(note => note.Id), facts.Where(fact => mine.Any(note => note.Id == fact.Id)).Select(fact => fact.Id));
        Assert.Empty(shed.Ledger.Verify().Flaws);
        foreach (ShedLedger ledger in ledgers)
            ledger.Dispose();
    }

    [Fact]
    public void Two_processes_that_make_and_fill_a_ledger_at_once_make_one_chain()
    {
        string file = shed.At("both.db"), small = shed.At("small");
        SmallSeason.Put(small);
        System.Diagnostics.Process[] both = [CloveshedProcess.Start("import", SourceTree.Demo, "--db", file), CloveshedProcess.Start("import", small, "--db", file)];
        foreach (System.Diagnostics.Process process in both)
        {
            (int code, _, string error) = CloveshedProcess.Ended(process);
            Assert.Equal((0, ""), (code, error));
        }
        using ShedLedger ledger = ShedLedger.Open(new LedgerAddress(file), shed.Clock);
        VerifyResult result = ledger.Verify();
        Assert.Empty(result.Flaws);
        Assert.Equal(2, ledger.Read(kind: FactKinds.SeasonOpened).Count());
        Assert.Equal(9527 + SmallRows(small), result.Facts);
    }

    private static int SmallRows(string folder) =>
        1 + Directory.EnumerateFiles(folder, "*.csv").Sum(file => File.ReadAllLines(file).Length - 1);

    /// <summary>A ledger at hand sees what another one took, without reading the season anew.</summary>
    [Fact]
    public void What_another_took_is_folded_on()
    {
        Assert.True(SeasonImport.Import(shed.Ledger, SmallSeason.Files(), shed.Here).Taken);
        ShedState before = shed.Ledger.Now();
        using ShedLedger other = ShedLedger.Open(shed.Address, shed.Clock);
        Assert.IsType<Appended.Accepted>(other.Append([shed.Here.Note("x")]));
        ShedState after = shed.Ledger.Now();
        Assert.Equal(before.Head.Seq + 1, after.Head.Seq);
        Assert.Same(before.Season, after.Season);
        Assert.Same(after, shed.Ledger.Now());
        Assert.IsType<Appended.Accepted>(other.Append([shed.Here.RowDropped(shed.Order(1))]));
        Assert.Equal(["o2"], shed.Ledger.Now().Season!.Orders.Select(order => order.Order.Text));
        Assert.Equal(["o1", "o2"], before.Season!.Orders.Select(order => order.Order.Text));
    }

    /// <summary>The file put in another's place by a restore.</summary>
    [Fact]
    public void A_ledger_never_mixes_two_files()
    {
        shed.Take(shed.Here.Note("one"));
        shed.Ledger.Backup(shed.At("copy.db"));
        shed.Take(shed.Here.Note("two"));
        using ShedLedger copy = ShedLedger.Open(new LedgerAddress(shed.At("copy.db")), shed.Clock);
        Assert.Equal(1, copy.Head().Seq);
        Assert.IsType<Appended.Accepted>(copy.Append([shed.Here.Note("another two")]));
        Assert.NotEqual(shed.Ledger.Head().Hash, copy.Head().Hash);
        Assert.Equal(shed.Ledger.Head().Seq, copy.Head().Seq);
    }
}
