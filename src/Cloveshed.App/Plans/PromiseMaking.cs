using Cloveshed.App.Words;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.App.Plans;

/// <summary>What is asked, of which season and plan. From null: from the season's as-of week on.</summary>
internal sealed record PromiseAsked(string Folder, string Plan, IReadOnlyList<PromiseLine> Lines, LocalDate? From, LocalDate Due, double Seconds);

/// <summary>The answer, with the season that it is of.</summary>
/// <param name="Gap">How far the model that answered is from its own bound, as a share of its value.</param>
internal sealed record PromiseTold(Season Season, PromiseAnswer Answer, double Gap);

/// <summary>Asks whether an order can be promised.</summary>
internal static class PromiseMaking
{
    /// <summary>Null where something was refused; it is then told.</summary>
    public static PromiseTold? Make(PromiseAsked asked, World world, Phrasebook phrases)
    {
        bool Unknown(Season season)
        {
            if (asked.Lines.FirstOrDefault(line => season.Products.All(product => product.Id != line.Product)) is not { } unknown)
            {
                return false;
            }

            world.Error.WriteLine(phrases.Say(Phrase.NotAmong, "--line", unknown.Product, string.Join("|", season.Products.Select(product => product.Id))));
            return true;
        }

        return StandingMaking.Ask(asked.Folder, asked.Plan, asked.Seconds, world, phrases, Unknown, (season, standing, stopped) => new PromiseTold(season,
            standing.Ask(new PromiseQuestion(asked.Lines, asked.From ?? season.Settings.AsOf, asked.Due), stopped: stopped) ?? throw new InvalidOperationException("A product that is in the season was not found in its model."),
            standing.Gap));
    }
}
