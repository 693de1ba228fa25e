namespace Cloveshed.Core.Planning;

/// <summary>
/// Units shipped are whole; the linear model's are not. Once the whole units are known they are held and the model is solved again,
/// so that no hour, no pound and no bin is spent on a part of a carton that nobody gets, nor a run made that nothing is shipped from.
/// The best seen is kept.
/// </summary>
internal static class WholeUnits
{
    internal static AnswerBuilding Settle(Master master, Seasons.Season season)
    {
        var best = new BestSeen(master, season);
        Hold(master, best.Plan);
        best.Try(asMuchWillDo: true);
        if (GiveUpIdleRuns(master, best.Plan)) best.Try(asMuchWillDo: true);
        if (master.Instance.Pins.Count == 0 && best.Worth < master.Instance.ValueOfNothing * master.Instance.MoneyScale)
        {
            HoldNothing(master);
            best.Try(asMuchWillDo: true);
        }
        best.Restore();
        return best.Plan;
    }

    /// <summary>Holds fills and sales at the whole units that the plan ships, and whole orders at nothing where none is.</summary>
    private static void Hold(Master master, AnswerBuilding plan)
    {
        PlanningInstance instance = master.Instance;
        master.AddFills(plan.Filled.Fills.Where(f => master.Rows.OrderLine[f.Line] >= 0).Select(f => (f.Line, f.Product, f.Week)));
        var fills = plan.Filled.Fills.ToDictionary(f => (f.Line, f.Product, f.Week), f => f.Units * instance.Products[f.Product].Net);
        var sales = plan.Filled.Sales.ToDictionary(s => s.Market, s => s.Units * instance.Products[instance.Market[s.Market].Product].Net);
        var shipped = plan.Filled.Fills.Select(f => (instance.OrderLines[f.Line].Order, f.Week)).ToHashSet();
        var set = new List<int>();
        var held = new List<double>();
        for (int k = 0; k < master.ColumnCount; k++)
        {
            MasterColumn c = master.Columns[k];
            if (c.Kind == ColumnKind.Fill) At(k, fills.GetValueOrDefault((c.A, c.B, c.D)));
            else if (c.Kind == ColumnKind.Market) At(k, sales.GetValueOrDefault(c.A));
            else if (c.Kind == ColumnKind.Whole && !shipped.Contains((instance.OrderLines[instance.WholeOrders[c.A].Lines[0]].Order, c.D))) At(k, 0);
        }
        master.Program.SetColumnBounds(set, held, held);

        void At(int column, double value)
        {
            set.Add(column);
            held.Add(value);
        }
    }

    /// <summary>Nothing stands beyond the week in which it comes and nothing is shipped: what every season allows. Pins are of more weight than money.</summary>
    private static void HoldNothing(Master master)
    {
        int[] none = [.. Enumerable.Range(0, master.ColumnCount).Where(k => master.Columns[k].Kind is ColumnKind.Fill or ColumnKind.Market or ColumnKind.Whole or ColumnKind.Standing)];
        master.Program.SetColumnBounds(none, new double[none.Length], new double[none.Length]);
        foreach (int row in master.Rows.LeastRun.Values) master.Program.SetRowBounds(row, double.NegativeInfinity, 0);
    }

    /// <summary>
    /// Frees the least mass of the runs from which nothing is shipped and no seed is kept: made at their least for a part of a unit
    /// that was then not to be had, they only cost hours. False if there is none.
    /// </summary>
    private static bool GiveUpIdleRuns(Master master, AnswerBuilding plan)
    {
        HashSet<(int, int, int)> useful =
        [
            .. plan.Runs.Where(r => r.SeedCloves.Any(c => c.Value > 0) || r.Sources.Any(s => s.MadeByProduct.Values.Any(made => made > 0)))
                .Select(r => (r.Lot, r.Line, r.Week)),
        ];
        int[] idle = [.. master.Rows.LeastRun.Where(least => !useful.Contains(least.Key)).Select(least => least.Value)];
        foreach (int row in idle) master.Program.SetRowBounds(row, double.NegativeInfinity, 0);
        return idle.Length > 0;
    }
}
