namespace Cloveshed.Core.Planning;

/// <summary>
/// A place's cost by the week is whole or nothing; the linear model spreads it over what the place could hold. While runs are rounded it is spread over what
/// stood there in the last solution, so that a place nearly empty is dear and one that is open anyway is not.
/// </summary>
internal static class PlaceWeeks
{
    /// <summary>Under this share of its positions a place is charged as if so much stood there.</summary>
    private const double Little = 0.05;

    /// <summary>Each place and week charged by what stands in another solved master with the same spots.</summary>
    internal static void Slope(Master master, Master last) => Charge(master, last, (place, stood) => place.WeekCost / Math.Max(stood, Little * place.Capacity));

    /// <summary>What is open in another solved master is paid for, and costs no more for more bins; what is not stays as dear as it was made.</summary>
    internal static void Decide(Master master, Master last) =>
        Charge(master, last, (place, stood) => stood > Little * place.Capacity ? 0 : place.WeekCost / (Little * place.Capacity));

    /// <summary>[place, week] scaled bins that stand there at a week's end in a solved master.</summary>
    internal static double[,] Stood(Master master)
    {
        double[,] stood = new double[master.Instance.Places.Length, master.Instance.Weeks];
        for (int k = 0; k < master.ColumnCount; k++)
            if (master.Columns[k] is { Kind: ColumnKind.Standing } c) stood[master.SpotsHere[c.A].Place, c.D] += master.Values[k];
        return stood;
    }

    private static void Charge(Master master, Master last, Func<InstancePlace, double, double> more)
    {
        PlanningInstance instance = master.Instance;
        double[,] stood = Stood(last);
        var columns = new List<int>();
        var costs = new List<double>();
        for (int k = 0; k < master.ColumnCount; k++)
        {
            if (master.Columns[k] is not { Kind: ColumnKind.Standing } c) continue;
            InstancePlace place = instance.Places[master.SpotsHere[c.A].Place];
            if (place.WeekCost <= 0 || place.Capacity <= 0) continue;
            columns.Add(k);
            costs.Add(-place.BinWeekCost - more(place, stood[master.SpotsHere[c.A].Place, c.D]));
        }
        master.Program.SetColumnCosts(columns, costs);
    }
}
