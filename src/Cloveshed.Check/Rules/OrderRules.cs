using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>
/// Orders: shipped when and with what the line allows, not more than it asks, whole where it says so, and what is left named in
/// shorts.csv. The market: not more than it is counted on to take.
/// </summary>
internal static class OrderRules
{
    public static void Check(SeasonData season, AnswerData answer, Findings findings)
    {
        var filled = new Dictionary<(string Order, string Number), double>();
        foreach (FillRow fill in answer.Fills)
        {
            if (!season.Orders.TryGetValue((fill.Order, fill.Number), out OrderLine? line))
            {
                findings.Add(RuleNames.UnknownName, fill.Where, $"order {fill.Order}, line {fill.Number}", "a line of orders.csv");
                continue;
            }

            filled[(line.Order, line.Number)] = filled.GetValueOrDefault((line.Order, line.Number)) + fill.Units;
            int first = Math.Max(line.ShipFrom, season.Calendar.AsOfWeek);
            if (fill.Week < first)
            {
                findings.Add(RuleNames.FillEarly, fill.Where, $"week {season.Calendar.Show(fill.Week)}", $"week {season.Calendar.Show(first)} or later");
            }

            if (line.ThatWeekOnly && fill.Week > line.Due)
            {
                findings.Add(RuleNames.FillLate, fill.Where, $"week {season.Calendar.Show(fill.Week)}", $"week {season.Calendar.Show(line.Due)}, the week of the program");
            }

            if (!MayFill(season, season.Products[line.Product], season.Products[fill.Product], line.LargerOk))
            {
                findings.Add(
                    RuleNames.FillProduct, fill.Where, fill.Product,
                    $"{line.Product}, its organic twin{(line.LargerOk ? ", or the next larger class of the same net" : "")}");
            }
        }

        Dictionary<(string, string), double> shorts = Shorts(season, answer, findings);
        foreach (OrderLine line in season.Orders.Values)
        {
            Line(line, filled.GetValueOrDefault((line.Order, line.Number)), shorts, findings);
        }

        Whole(season, answer, filled, findings);
        Market(season, answer, findings);
    }

    /// <summary>
    /// The ordered product; for a conventional one its organic twin; with larger_ok any of the next larger class or grade. Form and net
    /// stay, and what was ordered organic stays organic.
    /// </summary>
    public static bool MayFill(SeasonData season, Product ordered, Product shipped, bool largerOk)
    {
        if (ordered.Name == shipped.Name)
        {
            return true;
        }

        if (!ordered.SameNetAndForm(shipped) || (ordered.Organic && !shipped.Organic))
        {
            return false;
        }

        List<Window> windows = ordered.IsBulb ? season.Sizes : season.Grades;
        int from = windows.FindIndex(window => window.Name == ordered.From);
        bool larger = largerOk && from >= 0 && from + 1 < windows.Count && windows[from + 1].Name == shipped.From;
        return larger || (ordered.From == shipped.From && shipped.Organic && !ordered.Organic);
    }

    private static Dictionary<(string, string), double> Shorts(SeasonData season, AnswerData answer, Findings findings)
    {
        var shorts = new Dictionary<(string, string), double>();
        foreach (ShortRow row in answer.Shorts)
        {
            if (!season.Orders.ContainsKey((row.Order, row.Number)))
            {
                findings.Add(RuleNames.UnknownName, $"shorts.csv line {row.Line}", $"order {row.Order}, line {row.Number}", "a line of orders.csv");
            }

            shorts[(row.Order, row.Number)] = shorts.GetValueOrDefault((row.Order, row.Number)) + row.Units;
        }

        return shorts;
    }

    private static void Line(OrderLine line, double filled, Dictionary<(string, string), double> shorts, Findings findings)
    {
        string key = $"order {line.Order}, line {line.Number}";
        if (!(filled <= line.Units + Tolerance.Noise))
        {
            findings.Over(RuleNames.FillOver, $"fills.csv {key}", "units", filled, line.Units);
        }

        double shorted = shorts.GetValueOrDefault((line.Order, line.Number));
        double unfilled = Math.Max(0, line.Units - filled);
        if (!Tolerance.Same(shorted, unfilled))
        {
            findings.NotSame(RuleNames.Shorts, $"shorts.csv {key}", "units", shorted, unfilled);
        }
    }

    // One line that says whole holds all lines of its order together.
    private static void Whole(
        SeasonData season, AnswerData answer, Dictionary<(string Order, string Number), double> filled, Findings findings)
    {
        ILookup<string, FillRow> fills = answer.Fills.Where(fill => fill.Units > 0).ToLookup(fill => fill.Order);
        foreach (IGrouping<string, OrderLine> order in season.Orders.Values.GroupBy(line => line.Order).Where(order => order.Any(line => line.Whole)))
        {
            int weeks = fills[order.Key].Select(fill => fill.Week).Distinct().Count();
            if (weeks > 1)
            {
                findings.Add(RuleNames.OrderWhole, $"fills.csv order {order.Key}", $"shipped in {weeks} weeks", "all lines in one week, or none");
            }

            OrderLine? open = order.FirstOrDefault(line => filled.GetValueOrDefault((line.Order, line.Number)) < line.Units - Tolerance.Noise);
            if (weeks > 0 && open is not null)
            {
                findings.Add(
                    RuleNames.OrderWhole, $"fills.csv order {order.Key}, line {open.Number}",
                    $"{Figures.Show(filled.GetValueOrDefault((open.Order, open.Number)))} of {Figures.Show(open.Units)} units", "all lines in full, or none");
            }
        }
    }

    private static void Market(SeasonData season, AnswerData answer, Findings findings)
    {
        foreach (IGrouping<(string Product, int Week), SaleRow> sold in answer.Sales.GroupBy(sale => (sale.Product, sale.Week)))
        {
            double units = sold.Sum(sale => sale.Units);
            double most = season.Market.TryGetValue(sold.Key, out MarketWeek? market) ? market.P50 : 0;
            if (!Tolerance.AtMost(units, most, most))
            {
                findings.Over(RuleNames.Market, sold.First().Where, "units", units, most);
            }

            if (sold.Key.Week < season.Calendar.AsOfWeek && units > 0)
            {
                findings.Add(RuleNames.FillEarly, sold.First().Where, $"week {season.Calendar.Show(sold.Key.Week)}", $"week {season.Calendar.Show(season.Calendar.AsOfWeek)} or later");
            }
        }
    }
}
