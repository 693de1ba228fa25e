using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Promise;

/// <summary>
/// The promise strip: for each product and week what ships to orders and what is sold at market (columns), what is packed
/// beyond promises and still on hand (outlined, on top), and beneath it what the next carton would cost, as a shade and a number.
/// </summary>
public static class PromiseStrip
{
    private const double NamesWidth = 188;
    private const double PlotWidth = 1150;
    private const double Top = 48;
    private const double Pitch = 56;
    private const double Columns = 30;
    private const double PriceBand = 14;

    /// <summary>One picture; a page shows bulbs and cloves apart, so that each fits a sheet.</summary>
    public static Picture Draw(PromiseFacts facts, Reader reader)
    {
        var axis = new WeekAxis(0, facts.Settings.Weeks, PlotWidth);
        double height = Top + facts.Rows.Count * Pitch + 2;
        var plot = new Drawing(PlotWidth, height);
        var names = new Drawing(NamesWidth, height);
        axis.Draw(plot, Top, height - 2, facts.Settings, reader);
        for (int i = 0; i < facts.Rows.Count; i++)
        {
            PromiseRow row = facts.Rows[i];
            double y = Top + i * Pitch;
            DrawRow(plot, row, y, axis, reader);
            names.Text(NamesWidth - 10, y + 13, Drawing.Fit(row.Product.Text, NamesWidth - 12, 13), "name", "end");
            names.Text(NamesWidth - 10, y + 27, Drawing.Fit(Row(row, reader), NamesWidth - 12, 11.5), "under-name", "end");
            if (row.Weeks.Any(w => w.NextPrice is not null))
            {
                names.Text(NamesWidth - 10, y + 44, reader.Say(Say.NextCarton), "under-name", "end");
            }
        }
        return new Picture(reader.Say(Say.PromiseName), plot, names, [Totals(facts, reader), ByWeek(facts, reader)], Summary(facts, reader));
    }

    private static string Row(PromiseRow row, Reader reader) => row.Sold > 0
        ? reader.Say(Say.PromiseRowWords, reader.Number(row.Shipped, 0), reader.Number(row.Sold, 0)) : reader.Say(Say.PromiseRowShipped, reader.Number(row.Shipped, 0));

    private static void DrawRow(Drawing plot, PromiseRow row, double y, WeekAxis axis, Reader reader)
    {
        double most = Math.Max(1, row.Weeks.Max(w => w.Shipped + w.Sold + w.HeldForMarket + w.Free));
        double dearest = row.Weeks.Max(w => w.NextPrice ?? 0);
        double cheapest = row.Weeks.Where(w => w.NextPrice is > 0).Select(w => w.NextPrice!.Value).DefaultIfEmpty(0).Min();
        double floor = y + Columns;
        string? said = null;
        foreach (PromiseWeek week in row.Weeks)
        {
            double x = axis.X(week.Week) + 1;
            double wide = axis.Step - 2;
            double shipped = week.Shipped / most * Columns;
            double sold = week.Sold / most * Columns;
            double free = (week.HeldForMarket + week.Free) / most * Columns;
            string title = reader.Say(Say.PromiseWeekTitle, row.Product, reader.Week(week.Week), reader.Number(week.Shipped, 0), reader.Number(week.Sold, 0),
                reader.Number(week.HeldForMarket + week.Free, 0), week.NextPrice is { } p ? reader.Price(p) : "–");
            plot.Rect(x, floor - shipped, wide, shipped, "b-fresh");
            plot.Rect(x, floor - shipped - sold, wide, sold, "sold");
            if (sold >= 3)
            {
                plot.Line(x + wide / 2, floor - shipped - sold + 1, x + wide / 2, floor - shipped - 1, "core-sold");
            }
            if (free >= 1)
            {
                plot.Rect(x, floor - shipped - sold - free, wide, free, "free");
                plot.Line(x, floor - shipped - sold - free, x + wide, floor - shipped - sold - free, "free-top");
            }
            if (week.NextPrice is { } price)
            {
                int shade = Shade(price, cheapest, dearest);
                if (shade != 0)
                {
                    plot.Rect(axis.X(week.Week), floor + 3, axis.Step + .3, PriceBand, "price-" + MarkupText.Number(shade));
                }
                string text = reader.Number(price, dearest < 10 && price > 0 ? 1 : 0);
                if (text != said && 5.6 * text.Length <= axis.Step)
                {
                    plot.Text(axis.X(week.Week + .5), floor + 14, text, "price-word", "middle");
                }
                said = text;
            }
            else
            {
                said = null;
            }
            if (week.Made + week.Shipped + week.Sold + week.HeldForMarket + week.Free > 0 || week.NextPrice is > 0)
            {
                plot.Rect(axis.X(week.Week), y, axis.Step, Columns + 3 + PriceBand, "hit", title);
            }
        }
        plot.Line(0, floor + .5, axis.Width, floor + .5, "lane-rule");
    }

