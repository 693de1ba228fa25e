using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Paths;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Today;

/// <summary>
/// What a week of waiting takes from garlic, in money: the plan's worth of a lot's pound, times the share of its sound weight that the
/// week takes by the keeping law, at the speeds that inspections gave its clocks where there are any. Worths are the plan's shadow prices: good for small changes only.
/// </summary>
internal sealed class Waiting(PlanBook book, Func<LotRow, SeenClock?>? clocks = null)
{
    private static readonly KeepingParameters Law = KeepingParameters.Default;
    private static readonly ClimateDefaults Air = ClimateDefaults.Default;

    private readonly Dictionary<LotId, LotRow> lots = book.Season.Lots.GroupBy(row => row.Lot).ToDictionary(group => group.Key, group => group.First());
    private readonly Dictionary<PlaceId, Place> places = book.Season.Places.ToDictionary(place => place.Id);

    /// <summary>Share of what is sound that a path loses from a week's start to the next one's, as the plan has its states; 0 where they are not in view.</summary>
    public static double LostInWeek(PathLine path, int week)
    {
        if (!path.Has(week) || !path.Has(week + 1))
        {
            return 0;
        }

        PathWeek now = path.State(week), next = path.State(week + 1);
        double sound = now.MassRatio * (now.FreshShare + now.CrackShare);
        return sound > 0 ? 1 - next.MassRatio * (next.FreshShare + next.CrackShare) / sound : 0;
    }

    /// <summary>
    /// Share of what is sound at a later day that is lost when a week is spent in worse air: its weight, and the sound share at the life
    /// used by then. Both ends of a week in better air give a negative share.
    /// </summary>
    /// <param name="lifeThen">Life used at the later day as planned.</param>
    /// <param name="moreLife">Life that the worse week uses beyond the better one.</param>
    /// <param name="moreLoss">Share of weight likewise.</param>
    public static double LostLater(double lifeThen, double moreLife, double moreLoss) =>
        1 - (1 - moreLoss) * KeepingLaw.SoundShare(Law, lifeThen + moreLife) / KeepingLaw.SoundShare(Law, lifeThen);

    /// <summary>What a path's exits from a week on lose when it spends one week in one place's air instead of another's.</summary>
    public CostPart? OfWorseWeek(PathLine path, int from, WeekOfKeeping worse, WeekOfKeeping better)
    {
        if (book.WorthOf(path.Lot) is not { } worth)
        {
            return null;
        }

        double mass = 0, lost = 0;
        for (int week = from; week <= book.Season.Settings.Weeks; week++)
        {
            double leaves = path.StandingAtStart(week) - (week < book.Season.Settings.Weeks ? path.StandingAtStart(week + 1) : 0);
            if (leaves > 0 && path.Has(week))
            {
                mass += leaves;
                lost += leaves * LostLater(path.State(week).LifeUsed, worse.LifeUsed - better.LifeUsed, worse.WeightLoss - better.WeightLoss);
            }
        }

        return mass > 0 ? new CostPart(Loss.Keeping, path.Lot.Text, mass, worth, lost / mass) : null;
    }

    /// <summary>A week of a lot in a place, in ordinary air or in the room's own; null where the season has no longer one of them.</summary>
    public WeekOfKeeping? Week(LotId lot, PlaceId at, int week, bool sealedNow)
    {
        if (!lots.TryGetValue(lot, out LotRow? row) || !places.TryGetValue(at, out Place? place))
        {
            return null;
        }

        int since = Math.Max(0, week - book.Season.Settings.WeekOf(row.Harvested));
        KeepingTraits traits = LotTraits.Of(book.Season, row);
        Climate air = PlaceClimate.Of(book.Season, place, week, sealedNow, Air);
        return clocks?.Invoke(row)?.Week(Law, traits, air, since) ?? KeepingLaw.Week(Law, traits, air, since);
    }
}
