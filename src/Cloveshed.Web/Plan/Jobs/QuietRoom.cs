using System.Collections.Concurrent;
using Cloveshed.Web.Keep;
using Cloveshed.Web.Shared;
using Microsoft.Extensions.Hosting;

namespace Cloveshed.Web.Plan.Jobs;

/// <summary>
/// Work apart from the pages that ask for it, once for each thing that it is of, by its key: closing the page does not stop it, and what a hand has stopped can be begun anew. A few
/// are kept.
/// </summary>
public abstract class QuietRoom<TJob, TFound>(string name) : IHostedService
    where TJob : QuietJob<TFound>
    where TFound : class
{
    private const int Room = 4;

    private readonly Shelf<TJob> jobs = new(Room);
    private readonly QuietQueue<TJob> waiting = new(name, job => job.Run());
    private readonly ConcurrentDictionary<string, int> again = new(StringComparer.Ordinal);

    /// <summary>The work of a key; begun if nobody asked before.</summary>
    protected TJob Of(string key, Func<TJob> make) => jobs.Of($"{key} {again.GetValueOrDefault(key)}", () =>
    {
        TJob job = make();
        waiting.Add(job);
        return job;
    });

    /// <summary>The next that asks for what was stopped begins it anew.</summary>
    protected void Again(string key, TJob job)
    {
        if (job.Stopped)
        {
            again.AddOrUpdate(key, 1, (_, times) => times + 1);
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
