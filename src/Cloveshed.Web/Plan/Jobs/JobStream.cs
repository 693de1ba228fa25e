using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using Cloveshed.Ledger;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Hosting;

namespace Cloveshed.Web.Plan.Jobs;

/// <summary>A job's progress as the page shows it: words and figures as they stand on it, and numbers for its picture.</summary>
/// <param name="Points">Seconds, value and bound of each event that the page has not seen.</param>
/// <param name="Ended">There is nothing more to come: the page loads itself once more.</param>
public sealed record JobSaid(string Stage, string Seconds, double Elapsed, string Value, string Bound, string Gap, IReadOnlyList<IReadOnlyList<double?>> Points, bool Ended);

/// <summary>GET /plan/jobs/{id}/progress: server-sent events, from the first (or the one after that which the page saw last) until the job ends.</summary>
internal static class JobStream
{
    /// <summary>No more often than this: a screen need not follow every round of a search.</summary>
    private static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(400);

    /// <summary>At least this often, so that seconds count on and a dead line is noticed.</summary>
    private static readonly TimeSpan AtLeast = TimeSpan.FromSeconds(5);

    public static IResult Follow(Guid id, HttpContext context, PlanRoom room, ShedReading shed, ShedLedger ledger, Viewer viewer, IHostApplicationLifetime host)
    {
        ShedState state = shed.State;
        bool known = state.Jobs.Any(job => job.Fact == id) || state.Plans.Any(plan => plan.Asked == id) || state.Ended.Any(end => end.Asked == id);
        if (!known || state.Season is null)
        {
            return TypedResults.NotFound();
        }

        PlanJob? asked = state.Jobs.FirstOrDefault(job => job.Fact == id);
        int seen = int.TryParse(context.Request.Headers["Last-Event-ID"], out int last) && last >= 0 ? last : 0;
        return TypedResults.ServerSentEvents(Events(asked, room, ledger, shed.Reader, Words.Of<PlanWord>(viewer.Language), seen, host.ApplicationStopping, context.RequestAborted));
    }

    private static async IAsyncEnumerable<SseItem<JobSaid>> Events(
        PlanJob? job, PlanRoom room, ShedLedger ledger, Reader reader, Words<PlanWord> words, int seen, CancellationToken stopping, [EnumeratorCancellation] CancellationToken gone)
    {
        if (job is null)
        {
            yield return new SseItem<JobSaid>(new JobSaid("", "", 0, "", "", "", [], true));
            yield break;
        }

        using CancellationTokenSource either = CancellationTokenSource.CreateLinkedTokenSource(stopping, gone);
        while (!either.IsCancellationRequested)
        {
            JobTrack? track = room.Track(job.Fact);
            Task changed = track?.Changed ?? Task.CompletedTask;
            JobSight sight = track?.Sight ?? new JobSight(JobStage.Waiting, [], 0, false);
            // The series may have been thinned since: then the page gets all of it again.
            int from = seen > sight.Series.Count ? 0 : seen;
            seen = sight.Series.Count;
            // A job that waits here may be made, and ended, by another process.
            bool ended = sight.Stage == JobStage.Ended || (sight.Stage == JobStage.Waiting && ledger.Now().Jobs.All(one => one.Fact != job.Fact));
            yield return new SseItem<JobSaid>(Told(job, sight, from, reader, words, ended)) { EventId = seen.ToString(System.Globalization.CultureInfo.InvariantCulture) };
            if (ended)
            {
                yield break;
            }

            await Task.WhenAny(track is null ? Task.Delay(AtLeast, either.Token) : changed, Task.Delay(AtLeast, either.Token));
            await Task.WhenAny(Task.Delay(Pause, either.Token));
        }
    }

    private static JobSaid Told(PlanJob job, JobSight sight, int from, Reader reader, Words<PlanWord> words, bool ended) => new(
        StageWords.Of(sight, words), words.Say(PlanWord.JobOf, "{0}", reader.Number(job.Seconds, 0)), Math.Round(sight.Seconds, 1),
        sight.Value is { } value ? reader.Money(value) : "–", sight.Bound is { } bound ? reader.Money(bound) : "–", JobChart.Gap(sight, reader),
        [.. sight.Series.Skip(from).Select(progress => (IReadOnlyList<double?>)[Math.Round(progress.Seconds, 2), Finite(progress.Value), Finite(progress.Bound)])], ended);

    private static double? Finite(double? number) => number is { } found && double.IsFinite(found) ? Math.Round(found, 2) : null;
}
