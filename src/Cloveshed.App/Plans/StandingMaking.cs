using Cloveshed.App.Words;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Seasons;

namespace Cloveshed.App.Plans;

/// <summary>Reads a season and the room weeks of its plan, and makes the plan's model ready to be asked.</summary>
internal static class StandingMaking
{
    /// <param name="refused">Says, before the model is made ready, that the season cannot be asked so; it has then told why.</param>
    /// <returns>What was answered; null where something was refused, told then, or where it was stopped.</returns>
    public static T? Ask<T>(string folder, string plan, double seconds, World world, Phrasebook phrases, Func<Season, bool> refused, Func<Season, StandingPlan, Func<bool>, T?> ask)
        where T : class
    {
        if (SeasonAndPlan.Read(folder, plan, Phrase.PromiseRefused, world, phrases) is not { } read || refused(read.Season))
        {
            return null;
        }

        read.Warn(world, phrases);
        using CancellationTokenSource stop = new();
        using IDisposable stopping = world.OnStop(stop.Cancel);
        world.Error.WriteLine(phrases[Phrase.PromiseWorking]);
        try
        {
            using StandingPlan standing = StandingPlan.Prepare(
                new StandingRequest(read.Season, Beliefs.Default, RunWishes.None, read.Plan.Rooms, seconds, SearchDepth.Fine, PlanMaking.Threads, world.Elapsed, Cancel: stop.Token), world.Solver);
            return ask(read.Season, standing, () => stop.IsCancellationRequested);
        }
        catch (OperationCanceledException)
        {
            world.Error.WriteLine(phrases[Phrase.PromiseStopped]);
            return null;
        }
    }
}
