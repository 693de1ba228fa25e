using System.Collections.Concurrent;
using System.Runtime.ExceptionServices;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Scenarios;
using Cloveshed.Ledger;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Plan.Jobs;
using Cloveshed.Web.Plan.Since;
using Cloveshed.Web.Shared;
using Microsoft.Extensions.Hosting;

namespace Cloveshed.Web.Plan.Otherwise;

/// <summary>A plan being played through seasons that turn out otherwise, and what came of it.</summary>
public sealed class OtherwiseJob(Func<PlanningInstance> instance, PlanSight sight)
{
    /// <summary>Seasons drawn for a page.</summary>
    public const int Count = 200;

    // Seasons between two looks at whether a hand has stopped it.
    private const int AtOnce = 10;

    private volatile bool stopped;
    private volatile StudyAnswer? found;
    private volatile ExceptionDispatchInfo? failed;
    private int done;

    /// <summary>Seasons played so far.</summary>
    public int Done => Volatile.Read(ref done);

    /// <summary>The seed of chance: the season's, or 1.</summary>
    public int Seed { get; } = sight.Season.Settings.Seed ?? 1;

    /// <summary>Null until all are played. What failed on the way is thrown here, for the page that asks.</summary>
    public StudyAnswer? Found
    {
        get
        {
            failed?.Throw();
            return found;
        }
    }

    /// <summary>Stopped by a hand: nothing was found.</summary>
    public bool Stopped => stopped && found is null;

    public bool Ended => found is not null || failed is not null || stopped;

    public void Stop() => stopped = true;

    internal void Run()
    {
        try
        {
            PlanningInstance played = instance();
            ReplayShed shed = new(played, PlanPolicy.Of("expected", played, sight.Answer));
            List<ReplayOutcome> outcomes = [];
            while (outcomes.Count < Count)
            {
                if (stopped)
                {
                    return;
                }

                // One thread: it gives way to the pages.
                outcomes.AddRange(ScenarioStudy.Play(shed, new StudyQuestion(ScenarioAssumptions.Default, LotDefaults.Default, Seed, outcomes.Count, AtOnce, 1)));
                Volatile.Write(ref done, outcomes.Count);
            }

            found = ScenarioStudy.Of(shed, outcomes, LotDefaults.Default);
        }
#pragma warning disable CA1031 // whatever it is, it is thrown again where it can be told: to the page
        catch (Exception problem)
        {
            failed = ExceptionDispatchInfo.Capture(problem);
        }
#pragma warning restore CA1031
    }
}

/// <summary>Plays plans apart from the page that asked, each once. Closing the page does not stop it.</summary>
public sealed class OtherwiseRoom(ShedLedger ledger, BasisShelf bases, TimeProvider clock) : IHostedService
{
    private const int Room = 4;

    private readonly Shelf<OtherwiseJob> jobs = new(Room);
    private readonly QuietQueue<OtherwiseJob> waiting = new("plans played", job => job.Run());
    private readonly ConcurrentDictionary<Guid, int> again = new();

    /// <summary>The play of a plan, on the lots, orders and clocks that it was made from; begun if nobody asked before.</summary>
    public OtherwiseJob Of(PlanSight sight)
    {
        PlanEntry entry = sight.Entry;
        return jobs.Of($"{entry.Fact} {again.GetValueOrDefault(entry.Fact)}", () =>
        {
            OtherwiseJob job = new(
                () => InstanceBuilding.Build(sight.Season, LotKnowing.Know(sight.Season), Beliefs.Default with { Clocks = ClockShelf.Upto(ledger, bases.ShedOf(entry.Basis), entry.Basis, clock.LocalTimeZone).Clocks }), sight);
            waiting.Add(job);
            return job;
        });
    }

    /// <summary>Begins anew what was stopped.</summary>
    public void Again(PlanSight sight)
    {
        if (Of(sight).Stopped)
        {
            again.AddOrUpdate(sight.Entry.Fact, 1, (_, times) => times + 1);
        }
    }

    public Task StartAsync(CancellationToken cancellationToken)
    {
        waiting.Start();
        return Task.CompletedTask;
    }

    public Task StopAsync(CancellationToken cancellationToken)
    {
        waiting.End();
        return Task.CompletedTask;
    }
}
