using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>What a batch is worth kept.</summary>
internal sealed class KeepWorths(ReplayShed shed, Scenario scenario, Yard yard)
{
    private readonly PlanningInstance instance = shed.Instance;

    /// <summary>
    /// What a mass at start of the batch is worth if it stays past this week: the best week to run it or sell it as it stands, by the
    /// plan's worths and the keeping law from what is seen now, less what standing costs.
    /// </summary>
    public double Of(Batch b, int week)
    {
        if (b.Kept.Week == week) return b.Kept.Worth;
        double worth = Of(b, week, -1);
        b.Kept = (week, worth);
        return worth;
    }

    /// <param name="staysIn">A place that it stays in; negative: it goes on as planned.</param>
    public double Of(Batch b, int week, int staysIn)
    {
        InstanceRow row = instance.Rows[b.Row];
        InstanceLot lot = instance.Lots[b.Lot];
        int[] planned = shed.Policy.Paths[b.Path].PlaceAt;
        double bins = scenario.BinsPerMass(instance, b.Row), ratio = b.Ratio, life = b.Life, spent = 0, best = 0, price = yard.Price(b, instance.Weeks) ?? 0;
        int place = staysIn >= 0 ? staysIn : b.Place;
        for (int t = week; t < instance.Weeks; t++)
        {
            if (t > week && shed.Policy.Places[place].Leave[t])
            {
                double sound = shed.SoundShare(life) / row.SoundAtStart, fresh = scenario.Fresh[b.Row] * sound, crack = scenario.Crack[b.Row] * sound;
                double now = lot.Hold ? 0 : ratio * Math.Max(price, Math.Max(
                    fresh * instance.KeptFresh * shed.RunWorth[b.Lot][t] - shed.FreshHour[t], (fresh + crack) * instance.KeptCrack * shed.CloveWorth[b.Lot][t] - shed.CrackHour[t]));
                best = Math.Max(best, now - spent);
            }
            Spot spot = shed.Policy.Places[place];
            if (staysIn < 0 && t > week && planned[t] != place && spot.Leave[t] && shed.Policy.Places[planned[t]].Enter[t])
            {
                place = planned[t];
                spent += bins * instance.Places[place].MoveInCost;
                spot = shed.Policy.Places[place];
            }
            if (!spot.Stand[t]) return best;
            spent += bins * instance.Places[place].BinWeekCost;
            (double loss, double used) = PathStates.Week(instance.Tables[row.Table], spot, t);
            (ratio, life) = (ratio * (1 - loss), life + used);
        }
        double end = ratio * shed.SoundShare(life) / row.SoundAtStart * (scenario.Fresh[b.Row] + scenario.Crack[b.Row]) * instance.EndPrice;
        return Math.Max(best, end - spent);
    }
}
