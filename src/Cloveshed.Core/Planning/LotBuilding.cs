using Cloveshed.Core.Keep;
using Cloveshed.Core.Keep.Clocks;
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
        var tableIndex = new Dictionary<(KeepClass, bool, bool, int, double, double, double), int>();
        (Climate[][] Open, Climate[][] Shut) air = Air(season, beliefs);

        foreach (LotRow r in season.Lots)
        {
            if (r.Net <= 0) continue;
            int start = s.StartWeekOf(r);
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
            SeenClock? seen = beliefs.Clocks.GetValueOrDefault((r.Lot, r.Place));
            var key = (traits.Keeps, traits.Inhibitor, traits.Cured, traits.Cured ? 0 : harvestWeek, seen?.Weight ?? 1, seen?.Sprout ?? 1, seen?.Decay ?? 1);
            if (!tableIndex.TryGetValue(key, out int table))
            {
                tableIndex[key] = table = tables.Count;
                tables.Add(new KeepTable(
                    Weeks(air.Open, one => one.WeightLoss), Weeks(air.Open, one => one.LifeUsed), Weeks(air.Shut, one => one.WeightLoss), Weeks(air.Shut, one => one.LifeUsed)));
                double[][] Weeks(Climate[][] places, Func<WeekOfKeeping, double> part) => [.. places.Select(weeks => weeks.Select((climate, w) =>
                    part(seen?.Week(beliefs.Keeping, traits, climate, Math.Max(0, w - harvestWeek)) ?? KeepingLaw.Week(beliefs.Keeping, traits, climate, Math.Max(0, w - harvestWeek)))).ToArray())];
            }
            int place = placeIndex[r.Place];
            double life = seen?.LifeAtStart ?? LifeAtStart.Of(season, season.Places[place], r, beliefs.Keeping, beliefs.Climate);
            bool stoodBefore = harvestWeek < start;
            rows.Add(new InstanceRow(lot, place, start, r.Net / massScale, r.Net, r.Bins, r.Bins / r.Net * massScale / binScale,
                k.SharesOf(r).Fresh, k.SharesOf(r).Crack, life, KeepingLaw.SoundShare(beliefs.Keeping, life),
                stoodBefore ? start : start + 1, table));
            lots[lot].Rows.Add(rows.Count - 1);
            lots[lot].Mass += r.Net / massScale;
        }
        return ([.. lots], [.. rows], [.. tables]);
    }

    /// <summary>The air of each place and week: ordinary, and as it is in a room that is shut.</summary>
    private static (Climate[][] Open, Climate[][] Shut) Air(Season season, Beliefs beliefs)
    {
        Climate[][] Of(bool sealedNow) => [.. season.Places.Select(place => Enumerable.Range(0, season.Settings.Weeks)
            .Select(w => PlaceClimate.Of(season, place, w, sealedNow && place.Kind == PlaceKind.Sealed, beliefs.Climate)).ToArray())];
        return (Of(false), Of(true));
    }
}
