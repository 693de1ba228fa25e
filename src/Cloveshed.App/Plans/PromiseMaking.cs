using Cloveshed.App.Words;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.App.Plans;

/// <summary>What is asked, of which season and plan. From null: from the season's as-of week on.</summary>
internal sealed record PromiseAsked(string Folder, string Plan, IReadOnlyList<PromiseLine> Lines, LocalDate? From, LocalDate Due, double Seconds);

/// <summary>The answer, with the season that it is of.</summary>
/// <param name="Gap">How far the model that answered is from its own bound, as a share of its value.</param>
internal sealed record PromiseTold(Season Season, PromiseAnswer Answer, double Gap);

/// <summary>Reads a season and the room weeks of its plan, makes the model ready, asks.</summary>
internal static class PromiseMaking
{
    /// <summary>Null where something was refused; it is then told.</summary>
    public static PromiseTold? Make(PromiseAsked asked, World world, Phrasebook phrases)
    {
        if (SeasonAndPlan.Read(asked.Folder, asked.Plan, Phrase.PromiseRefused, world, phrases) is not { } read)
        {
            return null;
        }

        Season season = read.Season;
        if (asked.Lines.FirstOrDefault(line => season.Products.All(product => product.Id != line.Product)) is { } unknown)
        {
            world.Error.WriteLine(phrases.Say(Phrase.NotAmong, "--line", unknown.Product, string.Join("|", season.Products.Select(product => product.Id))));
            return null;
        }

        read.Warn(world, phrases);
        using CancellationTokenSource stop = new();
        using IDisposable stopping = world.OnStop(stop.Cancel);
        world.Error.WriteLine(phrases[Phrase.PromiseWorking]);
        try
        {
            using StandingPlan standing = StandingPlan.Prepare(
                new StandingRequest(season, Beliefs.Default, RunWishes.None, read.Plan.Rooms, asked.Seconds, SearchDepth.Fine, PlanMaking.Threads, world.Elapsed, Cancel: stop.Token), world.Solver);
            PromiseAnswer told = standing.Ask(new PromiseQuestion(asked.Lines, asked.From ?? season.Settings.AsOf, asked.Due)) ?? throw new InvalidOperationException("A product that is in the season was not found in its model.");
            return new PromiseTold(season, told, standing.Gap);
        }
        catch (OperationCanceledException)
        {
            world.Error.WriteLine(phrases[Phrase.PromiseStopped]);
            return null;
        }
    }
}
