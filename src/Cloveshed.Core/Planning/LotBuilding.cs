using Cloveshed.Core.Keep;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.Core.Planning;

/// <summary>Lots and their rows as the planner sees them, with keeping tables shared by lots that keep alike.</summary>
internal static class LotBuilding
{
    internal static (InstanceLot[], InstanceRow[], KeepTable[]) Build(
        Season season, LotsKnown known, Beliefs beliefs, Dictionary<PlaceId, int> placeIndex, Dictionary<VarietyId, int> varietyIndex,
        double massScale, double binScale)
    {
        SeasonSettings s = season.Settings;
        var lots = new List<InstanceLot>();
        var lotIndex = new Dictionary<LotId, int>();
        var rows = new List<InstanceRow>();
        var tables = new List<KeepTable>();
        var tableIndex = new Dictionary<(KeepClass, bool, bool, int), int>();

        foreach (LotRow r in season.Lots)
        {
            if (r.Net <= 0) continue;
            int start = Math.Max(s.AsOfWeek, s.WeekOf(r.Harvested));
            if (start >= s.Weeks) continue;
            LotKnowledge k = known.Lots[r.Lot];
            if (!lotIndex.TryGetValue(r.Lot, out int lot))
            {
                lotIndex[r.Lot] = lot = lots.Count;
                int ready = r.Ready is { } date ? s.WeekOf(date) : int.MinValue;
                lots.Add(new InstanceLot(r.Lot, varietyIndex[r.Variety], r.Organic, r.SeedClass, r.Inhibitor, r.Hold, ready,
                    [.. k.ClassShares, .. k.GradeShares], k.Under, k));
            }
            KeepingTraits traits = LotTraits.Of(season, r);
            int harvestWeek = s.WeekOf(r.Harvested);
            var key = (traits.Keeps, traits.Inhibitor, traits.Cured, traits.Cured ? 0 : harvestWeek);
            if (!tableIndex.TryGetValue(key, out int table))
            {
                tableIndex[key] = table = tables.Count;
                tables.Add(Table(season, beliefs, traits, harvestWeek));
            }
            int place = placeIndex[r.Place];
            double life = LifeAtStart.Of(season, season.Places[place], r, beliefs.Keeping, beliefs.Climate);
            bool stoodBefore = harvestWeek < start;
            rows.Add(new InstanceRow(lot, place, start, r.Net / massScale, r.Net, r.Bins, r.Bins / r.Net * massScale / binScale,
                k.SharesOf(r).Fresh, k.SharesOf(r).Crack, life, KeepingLaw.SoundShare(beliefs.Keeping, life),
                stoodBefore ? start : start + 1, table));
            lots[lot].Rows.Add(rows.Count - 1);
            lots[lot].Mass += r.Net / massScale;
        }
        return ([.. lots], [.. rows], [.. tables]);
    }

    private static KeepTable Table(Season season, Beliefs beliefs, KeepingTraits traits, int harvestWeek)
    {
        int weeks = season.Settings.Weeks;
        (double[][] loss, double[][] life) Of(bool sealedNow)
        {
            double[][] loss = new double[season.Places.Count][], life = new double[season.Places.Count][];
            for (int p = 0; p < season.Places.Count; p++)
            {
                loss[p] = new double[weeks];
                life[p] = new double[weeks];
                for (int w = 0; w < weeks; w++)
                {
                    Climate air = PlaceClimate.Of(season, season.Places[p], w, sealedNow && season.Places[p].Kind == PlaceKind.Sealed, beliefs.Climate);
                    WeekOfKeeping k = KeepingLaw.Week(beliefs.Keeping, traits, air, Math.Max(0, w - harvestWeek));
                    loss[p][w] = k.WeightLoss;
                    life[p][w] = k.LifeUsed;
                }
            }
            return (loss, life);
        }
        (double[][] airLoss, double[][] airLife) = Of(false);
        (double[][] sealedLoss, double[][] sealedLife) = Of(true);
        return new KeepTable(airLoss, airLife, sealedLoss, sealedLife);
    }
}
