using Cloveshed.Core.Seasons;

namespace Cloveshed.Web.Line;

/// <summary>
/// What a mass unit of each size class fetches, before anybody types another price: of its packs, the mean of orders and market over the
/// next weeks, weighed by mass, less what a pack costs. A class that nothing is sold of fetches nothing.
/// </summary>
internal static class ClassPrices
{
    /// <summary>Weeks looked ahead; where nothing is sold in them, the whole season counts.</summary>
    public const int Ahead = 8;

    /// <summary>In the order of the season's chart, in its currency and mass unit.</summary>
    /// <param name="organic">Of an organic lot: organic packs where there are any.</param>
    public static double[] Of(Season season, bool organic)
    {
        ILookup<string, Product> packs = season.Products.Where(product => product.Form == ProductForm.Bulb).ToLookup(product => product.From, StringComparer.Ordinal);
        return [.. season.Sizes.Select(size =>
        {
            Product[] all = [.. packs[size.Id.Text]];
            Product[] fitting = all.Any(pack => pack.Organic == organic) ? [.. all.Where(pack => pack.Organic == organic)] : organic ? all : [];
            int from = season.Settings.AsOfWeek;
            return Mean(season, fitting, from, from + Ahead) ?? Mean(season, fitting, 0, season.Settings.Weeks) ?? 0;
        })];
    }

    private static double? Mean(Season season, Product[] packs, int from, int to)
    {
        double money = 0, mass = 0;
        foreach (Product pack in packs)
        {
            void Take(double units, decimal price)
            {
                money += units * (double)(price - pack.UnitCost);
                mass += units * pack.Net;
            }

            foreach (OrderLine line in season.Orders.Where(line => line.Product == pack.Id && season.Settings.WeekOf(line.Due) >= from && season.Settings.WeekOf(line.Due) < to))
            {
                Take(line.Units, line.Price);
            }

            foreach (MarketWeek week in season.Market.Where(week => week.Product == pack.Id && week.Week >= from && week.Week < to))
            {
                Take(week.P50, week.Price);
            }
        }

        return mass > 0 ? Math.Max(0, money / mass) : null;
    }
}
