using Cloveshed.DemoSeason.Draws;

namespace Cloveshed.DemoSeason.Sales;

/// <summary>
/// Who calls for what in which week. Standing programmes come at their cadence with a line or two; spot orders come when
/// they come, more of them before the winter feasts.
/// </summary>
public static class Calls
{
    private const int SpotOrders = 190;

    // How much of an ordinary week's demand a week has, by month from July on; invented.
    private static readonly double[] Season = [0.84, 0.90, 0.98, 1.06, 1.24, 1.20, 0.98, 1.00, 1.05, 1.02, 0.95, 0.78];

    public static double InSeason(int week) => Season[Math.Min(11, week * 12 / Scenario.Weeks)];

    public static IReadOnlyList<Call> Draw(ulong seed)
    {
        Draw draw = Draws.Draw.For(seed, "calls");
        List<Call> calls = [];
        foreach (Buyer buyer in Buyers.All.Where(b => b is { Cadence: > 0, Size: > 0 }))
        {
            int start = buyer.Cadence == 1 ? 0 : draw.Whole(0, buyer.Cadence - 1);
            int day = draw.Whole(2, 5);
            for (int week = start; week < Scenario.Weeks; week += buyer.Cadence)
            {
                int lines = buyer.Cadence == 1 || draw.Chance(0.6) ? 2 : 1;
                double size = buyer.Size * buyer.Cadence * InSeason(week);
                calls.Add(new Call(buyer, week, day, Lines(draw, buyer, lines, size, 0.18)));
            }
        }

        List<double> weeks = [.. Enumerable.Range(0, Scenario.Weeks).Select(w => w < 3 ? 0.3 : InSeason(w) * InSeason(w))];
        List<Buyer> spot = [.. Buyers.All.Where(b => b.Cadence == 0)];
        List<double> often = [.. spot.Select(b => 0.6 + (0.4 * b.Size))];
        for (int i = 0; i < SpotOrders; i++)
        {
            // Every spot buyer calls at least four times; the rest of the calls fall by size.
            Buyer buyer = i < 4 * spot.Count ? spot[i % spot.Count] : spot[draw.Weighted(often)];
            int lines = Math.Min(buyer.Products.Count, draw.Whole(1, 2));
            calls.Add(new Call(buyer, draw.Weighted(weeks), draw.Whole(0, 5), Lines(draw, buyer, lines, 1.7 * buyer.Size, 0.45)));
        }

        return calls;
    }

    // A buyer's first products are the ones that it mostly wants.
    private static List<(Product, double)> Lines(Draw draw, Buyer buyer, int count, double size, double spread)
    {
        List<Product> left = [.. buyer.Products.Select(n => Products.All[Products.Index(n)])];
        List<(Product, double)> lines = [];
        while (lines.Count < count)
        {
            int at = draw.Weighted([.. left.Select((_, i) => 1.0 / (1 + (0.35 * i)))]);
            lines.Add((left[at], size * draw.Factor(spread)));
            left.RemoveAt(at);
        }

        return lines;
    }
}
