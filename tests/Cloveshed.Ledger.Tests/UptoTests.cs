namespace Cloveshed.Ledger.Tests;

/// <summary>The shed by the facts up to a number is what it was when that was the last one.</summary>
public sealed class UptoTests : IDisposable
{
    private readonly Shed shed = new();

    public void Dispose() => shed.Dispose();

    [Fact]
    public void Each_number_gives_the_shed_that_was_then()
    {
        SeasonImport.Import(shed.Ledger, SourceTree.Demo, shed.Here);
        List<ShedState> were = [shed.Ledger.Now()];
        void Take(NewFact fact)
        {
            Assert.IsType<Appended.Accepted>(shed.Ledger.Append([fact]));
            were.Add(shed.Ledger.Now());
        }

        SeasonRow order = were[0].Rows!.Of("orders.csv").First(), lot = were[0].Rows!.Of("lots.csv").Last();
        Take(shed.Here.RowDropped(order));
        Take(shed.Here.RunBarred(new(lot.Cells["lot"]), were[0].Season!.Lines[0].Id, were[0].Season!.Settings.FirstWeek));
        Take(shed.Here.PlanAsked("one", 1, 0, null, "en", were[0].Head.Seq));
        Take(shed.Here.HoldLifted(shed.Ledger.Now().Holds[0]));
        foreach (ShedState was in were)
        {
            ShedState upto = shed.Ledger.Upto(was.Head.Seq);
            Assert.Equal(was.Head, upto.Head);
            Assert.Equal(was.InputDigest, upto.InputDigest);
            Assert.Equal(was.Holds, upto.Holds);
            Assert.Equal(was.Jobs, upto.Jobs);
        }

        Assert.Equal(were[^1].Head, shed.Ledger.Upto(were[^1].Head.Seq + 5).Head);
        Assert.Null(shed.Ledger.Upto(0).Rows);
    }
}
