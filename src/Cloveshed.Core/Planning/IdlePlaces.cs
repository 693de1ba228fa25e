namespace Cloveshed.Core.Planning;

/// <summary>
/// A place's cost by the week is whole or nothing; the linear model spreads it over the place's positions, so that a few bins seem to
/// stand there for little. Where weeks pay far more than they were charged, the place is tried shut: for good, or from the week on
/// in which it stands nearly empty. What is worth more is kept. Room weeks and runs stay as decided.
/// </summary>
internal static class IdlePlaces
{
    /// <summary>Places and weeks tried at most: each costs a solve, which takes seconds where the master is large.</summary>
    private static int TrialsAtMost(Master master) => master.IsLarge ? 3 : 12;

    /// <summary>A place is nearly empty under this share of its positions.</summary>
    private const double NearlyEmpty = 0.3;

    /// <summary>From a week on, a place is shut; <paramref name="Unpaid"/>: what the model did not charge for it, scaled money.</summary>
    private readonly record struct Shutting(int Place, int From, double Unpaid);

    internal static void Shut(Master master, Seasons.Season season, GenerationLimits limits)
    {
        if (master.Instance.Places.All(place => place.WeekCost <= 0)) return;
        var best = new BestSeen(master, season);
        var tried = new HashSet<(int, int)>();
        for (int trial = 0; trial < TrialsAtMost(master) && limits.Elapsed() < limits.Until && !limits.Cancel.IsCancellationRequested; trial++)
        {
            Shutting? worst = Trials(master).Where(s => !tried.Contains((s.Place, s.From))).OrderByDescending(s => s.Unpaid).ThenBy(s => s.Place).ThenBy(s => s.From).Cast<Shutting?>().FirstOrDefault();
            if (worst is not { } at) break;
            tried.Add((at.Place, at.From));
            (int[] columns, double[] most) = Standing(master, at);
            double[] none = new double[columns.Length];
            master.Program.SetColumnBounds(columns, none, none);
            if (best.Try(asMuchWillDo: false)) continue;
            master.Program.SetColumnBounds(columns, none, most);
            best.Restore();
        }
        best.Restore();
    }

    private static IEnumerable<Shutting> Trials(Master master)
    {
        PlanningInstance instance = master.Instance;
        double[,] stood = PlaceWeeks.Stood(master);
        for (int p = 0; p < instance.Places.Length; p++)
        {
            InstancePlace place = instance.Places[p];
            if (place.WeekCost <= 0) continue;
            double unpaid = 0;
            int from = instance.Weeks;
            for (int t = instance.Weeks - 1; t >= instance.AsOf && stood[p, t] < NearlyEmpty * place.Capacity; t--)
            {
                if (stood[p, t] <= 1e-9) continue;
                unpaid += Unpaid(place, stood[p, t]);
                from = t;
            }
            if (unpaid > 0) yield return new Shutting(p, from, unpaid);
            double all = Enumerable.Range(instance.AsOf, instance.Weeks - instance.AsOf).Where(t => stood[p, t] > 1e-9).Sum(t => Unpaid(place, stood[p, t]));
            if (all > unpaid) yield return new Shutting(p, instance.AsOf, all);
        }
    }

    private static double Unpaid(InstancePlace place, double bins) => place.WeekCost - bins * (place.StandCost - place.BinWeekCost);

    private static (int[] Columns, double[] Most) Standing(Master master, Shutting at)
    {
        int[] columns = [.. Enumerable.Range(0, master.ColumnCount).Where(k =>
            master.Columns[k] is { Kind: ColumnKind.Standing } c && c.D >= at.From && master.SpotsHere[c.A].Place == at.Place)];
        return (columns, [.. columns.Select(_ => master.Instance.Places[at.Place].Capacity)]);
    }
}
