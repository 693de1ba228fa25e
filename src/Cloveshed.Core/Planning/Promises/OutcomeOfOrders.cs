namespace Cloveshed.Core.Planning.Promises;

/// <summary>Who gets how much in a solved master: mass filled of each order line, sold of each market week, made for each seed need. Scaled.</summary>
internal sealed class OutcomeOfOrders
{
    private readonly PlanningInstance _instance;
    private readonly double[] _lines, _market, _seed, _gains;

    internal OutcomeOfOrders(Master master)
    {
        _instance = master.Instance;
        (_lines, _gains) = (new double[_instance.OrderLines.Length], new double[_instance.OrderLines.Length]);
        (_market, _seed) = (new double[_instance.Market.Length], new double[_instance.SeedNeeds.Length]);
        for (int k = 0; k < master.ColumnCount; k++)
        {
            double value = master.Values[k];
            if (value <= 1e-9) continue;
            MasterColumn c = master.Columns[k];
            switch (c.Kind)
            {
                case ColumnKind.Fill:
                    Fill(c.A, value, c.D);
                    break;
                case ColumnKind.Whole:
                    foreach (int i in _instance.WholeOrders[c.A].Lines) Fill(i, value * _instance.OrderLines[i].Mass, c.D);
                    break;
                case ColumnKind.Market:
                    _market[c.A] += value;
                    break;
                case ColumnKind.Path when c.Path!.Exit.Kind == ExitKind.Seed:
                    _seed[c.Path.Exit.Need] += value * c.Path.MassRatio * c.Path.Fresh * _instance.KeptSeed;
                    break;
            }
        }
    }

    private void Fill(int line, double mass, int week)
    {
        _lines[line] += mass;
        _gains[line] += mass * _instance.OrderLines[line].GainIn(week);
    }

    /// <summary>What this outcome has and another has less of, dearest first; of orders and the market under half a unit, and of seed under a millionth of the need, is left out.</summary>
    internal List<PromiseExpense> LostIn(OutcomeOfOrders after)
    {
        double money = _instance.MoneyScale;
        var lost = new List<PromiseExpense>();
        // Lines that only one of the two has come last, and are no news.
        for (int i = 0; i < Math.Min(_lines.Length, after._lines.Length); i++)
        {
            InstanceOrderLine l = _instance.OrderLines[i];
            double units = (_lines[i] - after._lines[i]) / _instance.Products[l.Product].Net, gain = _gains[i] - after._gains[i];
            // A line may lose nothing but its day.
            if (units >= 0.5 || (units > -0.5 && gain > 0.5 * l.Price * _instance.Products[l.Product].Net))
                lost.Add(new PromiseExpense(ExpenseKind.OrderLine, $"{l.Line.Order} {l.Line.Number}", l.Line.Product, Math.Max(0, units), gain * money));
        }
        foreach (var product in Enumerable.Range(0, _market.Length).GroupBy(m => _instance.Market[m].Product))
        {
            double mass = product.Sum(m => _market[m] - after._market[m]), gain = product.Sum(m => (_market[m] - after._market[m]) * _instance.Market[m].Price);
            double units = mass / _instance.Products[product.Key].Net;
            if (units >= 0.5) lost.Add(new PromiseExpense(ExpenseKind.Market, "", _instance.Products[product.Key].Id, units, gain * money));
        }
        for (int n = 0; n < _seed.Length; n++)
        {
            InstanceSeedNeed need = _instance.SeedNeeds[n];
            double mass = _seed[n] - after._seed[n];
            if (mass > 1e-6 * need.Mass) lost.Add(new PromiseExpense(ExpenseKind.Seed, $"{need.Need.Variety} {need.Class}", null, mass * _instance.MassScale, mass * need.ShortCost * money));
        }
        return [.. lost.OrderByDescending(one => one.Money).ThenBy(one => one.Name, StringComparer.Ordinal)];
    }
}
