namespace Cloveshed.Core.Scenarios;

/// <summary>Kinds of money, revenues first: those of a plan's value.</summary>
internal enum MoneyKind { Orders, Market, AsIs, Standing, Making, Line, Overtime, Storage, Place, Moves, Late, Short, SeedShort }

/// <summary>Money by kind and week, scaled; costs as positive numbers.</summary>
internal sealed class Till(int weeks)
{
    private const int Kinds = 13;
    private readonly double[] byKind = new double[Kinds], byWeek = new double[weeks];

    public static bool IsRevenue(MoneyKind kind) => kind <= MoneyKind.Standing;

    public void Add(MoneyKind kind, int week, double amount)
    {
        byKind[(int)kind] += amount;
        byWeek[Math.Min(week, weeks - 1)] += IsRevenue(kind) ? amount : -amount;
    }

    public double Of(MoneyKind kind) => byKind[(int)kind];

    public double Value => byWeek.Sum();

    public double Revenue => byKind[..((int)MoneyKind.Standing + 1)].Sum();

    /// <summary>What each week brought less what it cost, summed up to its end.</summary>
    public double[] Cumulative()
    {
        double[] sum = [.. byWeek];
        for (int t = 1; t < sum.Length; t++) sum[t] += sum[t - 1];
        return sum;
    }
}
