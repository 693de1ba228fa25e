using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Planning;

/// <summary>A change after which every plan of the season still holds and is worth no less.</summary>
internal sealed record Easing(string Name, Func<Season, Season> Ease)
{
    public static IReadOnlyList<Easing> All { get; } =
    [
        new("the same rows in another order", s => s with
        {
            Lots = [.. s.Lots.Reverse()], Orders = [.. s.Orders.Reverse()], Products = [.. s.Products.Reverse()], Places = [.. s.Places.Reverse()], Lines = [.. s.Lines.Reverse()],
        }),
        new("longer weeks", s => s with { Lines = [.. s.Lines.Select(l => l with { OvertimeHours = l.OvertimeHours + 10 })] }),
        new("larger places", s => s with { Places = [.. s.Places.Select(p => p with { CapacityBins = p.CapacityBins * 2 })] }),
        new("people without limit", s => s with { People = [] }),
        new("no set-ups and least runs", s => s with { Lines = [.. s.Lines.Select(l => l with { SetupHours = 0, MinRun = 0 })] }),
        new("cheaper to make", s => s with { Products = [.. s.Products.Select(p => p with { UnitCost = p.UnitCost / 2 })] }),
        new("better prices", s => s with { Orders = [.. s.Orders.Select(o => o with { Price = o.Price * 1.1m })] }),
        new("larger orders, none firm", s => s with { Orders = [.. s.Orders.GroupBy(o => o.Order).SelectMany(g => g.Select(o => o with { Units = g.Any(l => l.Whole) ? o.Units : o.Units * 2, Firm = false }))] }),
        new("patient customers", s => s with { Orders = [.. s.Orders.Select(o => o with { LateCost = 0 })] }),
        new("longer shelf life", s => s with { Products = [.. s.Products.Select(p => p with { ShelfWeeks = p.ShelfWeeks + 2 })] }),
        new("larger will do", s => s with { Orders = [.. s.Orders.Select(o => o with { LargerOk = true })] }),
        new("nothing need ship whole", s => s with { Orders = [.. s.Orders.Select(o => o with { Whole = false })] }),
        new("rooms that never run out", s => s with { Places = [.. s.Places.Select(p => p with { RunOutWeeks = null })] }),
        new("a market beside", s => s with { Market = [.. s.Market.Select(m => m with { P50 = m.P50 + 5, P90 = null })] }),
        new("seed cheaper to go without", s => s with { SeedNeeds = [.. s.SeedNeeds.Select(n => n with { ShortCost = n.ShortCost / 2 })] }),
        new("sold as is without limit", s => s with { AsIsPrices = [.. s.AsIsPrices.Select(a => a with { Limit = null })] }),
    ];
}
