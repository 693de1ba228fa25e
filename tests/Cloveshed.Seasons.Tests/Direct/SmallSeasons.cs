using Cloveshed.Core;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Odd;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>Odd seasons so small that every sequence of places can be written down, and room weeks for them.</summary>
internal static class SmallSeasons
{
    internal static PlanningInstance Instance(Season season, RunWishes? wishes = null) =>
        InstanceBuilding.Build(season, LotKnowing.Know(season), Beliefs.Default, wishes);

    /// <summary>A few runs pinned and a few barred, of lots, lines and weeks that the season has, whether they can be made or not.</summary>
    internal static RunWishes Wishes(Season season, Pcg pcg)
    {
        (LotId, LineId, int)[] runs = [.. season.Lots.Select(l => l.Lot).Distinct().SelectMany(l => season.Lines.SelectMany(i =>
            Enumerable.Range(season.Settings.AsOfWeek, season.Settings.Weeks - season.Settings.AsOfWeek).Select(t => (l, i.Id, t))))];
        (LotId, LineId, int)[] some = [.. pcg.Shuffled(runs).Take(8)];
        return new RunWishes(
            [.. some.Take(4).Select(r => new PinnedRun(r.Item1, r.Item2, r.Item3, season.Lots.Where(l => l.Lot == r.Item1).Sum(l => l.Net) * pcg.Between(0.05, 0.6)))],
            [.. some.Skip(4).Select(r => new BarredRun(r.Item1, r.Item2, r.Item3))]);
    }

    /// <summary>A season of up to so many lots with some oddities; few weeks where there are many places to be in.</summary>
    internal static Season Draw(ulong seed, int lotsAtMost, int weeksAtMost, PlaceMix[] mixes)
    {
        Pcg pcg = new(seed, 11);
        PlaceMix mix = pcg.Pick(mixes);
        int weeks = pcg.Whole(2, mix switch { PlaceMix.All => Math.Min(3, weeksAtMost), PlaceMix.YardAndCold => Math.Min(6, weeksAtMost), _ => weeksAtMost });
        OddShape shape = OddShape.Draw(pcg) with { Weeks = weeks, Lots = pcg.Whole(1, lotsAtMost), Places = mix, AsOfDay = pcg.Chance(0.7) ? 0 : pcg.Whole(-20, 7 * weeks - 8) };
        Oddity[] some = [.. pcg.Shuffled(Oddity.All).Where(Small).Take(pcg.Whole(0, 3))];
        return OddSeasons.Make(shape, some, pcg);
    }

    /// <summary>Not those that make it larger: more lots, more places, or units so small that counting them whole says nothing.</summary>
    private static bool Small(Oddity oddity) =>
        !oddity.Large && !ShapeOddities.All.Contains(oddity) && oddity.Name is not ("lots in every place" or "more dug than places hold" or "units of an ounce" or "the same class in three packs");

    /// <summary>Some weeks of every room, such as the contract allows.</summary>
    internal static RoomChoice Rooms(PlanningInstance instance, Pcg pcg)
    {
        RoomChoice choice = RoomChoice.Free(instance);
        for (int p = 0; p < instance.Places.Length; p++)
        {
            if (instance.Places[p].Kind != PlaceKind.Sealed) continue;
            int first = instance.Rows.Where(r => r.Place == p && r.FirstMove > r.Start).Select(r => r.Start).Append(instance.AsOf).Max();
            int? sealedWeek = instance.Places[p].SealedWeek ?? (pcg.Chance(0.2) || first >= instance.Weeks ? null : pcg.Whole(first, instance.Weeks - 1));
            int opens = Math.Max(instance.AsOf, (sealedWeek ?? 0) + 1);
            choice = choice.With(p, new RoomSchedule(sealedWeek, sealedWeek is null || pcg.Chance(0.2) || opens >= instance.Weeks ? null : pcg.Whole(opens, instance.Weeks - 1)));
        }
        return choice;
    }
}
