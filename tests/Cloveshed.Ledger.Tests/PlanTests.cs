using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Ledger.Tests;

/// <summary>Plans as facts: asked, made or not made, adopted; their files as documents.</summary>
public sealed class PlanTests : IDisposable
{
    private readonly Shed shed = Shed.WithSeason();

    public void Dispose() => shed.Dispose();

    private Guid Ask(string name = "first") => shed.Take(shed.Here.PlanAsked(name, 60, 0.001, 7, "es", shed.Ledger.Head().Seq))[0].Id;

    private NewFact Made(Guid job, string document) => shed.Here.PlanMade(job, document, 600, double.NaN, double.NaN, "time", shed.Ledger.Head().Seq);

    private static PlanAnswer Answer() => new(
        new PlanSummary(
            600, 610.25, 10.25 / 600, 0.01, 0, 1.5, PlanStatus.TimeReached, 600, new Dictionary<string, double> { ["orders"] = 600 }, new Dictionary<string, double> { ["line"] = 0 },
            new Dictionary<string, double> { ["M30"] = 1 }, [], ["añejo"], "0.1.0", "digest", new Dictionary<string, double> { ["rows"] = 3 }),
        [new PathWeek("p1", new LotId("A"), new PlaceId("yard"), 0, new PlaceId("yard"), 1, 1, 0, 0.1)], [new LotShare(new LotId("A"), ShareKind.BulbClass, "M", 1)],
        [new RunRow("r1", 0, new LineId("pack"), LineMode.Fresh, false, new LotId("A"), "p1", new PlaceId("yard"), 1000, 1000, 1, 0, "due")], [],
        [new MadeRow("r1", 0, new ProductId("M30"), new LotId("A"), 30, 900)], [new FillRow(new OrderId("o1"), "1", 0, new ProductId("M30"), 30)], [], [],
        [new ShortRow(new OrderId("o2"), "1", 12, "no bulbs")], [], [], [], [], []);

    [Fact]
    public void A_job_is_open_until_it_ends_and_survives_a_restart()
    {
        Guid asked = Ask();
        shed.Reopen();
        PlanJob job = Assert.Single(shed.Ledger.Now().Jobs);
        Assert.Equal((asked, "first", 60.0, 0.001, (int?)7, "es"), (job.Fact, job.Name, job.Seconds, job.Gap, job.Seed, job.Language));
        shed.Take(shed.Here.PlanStopped(asked));
        shed.Reopen();
        ShedState now = shed.Ledger.Now();
        Assert.Empty(now.Jobs);
        Assert.Equal((asked, true), (Assert.Single(now.Ended).Asked, now.Ended[0].Stopped));
    }

    [Fact]
    public void A_plan_that_was_made_can_be_adopted_and_read_again()
    {
        PlanDocument document = PlanDocument.Of(Answer(), shed.Ledger.Now().Season!);
        Guid asked = Ask();
        NewFact made = Made(asked, document.Sha256);
        Assert.IsType<Appended.Accepted>(shed.Ledger.Append([made], new Dictionary<string, byte[]> { [document.Sha256] = document.Bytes }));
        PlanEntry plan = Assert.Single(shed.Ledger.Now().Plans);
        Assert.Equal((asked, "first", 600.0, "time"), (plan.Asked, plan.Name, plan.Value, plan.Status));
        Assert.True(double.IsNaN(plan.Bound));
        Assert.Null(shed.Ledger.Now().Adopted);
        shed.Take(shed.Here.PlanAdopted(plan));
        shed.Reopen();
        Assert.Equal(plan, shed.Ledger.Now().Adopted);
        PlanAnswer read = PlanDocument.Read(shed.Ledger.Document(plan.Document)!);
        Assert.Equal(Rendered(Answer()), Rendered(read));
        Assert.Empty(shed.Ledger.Verify().Flaws);
    }

    [Fact]
    public void A_second_plan_takes_the_place_of_the_adopted_one()
    {
        foreach (string name in new[] { "first", "second" })
        {
            PlanDocument document = PlanDocument.Of(Answer(), shed.Ledger.Now().Season!);
            Assert.IsType<Appended.Accepted>(shed.Ledger.Append([Made(Ask(name), document.Sha256)], new Dictionary<string, byte[]> { [document.Sha256] = document.Bytes }));
            shed.Take(shed.Here.PlanAdopted(shed.Ledger.Now().Plans[^1]));
        }
        ShedState now = shed.Ledger.Now();
        Assert.Equal((2, "second"), (now.Plans.Count, now.Adopted!.Name));
        shed.Reopen();
        Assert.Equal("second", shed.Ledger.Now().Adopted!.Name);
    }

