using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>
/// What the plan leaves unfilled, and why: the line's best week and product at the plan's prices, what the next unit costs there
/// against what the line gives (its price, and its short cost where it is firm, less its late cost), and what makes it dear.
/// </summary>
internal static class Shorts
{
    /// <summary>Below this part of what a unit costs a thing is not named.</summary>
    private const double Little = 0.2;

    /// <summary>Prices are sure to about this part.</summary>
    private const double Slack = 1e-3;

    internal static List<ShortRow> Of(PlanningInstance instance, IReadOnlyList<FillRow> fills, Prices prices)
    {
        var filled = fills.GroupBy(f => (f.Order, f.Line)).ToDictionary(g => g.Key, g => g.Sum(f => f.Units));
        HashSet<int> whole = [.. instance.WholeOrders.SelectMany(o => o.Lines)];
        var rows = new List<ShortRow>();
        for (int i = 0; i < instance.OrderLines.Length; i++)
        {
            InstanceOrderLine l = instance.OrderLines[i];
            int left = l.Line.Units - filled.GetValueOrDefault((l.Line.Order, l.Line.Number));
            if (left > 0) rows.Add(new ShortRow(l.Line.Order, l.Line.Number, left, string.Join(Remarks.Between, Why(instance, prices, l, i, whole.Contains(i)))));
        }
        return rows;
    }

    private static IEnumerable<string> Why(PlanningInstance instance, Prices prices, InstanceOrderLine l, int index, bool whole)
    {
        if (l.Earliest >= instance.Weeks) return [Remarks.Say(Remark.AfterSeason)];
        if (BestWeek(instance, prices, l) is not { } best) return [Remarks.Say(Remark.NotToBeHad)];
        (double margin, int product, int week) = best;
        InstanceProduct p = instance.Products[product];
        double costs = prices.Available[product, week], perUnit = p.Net * instance.MoneyScale;
        var said = new List<string>();
        if (whole) said.Add(Remarks.Say(Remark.ShipsWhole));
        said.Add(Remarks.Say(Remark.BestWeek, p.Id.Text, instance.Season.Settings.Monday(week), costs * perUnit, (costs + margin) * perUnit));
        if (week > l.DueWeek) said.Add(Remarks.Say(Remark.ThenLate));
        if (margin <= Slack * costs) said.AddRange(Dear(instance, prices, p, week, costs, costs + margin));
        else if (!whole) said.Add(Remarks.Say(Remark.LeftByWholes));
        return said;
    }

    /// <summary>The week and product in which the line is nearest to paying at the prices, of those in which it can be had; null where there is none.</summary>
    private static (double Margin, int Product, int Week)? BestWeek(PlanningInstance instance, Prices prices, InstanceOrderLine l)
    {
        (double Margin, int Product, int Week)? best = null;
        for (int t = l.Earliest; t < instance.Weeks; t++)
            foreach (int q in l.Alternatives)
            {
                double margin = l.GainIn(t) - prices.Available[q, t];
                if ((best is not { } found || margin > found.Margin) && double.IsFinite(margin)
                    && (instance.Stock.Any(s => s.Product == q && s.First <= t && t <= s.Last) || Made(instance, prices, instance.Products[q], t) is not null))
                    best = (margin, q, t);
            }
        return best;
    }

    /// <summary>Whether lots that are there by the end of the week and may be run give as much as a unit of its size.</summary>
    private static bool ToBeHad(PlanningInstance instance, InstanceProduct p, int week) => instance.Lots
        .Where(l => !l.Hold && l.ReadyWeek <= week && (!p.Organic || l.Organic) && l.Rows.Any(r => instance.Rows[r].Start <= week))
        .Sum(l => l.Mass * l.SortShares[p.Sort]) >= p.Net;

    /// <summary>What a product's price in a week is made of: its own making, garlic of its size, hours of the line, hands. The most first.</summary>
    private static IEnumerable<string> Dear(PlanningInstance instance, Prices prices, InstanceProduct p, int week, double costs, double gives)
    {
        if (Made(instance, prices, p, week) is not { } made) return [];
        (int packed, int line, double price) = made;
        InstanceLine l = instance.Lines[line];
        InstanceSort sort = instance.Sorts[p.Sort];
        // Per packed mass; what does not make grade is left out, so hours count a little low.
        double perHour = 1 / (l.Rate * (sort.Clove ? instance.KeptCrack : instance.KeptFresh)), own = p.UnitCost + l.Cost * perHour;
        if (own > gives) return [Remarks.Say(Remark.MakingDear, own * p.Net * instance.MoneyScale)];
        double hand = double.IsInfinity(instance.People[packed]) ? 0 : prices.People[packed];
        double hour = Math.Max(0, prices.Hour[line, packed] - l.Cost - hand * l.Heads);
        NodaTime.LocalDate monday = instance.Season.Settings.Monday(packed);
        (double Part, string Said)[] parts =
        [
            (price - prices.Hour[line, packed] * perHour, Remarks.Say(sort.Clove ? Remark.ClovesShort : Remark.BulbsShort, sort.Name)),
            (hour * perHour, Remarks.Say(Remark.HoursShort, l.Id.Text, monday, hour * instance.MoneyScale)),
            (hand * l.Heads * perHour, Remarks.Say(Remark.HandsWorth, monday, hand * instance.MoneyScale)),
        ];
        return parts.Where(x => x.Part >= Little * costs).OrderByDescending(x => x.Part).Select(x => x.Said);
    }

    /// <summary>The week in which a product shipped in a week is made at the least price, on the line whose hour per mass is cheapest; null where none runs.</summary>
    private static (int Week, int Line, double Price)? Made(PlanningInstance instance, Prices prices, InstanceProduct p, int shipped)
    {
        (int Week, int Line, double Price)? best = null;
        LineMode mode = instance.Sorts[p.Sort].Clove ? LineMode.Crack : LineMode.Fresh;
        for (int t = Math.Max(instance.AsOf, shipped - p.Shelf); t <= shipped; t++)
        {
            int line = -1;
            for (int i = 0; i < instance.Lines.Length; i++)
                if (instance.Lines[i].Mode == mode && instance.Lines[i].Hours[t] + instance.Lines[i].Overtime[t] > 0
                    && (line < 0 || prices.Hour[i, t] / instance.Lines[i].Rate < prices.Hour[line, t] / instance.Lines[line].Rate)) line = i;
            if (line < 0 || !ToBeHad(instance, p, t)) continue;
            for (int o = p.Organic && instance.OrganicApart ? 1 : 0; o < instance.SupplyKinds; o++)
                if (best is not { } found || prices.Supply[p.Sort, o, t] < found.Price) best = (t, line, prices.Supply[p.Sort, o, t]);
        }
        return best;
    }
}
