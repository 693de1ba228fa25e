using Cloveshed.Core;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>Products, stock, orders, market, seed and sale as is.</summary>
internal sealed partial class DirectModel
{
    private int[,,] _supply = null!;
    private int[] _served = [];
    private readonly Dictionary<(int Price, int Week), int> _asIs = [];

    private void Trade()
    {
        PlanningInstance at = _instance;
        _supply = new int[at.Sorts.Length, 2, at.Weeks];
        for (int k = 0; k < at.Sorts.Length; k++)
            for (int o = 0; o < 2; o++)
                for (int t = 0; t < at.Weeks; t++) _supply[k, o, t] = _program.AtMost(0);
        int[,] shipped = new int[at.Products.Length, at.Weeks];
        for (int q = 0; q < at.Products.Length; q++)
            for (int t = 0; t < at.Weeks; t++) shipped[q, t] = _program.AtMost(0);
        Making(shipped);
        foreach (InstanceStock stock in at.Stock)
        {
            int had = _program.AtMost(stock.Units * at.Season.Products[stock.Product].Net / at.MassScale);
            for (int t = Math.Max(at.AsOf, stock.Made); t < at.Weeks && t <= stock.Made + at.Season.Products[stock.Product].ShelfWeeks; t++)
                _program.Column(0, double.PositiveInfinity, false, (had, 1), (shipped[stock.Product, t], -1));
        }
        Orders(shipped);
        foreach (InstanceMarket market in at.Market)
        {
            double net = at.Products[market.Product].Net;
            _program.Column(market.Price * net, market.Units, _mixed, (shipped[market.Product, market.Week], net));
        }
        _served = Rows(at.SeedNeeds.Length, _ => _program.AtMost(0));
        for (int n = 0; n < at.SeedNeeds.Length; n++) _program.Column(at.SeedNeeds[n].ShortCost, at.SeedNeeds[n].Mass, false, (_served[n], 1));
    }

    private void Making(int[,] shipped)
    {
        PlanningInstance at = _instance;
        for (int q = 0; q < at.Products.Length; q++)
        {
            Product p = at.Season.Products[q];
            // Organic lots may make either kind, the others only what is not organic.
            for (int o = p.Organic ? 1 : 0; o < 2; o++)
                for (int made = at.AsOf; made < at.Weeks; made++)
                    for (int t = made; t < at.Weeks && t - made <= p.ShelfWeeks; t++)
                        _program.Column(-at.Products[q].UnitCost, double.PositiveInfinity, false,
                            (_supply[at.Products[q].Sort, o, made], 1), (shipped[q, t], -1));
        }
    }

    private void Orders(int[,] shipped)
    {
        PlanningInstance at = _instance;
        foreach (var order in at.OrderLines.GroupBy(l => l.Line.Order))
        {
            bool whole = order.Any(l => l.Line.Whole);
            int once = _program.AtMost(1);
            for (int t = at.AsOf; t < at.Weeks; t++)
            {
                if (whole && order.Any(l => l.Earliest > t)) continue;
                // Each line takes all its units in the week in which the order ships, or none.
                int[] all = [.. order.Select(l => whole ? _program.Equal(0) : -1)];
                if (whole) _program.Column(0, 1, _mixed, [(once, 1), .. order.Select((l, k) => (all[k], -(double)l.Line.Units))]);
                foreach ((InstanceOrderLine line, int k) in order.Select((l, k) => (l, k)))
                    if (whole) Fill(shipped, line, t, all[k]);
            }
            if (whole) continue;
            foreach (InstanceOrderLine line in order)
            {
                int units = _program.AtMost(line.Line.Units);
                for (int t = line.Earliest; t < at.Weeks; t++) Fill(shipped, line, t, units);
            }
        }
    }

    private void Fill(int[,] shipped, InstanceOrderLine line, int week, int units)
    {
        double net = _instance.Products[line.Product].Net;
        double gain = line.Price + line.Short - line.Late * Math.Max(0, week - line.DueWeek);
        for (int q = 0; q < _instance.Products.Length; q++)
            if (MayFill(line.Line, _instance.Season.Products[q]))
                _program.Column(gain * net, line.Line.Units, _mixed, (units, 1), (shipped[q, week], net));
    }

    /// <summary>The product ordered, the next larger class where that will do, and the organic twin of either.</summary>
    private bool MayFill(OrderLine line, Product shipped)
    {
        Season season = _instance.Season;
        Product ordered = season.Products.First(p => p.Id == line.Product);
        if (shipped.Id == ordered.Id) return true;
        if (shipped.Form != ordered.Form || shipped.Net != ordered.Net || (ordered.Organic && !shipped.Organic)) return false;
        string[] upward = ordered.Form == ProductForm.Bulb
            ? [.. season.Sizes.OrderBy(c => c.MinMm).Select(c => c.Id.Text)]
            : [.. season.CloveGrades.OrderBy(g => g.MinMm).Select(g => g.Id.Text)];
        int step = Array.IndexOf(upward, shipped.From) - Array.IndexOf(upward, ordered.From);
        return step == 0 ? shipped.Organic && !ordered.Organic : step == 1 && line.LargerOk;
    }

    private int AsIsOf(InstanceLot lot)
    {
        VarietyId variety = _instance.Season.Varieties[lot.Variety].Id;
        int own = Array.FindIndex(_instance.AsIs, a => a.Row.Variety == variety);
        return own >= 0 ? own : Array.FindIndex(_instance.AsIs, a => a.Row.Variety is null);
    }

    private int AsIsRow(int price, int week) =>
        _asIs.TryGetValue((price, week), out int row) ? row : _asIs[(price, week)] = _program.AtMost(_instance.AsIs[price].Limit);

    /// <summary>Seed needs that cloves of a lot serve when they are made in a week: of its variety, of a class that it reaches, in time.</summary>
    private IEnumerable<int> NeedsServed(InstanceLot lot, int week)
    {
        if (lot.Seed is not { } own || lot.Inhibitor) yield break;
        for (int n = 0; n < _instance.SeedNeeds.Length; n++)
        {
            SeedNeed need = _instance.SeedNeeds[n].Need;
            if (need.Variety == _instance.Season.Varieties[lot.Variety].Id && own <= need.Class && week <= _instance.Season.Settings.WeekOf(need.By)) yield return n;
        }
    }
}
