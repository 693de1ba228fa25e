using Cloveshed.App.Words;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Core.Seasons;

namespace Cloveshed.App.Plans;

/// <summary>What would come of it, with the season that it is of.</summary>
/// <param name="Gap">How far the model that answered is from its own bound, as a share of its value.</param>
internal sealed record SupposeTold(Season Season, SupposedAnswer Answer, double Gap);

/// <summary>Reads a season and the room weeks of its plan, makes the model ready, and puts the changes to it.</summary>
internal static class SupposeMaking
{
    /// <summary>Null where something was refused; it is then told.</summary>
    public static SupposeTold? Make(string folder, string plan, IReadOnlyList<SeasonChange> changes, double seconds, World world, Phrasebook phrases)
    {
        if (SeasonAndPlan.Read(folder, plan, Phrase.PromiseRefused, world, phrases) is not { } read)
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
            Supposed supposed = standing.Suppose(changes);
            if (supposed.Answer is { } answer)
            {
                return new SupposeTold(read.Season, answer, standing.Gap);
            }

            world.Error.WriteLine(phrases.Say(Why(supposed.Fault!.Value), SupposeText.Name(supposed.Refused!)));
        }
        catch (OperationCanceledException)
        {
            world.Error.WriteLine(phrases[Phrase.PromiseStopped]);
        }

        return null;
    }

    private static Phrase Why(ChangeFault fault) => fault switch
    {
        ChangeFault.NoSuchOrder => Phrase.SupposeNoOrder,
        ChangeFault.NoSuchLine => Phrase.SupposeNoLine,
        ChangeFault.NotAhead => Phrase.SupposeNotAhead,
        ChangeFault.OrderIsWhole => Phrase.SupposeWhole,
        _ => Phrase.SupposeNoPeople,
    };
}
