using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Features;
using Cloveshed.Seasons.Tests.Odd;
using static Cloveshed.Seasons.Tests.Features.Tiny;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>
/// Small seasons in which everything hangs on a room: the yard is hot, the room is at the worst temperature for dormancy and keeps
/// well only under its atmosphere, what is wanted is wanted late, and the line can't run all at once what the room lets out.
/// No set-ups, no weekly costs and small cartons, so that next to nothing lies between the best plan and the linear model.
/// </summary>
internal static class RoomSeasons
{
    internal static Season Draw(ulong seed)
    {
        Pcg pcg = new(seed, 15);
        int weeks = pcg.Whole(3, 5);
        bool before = pcg.Chance(0.3);
        Place room = Tiny.Room with { CapacityBins = pcg.Whole(10, 40), TempC = 12, Rh = 65, O2 = 0.5, Co2 = 15, RunOutWeeks = pcg.Pick<int?>([1, 1, 2, null]), CostPerBinWeek = pcg.Money(0, 0.5), MoveInCost = pcg.Money(0, 1) };
        Place yard = Yard with { TempC = 38, Rh = 20 };
        // Half of the seasons have a second place to go to, small and dear.
        Place[] places = pcg.Chance(0.5) ? [yard, room] : [yard, room, Tiny.Cold with { CapacityBins = pcg.Whole(2, 12), CostPerBinWeek = pcg.Money(0, 2) }];
        LotRow[] lots =
        [
            .. Enumerable.Range(1, pcg.Whole(1, 3)).Select(i => Lot($"l{i}", pcg.Whole(500, 2000)) with
            {
                Harvested = Monday.PlusDays(pcg.Chance(0.6) ? -10 : pcg.Whole(0, 12)), Cv = 0.5, CrackShare = 0.1, FreshShare = pcg.Between(0.5, 0.9),
            }),
        ];
        double inside = Math.Min(room.CapacityBins, lots.Length * 10);
        if (before) lots = [.. lots, Lot("inside", 100 * inside) with { Place = room.Id, Harvested = Monday.PlusDays(-60) }];
        return Shed(weeks, lots) with
        {
            Settings = Shed(weeks).Settings with { EndPrice = pcg.Chance(0.5) ? 0 : pcg.Money(0.02, 0.4) },
            Varieties = [.. Shed(weeks).Varieties.Select(v => v with { Keeps = KeepClass.Short })],
            Places = places,
            SealedRooms = before ? [new(room.Id, Monday.PlusDays(-20))] : [],
            Lines = [Pack with { RatePerHour = pcg.Whole(10, 60), CostPerHour = pcg.Money(0, 2) }],
            Products = [.. new[] { "S", "M", "L" }.Select(c => Carton(c, 5) with { ShelfWeeks = pcg.Pick([0, 0, 1]) })],
            Market =
            [
                .. new[] { "S5", "M5", "L5" }.SelectMany(p => Enumerable.Range(1, weeks - 1).Where(_ => pcg.Chance(0.5))
                    .Select(w => new MarketWeek(new(p), w, pcg.Money(1, 8), null, pcg.Whole(20, 200), null))),
            ],
            AsIsPrices = [new(null, pcg.Money(0.01, 0.2), null)],
        };
    }
}
