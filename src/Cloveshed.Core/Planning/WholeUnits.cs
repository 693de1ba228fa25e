namespace Cloveshed.Core.Planning;

/// <summary>
/// Units shipped are whole; the linear model's are not. Once the whole units are known they are held and the model is solved again,
/// so that no hour, no pound and no bin is spent on a part of a carton that nobody gets. The better of the two is kept.
/// </summary>
internal static class WholeUnits
{
    internal static AnswerBuilding Settle(Master master, Seasons.Season season)
    {
        var first = new AnswerBuilding(master);
        double before = first.ValueOf(season);
        PlanningInstance instance = master.Instance;
        master.AddFills(first.Filled.Fills.Where(f => master.Rows.OrderLine[f.Line] >= 0).Select(f => (f.Line, f.Product, f.Week)));
        var fills = first.Filled.Fills.ToDictionary(f => (f.Line, f.Product, f.Week), f => f.Units * instance.Products[f.Product].Net);
        var sales = first.Filled.Sales.ToDictionary(s => s.Market, s => s.Units * instance.Products[instance.Market[s.Market].Product].Net);
        var shipped = first.Filled.Fills.Select(f => (instance.OrderLines[f.Line].Order, f.Week)).ToHashSet();
        var set = new List<int>();
        var held = new List<double>();
        for (int k = 0; k < master.ColumnCount; k++)
        {
            MasterColumn c = master.Columns[k];
            if (c.Kind == ColumnKind.Fill) Hold(k, fills.GetValueOrDefault((c.A, c.B, c.D)));
            else if (c.Kind == ColumnKind.Market) Hold(k, sales.GetValueOrDefault(c.A));
            else if (c.Kind == ColumnKind.Whole && !shipped.Contains((instance.OrderLines[instance.WholeOrders[c.A].Lines[0]].Order, c.D))) Hold(k, 0);
        }
        void Hold(int column, double value)
        {
            set.Add(column);
            held.Add(value);
        }
        master.Program.SetColumnBounds(set, held, held);
        double[] values = master.Values;
        if (master.Solve(LinearMethod.DualSimplex, 30) != LinearStatus.Optimal) return first;
        var second = new AnswerBuilding(master);
        if (second.ValueOf(season) >= before && !second.BreaksALeastRun()) return second;
        master.Restore(values);
        return new AnswerBuilding(master);
    }
}
