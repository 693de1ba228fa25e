using Cloveshed.Core;
using Cloveshed.Ledger.Facts;

namespace Cloveshed.Ledger.Folds;

/// <summary>
/// Facts into a state, one by one in their order. It starts from any state, so that a state that is at hand is carried on with the
/// few facts that are new. Facts that do not count (as of a day before they happened) are passed through it all the same, because
/// rows are numbered by them.
/// </summary>
internal sealed class ShedFold
{
    private readonly ShedState began;
    private readonly List<RunHold> holds;
    private readonly List<PlanEntry> plans;
    private readonly List<PlanJob> jobs;
    private readonly List<PlanEnd> ended;
    private readonly List<SizerCount> counts;
    private readonly List<SizerSetting> sizer;
    private readonly List<DrumSetting> drum;
    private PlanEntry? adopted;

    public ShedFold(ShedState from)
    {
        began = from;
        Season = new SeasonFold(from.Rows);
        LastSeq = from.Head.Seq;
        (holds, plans, jobs, ended, adopted) = ([.. from.Holds], [.. from.Plans], [.. from.Jobs], [.. from.Ended], from.Adopted);
        (counts, sizer, drum) = ([.. from.SizerCounts], [.. from.SizerSettings], [.. from.DrumSettings]);
    }

    public SeasonFold Season { get; }

    /// <summary>The number of the last fact that went in.</summary>
    public long LastSeq { get; private set; }

    /// <summary>Any hold, plan or job changed since the start.</summary>
    public bool DecisionsChanged { get; private set; }

    /// <summary>Any count or setting of the line changed since the start.</summary>
    public bool LineChanged { get; private set; }

    public SizerCount? Count(Guid fact) => counts.Find(count => count.Fact == fact);

    public RunHold? Hold(Guid fact) => holds.Find(hold => hold.Fact == fact);

    public PlanEntry? Plan(Guid fact) => plans.Find(plan => plan.Fact == fact);

    public PlanJob? Job(Guid fact) => jobs.Find(job => job.Fact == fact);

    public bool HasEnded(Guid job) => ended.Exists(end => end.Asked == job) || plans.Exists(plan => plan.Asked == job);

    public void Apply(StoredFact fact, bool counted = true) => Apply(fact, Body.Of(fact.Body), counted);

    public void Apply(StoredFact fact, Body body, bool counted = true)
    {
        Guid id = Guid.ParseExact(fact.Id, "D");
        LastSeq = fact.Seq;
        if (FactKinds.OfRow(fact.Kind) is { } row)
            Season.Step(row, id, fact.Seq, body, counted);
        else if (fact.Kind == FactKinds.SeasonOpened)
            Season.Open(id, body, counted);
        else if (counted && !FactKinds.StandsApart(fact.Kind))
            ApplyOther(fact, id, body);
    }

    public ShedState Finished(LedgerHead head)
    {
        SeasonRows? rows = Season.Finished();
        return new ShedState(head, rows, DecisionsChanged ? [.. holds] : began.Holds, DecisionsChanged ? [.. plans] : began.Plans, adopted,
            DecisionsChanged ? [.. jobs] : began.Jobs, DecisionsChanged ? [.. ended] : began.Ended)
        {
            Text = rows is null ? null : ReferenceEquals(rows, began.Rows) ? began.Text : new SeasonText(rows),
            SizerCounts = LineChanged ? [.. counts] : began.SizerCounts,
            SizerSettings = LineChanged ? [.. sizer] : began.SizerSettings,
            DrumSettings = LineChanged ? [.. drum] : began.DrumSettings,
        };
    }

    private void ApplyOther(StoredFact fact, Guid id, Body body)
    {
        if (fact.Kind is FactKinds.SizerCounted or FactKinds.SizerSet or FactKinds.DrumSet)
        {
            LineChanged = true;
            ApplyLine(fact, id, body);
            return;
        }
        DecisionsChanged |= fact.Kind is not (FactKinds.SeasonChanged or FactKinds.Note);
        switch (fact.Kind)
        {
            case FactKinds.SeasonChanged:
                Season.Change(body, counted: true);
                break;
            case FactKinds.RunPinned or FactKinds.RunBarred:
                bool pinned = fact.Kind == FactKinds.RunPinned;
                holds.Add(new RunHold(
                    id, pinned, new LotId(body.Text("lot")), new LineId(body.Text("line")), body.Date("week"),
                    pinned && body.NumberOrNone("mass") is > 0 and double mass ? mass : null, body.Unit("unit")));
                break;
            case FactKinds.HoldLifted:
                holds.RemoveAll(hold => StoredFact.IdText(hold.Fact) == fact.Corrects);
                break;
            case FactKinds.PlanAdopted:
                Guid plan = body.Id("plan");
                adopted = plans.Find(made => made.Fact == plan) ?? adopted;
                break;
            case FactKinds.PlanAsked:
                jobs.Add(new PlanJob(
                    id, body.Text("name"), body.Number("seconds"), body.Number("gap"), body.WholeOrNone("seed"), body.Whole("basis"),
                    body.TextOrNone("language") ?? "en", StoredFact.Time(fact.HappenedAt)));
                break;
            case FactKinds.PlanMade or FactKinds.PlanRefused or FactKinds.PlanStopped:
                End(fact, id, body);
                break;
        }
    }

    private void ApplyLine(StoredFact fact, Guid id, Body body)
    {
        LotId lot = new(body.Text("lot"));
        DateTimeOffset at = StoredFact.Time(fact.HappenedAt);
        switch (fact.Kind)
        {
            case FactKinds.SizerCounted:
                SizerCount count = new(id, lot, body.Text("file"), at, checked((int)body.Whole("bins")), checked((int)body.Whole("from")), body.Wholes("counts"), body.Whole("too_heavy"));
                int was = counts.FindIndex(one => StoredFact.IdText(one.Fact) == fact.Corrects);
                if (was >= 0)
                    counts[was] = count;
                else
                    counts.Add(count);
                break;
            case FactKinds.SizerSet:
                sizer.RemoveAll(one => one.Lot == lot);
                sizer.Add(new SizerSetting(id, lot, at, body.Boxes("boxes"), body.NumberOrNone("over_g")));
                break;
            default:
                drum.RemoveAll(one => one.Lot == lot);
                drum.Add(new DrumSetting(id, lot, at, body.Numbers("holes_mm"), body.Text("order") == "largest-first"));
                break;
        }
    }

    /// <summary>The job's end. As of a day before it was asked there is no job to end.</summary>
    private void End(StoredFact fact, Guid id, Body body)
    {
        Guid asked = body.Id("asked");
        if (Job(asked) is not { } job)
            return;
        jobs.Remove(job);
        DateTimeOffset at = StoredFact.Time(fact.HappenedAt);
        if (fact.Kind == FactKinds.PlanMade)
            plans.Add(new PlanEntry(
                id, asked, job.Name, at, body.Sha256("document"), body.Number("value"), body.NumberOrNone("bound") ?? double.NaN,
                body.NumberOrNone("gap") ?? double.NaN, body.Whole("basis"), body.TextOrNone("status") ?? ""));
        else
            ended.Add(new PlanEnd(id, asked, job.Name, at, fact.Kind == FactKinds.PlanStopped, body.TextOrNone("fault") ?? string.Join('\n', body.TextsOrNone("breaches")), body.TextOrNone("document")));
    }
}
