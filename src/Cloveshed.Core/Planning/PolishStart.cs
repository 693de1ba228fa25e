namespace Cloveshed.Core.Planning;

/// <summary>What a plan says to each choice of the polish.</summary>
internal static class PolishStart
{
    /// <summary>By choice, in their order: 0 or 1, or units.</summary>
    internal static double[] Of(PolishModel model, AnswerBuilding plan)
    {
        PlanningInstance instance = model.Master.Instance;
        var runs = plan.Runs.Where(r => r.MassIn > 0).Select(r => (r.Path is null ? -1 : r.Lot, r.Line, r.Week)).ToHashSet();
        var fills = plan.Filled.Fills.ToDictionary(f => (f.Line, f.Product, f.Week), f => f.Units);
        var sales = plan.Filled.Sales.ToDictionary(s => s.Market, s => s.Units);
        var paths = plan.Paths.ToLookup(p => p.Row);
        double[,] stood = new double[instance.Places.Length, instance.Weeks];
        foreach (PlannedPath path in plan.Paths)
            for (int t = instance.Rows[path.Row].Start; t < instance.Weeks; t++)
                if (path.Left(t) > 0) stood[model.Master.SpotsHere[path.SpotAt(t)].Place, t] = 1;
        var shipped = plan.Filled.Fills.GroupBy(f => (f.Line, f.Week)).ToDictionary(g => g.Key, g => g.Sum(f => f.Units));
        return [.. model.Choices.Select(c => c.Kind switch
        {
            ChoiceKind.Run => runs.Contains((c.A, c.B, c.Week)) ? 1 : 0,
            ChoiceKind.Finish => paths[c.A].All(p => p.Left(c.Week) <= 0) ? 1 : 0,
            ChoiceKind.Place => stood[model.Master.SpotsHere[c.A].Place, c.Week],
            ChoiceKind.Fill or ChoiceKind.Part => fills.GetValueOrDefault((c.A, c.B, c.Week)),
            ChoiceKind.Sale => sales.GetValueOrDefault(c.A),
            ChoiceKind.Whole => instance.WholeOrders[c.A].Lines.All(l => shipped.GetValueOrDefault((l, c.Week)) == instance.OrderLines[l].Line.Units) ? 1 : 0,
            _ => throw new InvalidOperationException($"A plan says nothing to a choice of {c.Kind}."),
        })];
    }
}
