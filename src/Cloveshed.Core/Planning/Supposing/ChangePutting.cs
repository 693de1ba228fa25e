namespace Cloveshed.Core.Planning.Supposing;

/// <summary>
/// Changes put to a solved master as other bounds and other gains of what is there already. Each says what it does to the value of doing nothing (short orders cost even
/// when nothing is done) and to the bound at any prices.
/// </summary>
internal sealed class ChangePutting(Master master)
{
    private readonly PlanningInstance _instance = master.Instance;
    private readonly List<Func<Prices, double>> _bound = [];
    private readonly Dictionary<int, InstanceOrderLine> _lines = [];
    private readonly HashSet<int> _moved = [];
    private readonly HashSet<string> _asked = [];
    private readonly HashSet<int> _bounded = [];
    private readonly HashSet<int> _stopped = [];

    /// <summary>Order lines that are otherwise now, by index.</summary>
    internal IReadOnlyDictionary<int, InstanceOrderLine> Lines => _lines;

    /// <summary>Order lines that the changes are about, as an expense names them.</summary>
    internal IReadOnlySet<string> Asked => _asked;

    /// <summary>Scaled money to add to the master's value.</summary>
    internal double ValueOfNothing { get; private set; }

    /// <summary>Scaled money to add to a bound that was computed for the season as it is.</summary>
    internal double OnBound(Prices prices) => ValueOfNothing + _bound.Sum(one => one(prices)) + _lines.Sum(one => Fills(prices, one.Value) - Fills(prices, _instance.OrderLines[one.Key]));

    /// <summary>Null where it was put.</summary>
    internal ChangeFault? Put(SeasonChange change) => change switch
    {
        SeasonChange.OrderCancelled c => Order(c.Order, c.Number, (i, line) => Resize(i, line, 0), Cancelled),
        SeasonChange.OrderResized c => Order(c.Order, c.Number, (i, line) => Resize(i, line, c.Units * _instance.Products[line.Product].Net), null),
        SeasonChange.OrderMoved c => Ahead(c.Due) is { } week ? Order(c.Order, c.Number, (i, line) => Move(i, line, week), null) : ChangeFault.NotAhead,
        SeasonChange.LineStopped c => Stop(c),
        SeasonChange.PeopleThere c => People(c),
        _ => throw new InvalidOperationException($"Nothing is written for {change.GetType().Name}."),
    };

    /// <summary>Ways to fill that came in since gain what they gain with the changes.</summary>
    internal void Refresh()
    {
        int[] at = MovedFills();
        master.Program.SetColumnCosts(at, [.. at.Select(k => _lines[master.Columns[k].A].GainIn(master.Columns[k].D))]);
    }

    /// <summary>Limits and gains as they were. Columns that came in stay.</summary>
    internal void Undo()
    {
        foreach (int row in _bounded) master.Program.SetRowBounds(row, master.Rows.Lower[row], master.Rows.Upper[row]);
        int[] stopped = [.. _stopped], moved = MovedFills();
        double Hours(int k) => master.Columns[k] is var c && c.Kind == ColumnKind.Hours ? _instance.Lines[c.A].Hours[c.D] : _instance.Lines[c.A].Overtime[c.D];
        master.Program.SetColumnBounds(stopped, new double[stopped.Length], [.. stopped.Select(Hours)]);
        master.Program.SetColumnCosts(moved, [.. moved.Select(master.GainOf)]);
    }

    private int[] MovedFills() => _moved.Count == 0 ? [] : [.. Enumerable.Range(0, master.ColumnCount).Where(k => master.Columns[k] is { Kind: ColumnKind.Fill } c && _moved.Contains(c.A))];

    private static double Fills(Prices prices, InstanceOrderLine line) => line.Mass * Math.Max(0, UpperBound.BestFill(prices, line).Margin);

    private int? Ahead(NodaTime.LocalDate day) => _instance.Season.Settings.WeekOf(day) is var week && week >= _instance.AsOf && week < _instance.Weeks ? week : null;

    private ChangeFault? Order(OrderId order, string? number, Action<int, InstanceOrderLine> each, Action<int>? whole)
    {
        int[] lines = [.. Enumerable.Range(0, _instance.OrderLines.Length).Where(i => _instance.OrderLines[i].Line.Order == order && (number is null || _instance.OrderLines[i].Line.Number == number))];
        if (lines.Length == 0) return ChangeFault.NoSuchOrder;
        _asked.UnionWith(lines.Select(i => $"{_instance.OrderLines[i].Line.Order} {_instance.OrderLines[i].Line.Number}"));
        int together = Array.FindIndex(_instance.WholeOrders, o => o.Id == order);
        if (together >= 0 && (whole is null || number is not null)) return ChangeFault.OrderIsWhole;
        if (together >= 0) whole!(together);
        else foreach (int i in lines) each(i, _lines.GetValueOrDefault(i, _instance.OrderLines[i]));
        return null;
    }

    private void Cancelled(int order)
    {
        InstanceWholeOrder whole = _instance.WholeOrders[order];
        Bound(master.Rows.WholeOrder[order], 0);
        ValueOfNothing += whole.Lines.Sum(i => _instance.OrderLines[i].Mass * _instance.OrderLines[i].Short);
        _bound.Add(prices => -Math.Max(0, UpperBound.BestWhole(_instance, prices, order).Margin));
    }

    private void Resize(int index, InstanceOrderLine line, double mass)
    {
        ValueOfNothing += (line.Mass - mass) * line.Short;
        _lines[index] = line with { Mass = mass };
        // A line that can ship in no week of the season has no row.
        if (master.Rows.OrderLine[index] >= 0) Bound(master.Rows.OrderLine[index], mass);
    }

    private void Move(int index, InstanceOrderLine line, int week)
    {
        InstanceOrderLine moved = _lines[index] = line with { DueWeek = week };
        if (master.Rows.OrderLine[index] < 0) return;
        master.AddFills(Enumerable.Range(Math.Max(moved.Earliest, week - 2), Math.Max(0, week - Math.Max(moved.Earliest, week - 2) + 1)).Select(t => (index, moved.Product, t)));
        _moved.Add(index);
        Refresh();
    }

    private ChangeFault? Stop(SeasonChange.LineStopped stopped)
    {
        int line = Array.FindIndex(_instance.Lines, l => l.Id == stopped.Line);
        if (line < 0) return ChangeFault.NoSuchLine;
        if (Ahead(stopped.First) is not { } first || Ahead(stopped.Last) is not { } last || last < first) return ChangeFault.NotAhead;
        int[] at = [.. Enumerable.Range(0, master.ColumnCount).Where(k => master.Columns[k] is { Kind: ColumnKind.Hours or ColumnKind.Overtime } c && c.A == line && c.D >= first && c.D <= last)];
        double[] none = new double[at.Length];
        master.Program.SetColumnBounds(at, none, none);
        _stopped.UnionWith(at);
        _bound.Add(prices => -Enumerable.Range(first, last - first + 1).Sum(t => UpperBound.OfHours(_instance, prices, line, t)));
        return null;
    }

    private ChangeFault? People(SeasonChange.PeopleThere there)
    {
        if (Ahead(there.Day) is not { } week) return ChangeFault.NotAhead;
        if (master.Rows.People[week] < 0) return ChangeFault.NoPeopleCounted;
        Bound(master.Rows.People[week], there.PersonHours);
        _bound.Add(prices => (there.PersonHours - _instance.People[week]) * prices.People[week]);
        return null;
    }

    private void Bound(int row, double most)
    {
        master.Program.SetRowBounds(row, double.NegativeInfinity, most);
        _bounded.Add(row);
    }
}