    [Fact]
    public void The_same_answer_packs_to_the_same_bytes() =>
        Assert.Equal(PlanDocument.Of(Answer(), shed.Ledger.Now().Season!).Sha256, PlanDocument.Of(Answer(), shed.Ledger.Now().Season!).Sha256);

    [Fact]
    public void Why_a_plan_was_refused_is_kept()
    {
        Guid one = Ask("one"), two = Ask("two");
        shed.Take(shed.Here.PlanRefused(one, "out of memory", []), shed.Here.PlanRefused(two, null, ["lot-balance at A", "capacity at yard"]));
        Assert.Equal(["out of memory", "lot-balance at A\ncapacity at yard"], shed.Ledger.Now().Ended.Select(end => end.Why));
    }

    [Fact]
    public void An_end_without_a_job_and_a_plan_without_its_document_are_refused()
    {
        string digest = PlanDocument.Of(Answer(), shed.Ledger.Now().Season!).Sha256;
        Assert.Equal("job-unknown", shed.Refuse(shed.Here.PlanStopped(Guid.CreateVersion7())).Rule);
        Guid asked = Ask();
        Assert.Equal("document-missing", shed.Refuse(Made(asked, digest)).Rule);
        Assert.Equal("document-missing", shed.Refuse(shed.Here.PlanRefused(asked, null, ["x"], digest)).Rule);
        Refusal wrong = Assert.Single(Assert.IsType<Appended.Refused>(shed.Ledger.Append([Made(asked, digest)], new Dictionary<string, byte[]> { [digest] = [1, 2, 3] })).Refusals);
        Assert.Equal("document-digest", wrong.Rule);
        shed.Take(shed.Here.PlanStopped(asked));
        Assert.Equal("job-ended", shed.Refuse(shed.Here.PlanStopped(asked)).Rule);
        Assert.Equal("plan-unknown", shed.Refuse(shed.Here.Make(FactKinds.PlanAdopted, new() { ["plan"] = asked.ToString() })).Rule);
        Assert.Equal("basis-ahead", shed.Refuse(shed.Here.PlanAsked("x", 60, 0, null, "en", shed.Ledger.Head().Seq + 1)).Rule);
    }

    [Fact]
    public void A_document_that_holds_no_answer_is_not_read_as_one()
    {
        using MemoryStream stream = new();
        using (System.IO.Compression.ZipArchive zip = new(stream, System.IO.Compression.ZipArchiveMode.Create, leaveOpen: true))
            zip.CreateEntry("empty.txt");
        Assert.Throws<InvalidDataException>(() => PlanDocument.Read(stream.ToArray()));
    }

    [Fact]
    public void Holds_are_in_force_until_lifted_and_know_their_unit()
    {
        NodaTime.LocalDate week = new(2030, 7, 8);
        shed.Take(shed.Here.RunPinned(new LotId("A"), new LineId("pack"), week, 100, MassUnit.Kilogram), shed.Here.RunPinned(new LotId("B"), new LineId("pack"), week, null, MassUnit.Pound),
            shed.Here.RunBarred(new LotId("B"), new LineId("pack"), week.PlusWeeks(1)));
        shed.Reopen();
        IReadOnlyList<RunHold> holds = shed.Ledger.Now().Holds;
        Assert.Equal([(true, "A", (double?)100), (true, "B", null), (false, "B", null)], holds.Select(hold => (hold.Pinned, hold.Lot.Text, hold.Mass)));
        // NIST SP 811 (2008), appendix B.8: 1 lb is 0.45359237 kg exactly.
        Assert.Equal(100 / 0.45359237, holds[0].MassIn(MassUnit.Pound)!.Value, 1e-9);
        shed.Take(shed.Here.HoldLifted(holds[1]));
        Assert.Equal([holds[0], holds[2]], shed.Ledger.Now().Holds);
        Assert.Empty(shed.Ledger.Verify().Flaws);
    }

    private static IEnumerable<string> Rendered(PlanAnswer answer)
    {
        Season season = SeasonReader.Parse(SmallSeason.Files()).Season!;
        return AnswerWriter.Render(answer, season).Select(file => file.Name + System.Text.Encoding.UTF8.GetString(file.Bytes));
    }
}
