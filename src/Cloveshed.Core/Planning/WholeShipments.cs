namespace Cloveshed.Core.Planning;

/// <summary>
/// Whole orders in the polish: in which week one ships, if at all, is a yes or no, and each of its lines takes whole units of any of the products that may fill it.
/// A way to ship it for each set of products would say less in many more columns.
/// </summary>
internal sealed class WholeShipments
{
    private readonly PolishModel _model;
    private readonly PlanningInstance _instance;

    /// <summary>Of an order in a week, by line: the column of each product's mass; none where only one product may fill it.</summary>
    private readonly List<(int Order, int Week, int[][] Columns)> _ships = [];

    /// <param name="when">Orders and weeks in which they may ship.</param>
    internal WholeShipments(PolishModel model, IEnumerable<(int Order, int Week)> when)
    {
        (_model, _instance) = (model, model.Master.Instance);
        var columns = new List<(double, double, IEnumerable<(int, double)>)>();
        int first = model.Master.ColumnCount;
        foreach ((int order, int week) in when)
            _ships.Add((order, week, [.. _instance.WholeOrders[order].Lines.Select(line => _instance.OrderLines[line]).Select(line => line.Alternatives.Length < 2 ? [] : line.Alternatives.Select(product =>
            {
                columns.Add((0, line.Mass, [(model.Master.Rows.Available[product, week], 1.0)]));
                return first + columns.Count - 1;
            }).ToArray())]));
        model.Master.AddChoices(columns);
    }

    /// <summary>The choices of the model that these are.</summary>
    internal void Choose()
    {
        foreach ((int order, int week, int[][] columns) in _ships)
        {
            int[] lines = _instance.WholeOrders[order].Lines;
            var entries = new List<(int Row, double Value)> { (_model.Master.Rows.WholeOrder[order], 1) };
            double gain = 0;
            for (int k = 0; k < lines.Length; k++)
            {
                InstanceOrderLine line = _instance.OrderLines[lines[k]];
                gain += line.Mass * line.GainIn(week);
                if (columns[k].Length == 0)
                {
                    entries.Add((_model.Master.Rows.Available[line.Product, week], line.Mass));
                    continue;
                }
                entries.AddRange(_model.Counted(0, [.. columns[k].Select(c => (c, 1.0))], line.Mass));
                for (int q = 0; q < columns[k].Length; q++)
                    _model.Choice(ChoiceKind.Part, lines[k], line.Alternatives[q], week, line.Line.Units, 0, _model.Counted(0, [(columns[k][q], 1)], _instance.Products[line.Alternatives[q]].Net));
            }
            _model.Choice(ChoiceKind.Whole, order, -1, week, 1, gain, entries.GroupBy(e => e.Row).Select(g => (g.Key, g.Sum(e => e.Value))));
        }
    }

    /// <summary>Values in which what ships whole is told by its ways, as the master knows them. These are added to it.</summary>
    internal double[] Told(double[] values)
    {
        Master master = _model.Master;
        var ways = new List<((int Order, int[] Products, int Week) Way, double Share)>();
        foreach (PolishChoice c in _model.Choices.Where(c => c.Kind == ChoiceKind.Whole && values[c.Column] > 0.5))
            ways.AddRange(Ways(_ships.Single(s => (s.Order, s.Week) == (c.A, c.Week)), values));
        int count = master.ColumnCount;
        if (master.AddWholes(ways.Select(w => w.Way)) != ways.Count) throw new InvalidOperationException("A whole order ships twice in one way.");
        return [.. values, .. new double[count - values.Length], .. ways.Select(w => w.Share)];
    }

    /// <summary>Of what is shipped the first part is the first products of all lines, and so on, as far as each reaches.</summary>
    private IEnumerable<((int Order, int[] Products, int Week) Way, double Share)> Ways((int Order, int Week, int[][] Columns) ship, double[] values)
    {
        InstanceOrderLine[] lines = [.. _instance.WholeOrders[ship.Order].Lines.Select(line => _instance.OrderLines[line])];
        (int Product, double Until)[][] reach = [.. lines.Select((line, k) => ship.Columns[k].Length == 0 ? [(line.Product, 1.0)] : Reach(line, ship.Columns[k], values))];
        double at = 0;
        foreach (double end in reach.SelectMany(r => r.Select(p => p.Until)).Distinct().Order())
        {
            double middle = (at + end) / 2;
            yield return ((ship.Order, [.. reach.Select(r => r.First(p => p.Until > middle).Product)], ship.Week), end - at);
            at = end;
        }
    }

    private static (int Product, double Until)[] Reach(InstanceOrderLine line, int[] columns, double[] values)
    {
        var reach = new List<(int, double)>();
        double sum = 0, all = columns.Sum(c => values[c]);
        for (int q = 0; q < columns.Length; q++)
        {
            // Parts of units are rounding of the solver.
            double units = Math.Round(values[columns[q]] / all * line.Line.Units);
            if (units < 1) continue;
            sum += units;
            reach.Add((line.Alternatives[q], sum / line.Line.Units));
        }
        reach[^1] = (reach[^1].Item1, 1);
        return [.. reach];
    }
}