    // Four shades from this product's cheapest week to its dearest; a week in which one more costs nothing has none.
    private static int Shade(double price, double cheapest, double dearest) =>
        price <= 0 ? 0 : dearest <= cheapest ? 2 : 1 + (int)Math.Min(3, 4 * (price - cheapest) / (dearest - cheapest));

    private static string Summary(PromiseFacts facts, Reader reader)
    {
        PromiseRow? dearest = facts.Rows.Where(r => r.Weeks.Any(w => w.NextPrice is not null)).MaxBy(r => r.Weeks.Max(w => w.NextPrice ?? 0));
        string start = reader.Say(Say.PromiseSummary, facts.Rows.Count, reader.Number(facts.Rows.Sum(r => r.Shipped), 0), reader.Number(facts.Rows.Sum(r => r.Sold), 0),
            reader.Number(facts.Rows.Sum(r => r.Left), 0));
        if (dearest is null)
        {
            return start;
        }
        PromiseWeek week = dearest.Weeks.MaxBy(w => w.NextPrice ?? 0)!;
        return start + " " + reader.Say(Say.PromiseSummaryDearest, dearest.Product, reader.Price(week.NextPrice ?? 0), reader.Week(week.Week));
    }

    private static DataTable Totals(PromiseFacts facts, Reader reader) => new(
        reader.Say(Say.PromiseTotalsCaption),
        [new(reader.Say(Say.ProductHead)), new(reader.Say(Say.NetHead)), new(reader.Say(Say.OrderedHead), true), new(reader.Say(Say.StockHead), true), new(reader.Say(Say.MadeHead), true),
            new(reader.Say(Say.ShippedHead), true), new(reader.Say(Say.SoldHead), true), new(reader.Say(Say.LeftHead), true)],
        [.. facts.Rows.Select(r => (IReadOnlyList<Cell>)[r.Product.Text, reader.UnitMass(r.Net), reader.Number(r.Ordered, 0), reader.Number(r.StockAtStart, 1),
            reader.Number(r.Made, 1), reader.Number(r.Shipped, 0), reader.Number(r.Sold, 0), reader.Number(r.Left, 1)])]);

    private static DataTable ByWeek(PromiseFacts facts, Reader reader) => new(
        reader.Say(Say.PromiseByWeekCaption),
        [new(reader.Say(Say.ProductHead)), new(reader.Say(Say.WeekHead)), new(reader.Say(Say.MadeHead), true), new(reader.Say(Say.ShippedHead), true), new(reader.Say(Say.SoldHead), true),
            new(reader.Say(Say.HeldForOrdersHead), true), new(reader.Say(Say.BeyondHead), true), new(reader.Say(Say.NextCarton), true)],
        [.. from row in facts.Rows
            from w in row.Weeks
            where w.Made + w.Shipped + w.Sold >= 0.05 || w.NextPrice is > 0
            select (IReadOnlyList<Cell>)[row.Product.Text, reader.Week(w.Week), reader.Number(w.Made, 1), reader.Number(w.Shipped, 0), reader.Number(w.Sold, 0),
                reader.Number(w.HeldForOrders, 1), reader.Number(w.HeldForMarket + w.Free, 1), w.NextPrice is { } p ? reader.Price(p) : "–"]]);
}
