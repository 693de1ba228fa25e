using Cloveshed.App.Words;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Core.Seasons;

namespace Cloveshed.App.Plans;

/// <summary>What would come of it, with the season that it is of.</summary>
/// <param name="Gap">How far the model that answered is from its own bound, as a share of its value.</param>
internal sealed record SupposeTold(Season Season, SupposedAnswer Answer, double Gap);

/// <summary>Puts changes to a plan.</summary>
internal static class SupposeMaking
{
    /// <summary>Null where something was refused; it is then told.</summary>
    public static SupposeTold? Make(string folder, string plan, IReadOnlyList<SeasonChange> changes, double seconds, World world, Phrasebook phrases) =>
        StandingMaking.Ask(folder, plan, seconds, world, phrases, _ => false, (season, standing, _) =>
        {
            Supposed supposed = standing.Suppose(changes);
            if (supposed.Answer is { } answer)
            {
                return new SupposeTold(season, answer, standing.Gap);
            }

            world.Error.WriteLine(phrases.Say(Why(supposed.Fault!.Value), SupposeText.Name(supposed.Refused!)));
            return null;
        });

    private static Phrase Why(ChangeFault fault) => fault switch
    {
        ChangeFault.NoSuchOrder => Phrase.SupposeNoOrder,
        ChangeFault.NoSuchLine => Phrase.SupposeNoLine,
        ChangeFault.NotAhead => Phrase.SupposeNotAhead,
        ChangeFault.OrderIsWhole => Phrase.SupposeWhole,
        ChangeFault.NoPeopleCounted => Phrase.SupposeNoPeople,
        ChangeFault.NoSuchProduct => Phrase.SupposeNoProduct,
        ChangeFault.NoSuchLot => Phrase.SupposeNoLot,
        ChangeFault.AlreadyDug => Phrase.SupposeDug,
        ChangeFault.RoomIsShut => Phrase.SupposeShut,
        ChangeFault.LifeIsOver => Phrase.SupposeOver,
        ChangeFault.NotSoMuchThere => Phrase.SupposeNotThere,
        ChangeFault.CannotRun => Phrase.SupposeCannotRun,
        ChangeFault.NotSealed => Phrase.SupposeNotSealed,
        _ => throw new InvalidOperationException($"No words are written for {fault}."),
    };
}
