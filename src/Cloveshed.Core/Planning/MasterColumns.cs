namespace Cloveshed.Core.Planning;

/// <summary>What a column of the master decides.</summary>
internal enum ColumnKind
{
    Path, Pack, Carry, FromStock, Fill, Whole, Market, Hours, Overtime, Standing, Opening, Outflow, PinMissed, SeedOver, Choice, Empty, Dear,
}

/// <summary>
/// What a master column stands for. Meaning of A to D by kind: Pack product, supply kind, week made, week shipped; Carry product,
/// -, week; FromStock stock, -, -, week; Fill order line, product, -, week; Whole order, -, -, week; Market index;
/// Hours/Overtime line, -, week; Standing spot, -, week; Opening spot, -, week; Outflow spot, -, opening week, week out;
/// Dear sort, supply kind, week and Empty spot, -, -, week: what keeps prices within limits, and pays nowhere;
/// PinMissed pin: mass of a pinned run that is not made; SeedOver need: cloves beyond it, which only a pin or a least run asks for; Choice: a yes or no, or a number of units, of the polish.
/// </summary>
internal readonly record struct MasterColumn(ColumnKind Kind, int A, int B, int C, int D, PathColumn? Path, int[]? Products)
{
    /// <summary>Whether it is a path that stands there once before.</summary>
    internal bool Again { get; init; }
}

/// <summary>Writes the master's columns: the one place where each coefficient of the linear model stands.</summary>
internal sealed class MasterColumnWriter(PlanningInstance instance, Spot[] spots, MasterRows rows, RunCharges charges)
{
    private const double Infinite = double.PositiveInfinity;

    /// <summary>Columns that every master has from the start.</summary>
    internal void Static(ColumnBatch batch, List<MasterColumn> columns)
    {
        int weeks = instance.Weeks, asOf = instance.AsOf;
        for (int q = 0; q < instance.Products.Length; q++) Carrying(batch, columns, q);
        for (int s = 0; s < instance.Stock.Length; s++)
        {
            InstanceStock stock = instance.Stock[s];
            for (int t = stock.First; t <= stock.Last; t++)
            {
                Open(batch, columns, 0, Infinite, new MasterColumn(ColumnKind.FromStock, s, stock.Product, stock.Made, t, null, null));
                batch.Entry(rows.Stock[s], 1);
                batch.Entry(rows.Available[stock.Product, t], -1);
            }
        }
        for (int m = 0; m < instance.Market.Length; m++)
        {
            InstanceMarket market = instance.Market[m];
            Open(batch, columns, market.Price, market.Mass, new MasterColumn(ColumnKind.Market, m, market.Product, -1, market.Week, null, null));
            batch.Entry(rows.Available[market.Product, market.Week], 1);
        }
        for (int i = 0; i < instance.Lines.Length; i++)
            for (int t = asOf; t < weeks; t++)
            {
                if (rows.Hour[i, t] < 0) continue;
                InstanceLine line = instance.Lines[i];
                Time(batch, columns, ColumnKind.Hours, i, t, line.Cost, line.Hours[t]);
                if (line.Overtime[t] > 0) Time(batch, columns, ColumnKind.Overtime, i, t, line.OvertimeCost, line.Overtime[t]);
            }
        for (int s = 0; s < spots.Length; s++) Standing(batch, columns, s);
        for (int p = 0; p < instance.Pins.Count; p++)
        {
            Open(batch, columns, -RunWishes.MissedPin, instance.Pins[p].Mass, new MasterColumn(ColumnKind.PinMissed, p, -1, -1, instance.Pins[p].Week, null, null));
            batch.Entry(rows.Pin[p], -1);
        }
        for (int n = 0; instance.Pins.Count + rows.LeastRun.Count > 0 && n < instance.SeedNeeds.Length; n++)
        {
            Open(batch, columns, -instance.SeedNeeds[n].ShortCost, Infinite, new MasterColumn(ColumnKind.SeedOver, n, -1, -1, instance.SeedNeeds[n].ByWeek, null, null));
            batch.Entry(rows.Seed[n], -1);
        }
    }

    /// <summary>Columns that pay nowhere and keep every price within limits.</summary>
    internal void Loose(ColumnBatch batch, List<MasterColumn> columns)
    {
        var given = new MostGiven(instance, _ => 1);
        double all = instance.Lots.Sum(lot => lot.Mass);
        for (int k = 0; k < instance.Sorts.Length; k++)
            for (int o = 0; o < instance.SupplyKinds; o++)
                for (int t = instance.AsOf; t < instance.Weeks; t++)
                {
                    if (rows.Supply[k, o, t] < 0 || (o > 0 && rows.Supply[k, o, t] == rows.Supply[k, 0, t])) continue;
                    Open(batch, columns, -given.ForSort(k, instance.SupplyKinds - 1, t) * 1.001, all, new MasterColumn(ColumnKind.Dear, k, o, -1, t, null, null));
                    batch.Entry(rows.Supply[k, o, t], -1);
                }
        for (int s = 0; s < spots.Length; s++)
            for (int t = instance.AsOf; t < instance.Weeks; t++)
            {
                Open(batch, columns, 0, instance.Places[spots[s].Place].Capacity, new MasterColumn(ColumnKind.Empty, s, -1, -1, t, null, null));
                batch.Entry(rows.Stand[s, t], -1);
                if (t + 1 < instance.Weeks) batch.Entry(rows.Stand[s, t + 1], 1);
            }
    }

    internal void Pack(ColumnBatch batch, List<MasterColumn> columns, PackArc arc)
    {
        InstanceProduct p = instance.Products[arc.Product];
        Open(batch, columns, -p.UnitCost, Infinite, new MasterColumn(ColumnKind.Pack, arc.Product, arc.Supply, arc.Made, arc.Week, null, null));
        batch.Entry(rows.Supply[p.Sort, arc.Supply, arc.Made], 1);
        batch.Entry(rows.Available[arc.Product, arc.Week], -1);
    }

    private void Carrying(ColumnBatch batch, List<MasterColumn> columns, int product)
    {
        for (int t = instance.AsOf; instance.KeepsOn(product) && t + 1 < instance.Weeks; t++)
        {
            Open(batch, columns, 0, Infinite, new MasterColumn(ColumnKind.Carry, product, -1, -1, t, null, null));
            batch.Entry(rows.Available[product, t], 1);
            batch.Entry(rows.Available[product, t + 1], -1);
        }
    }

    private void Time(ColumnBatch batch, List<MasterColumn> columns, ColumnKind kind, int line, int week, double cost, double most)
    {
        Open(batch, columns, -cost, most, new MasterColumn(kind, line, -1, -1, week, null, null));
        batch.Entry(rows.Hour[line, week], -1);
        if (rows.People[week] >= 0) batch.Entry(rows.People[week], instance.Lines[line].Heads);
    }

    private void Standing(ColumnBatch batch, List<MasterColumn> columns, int s)
    {
        InstancePlace place = instance.Places[spots[s].Place];
        int weeks = instance.Weeks;
        int cold = spots[s].Kind == SpotKind.FreeSealed ? Array.FindIndex(spots, x => x.Kind == SpotKind.FreeCold && x.Place == spots[s].Place) : s;
        for (int t = instance.AsOf; t < weeks; t++)
        {
            Open(batch, columns, -place.StandCost, place.Capacity, new MasterColumn(ColumnKind.Standing, s, -1, -1, t, null, null));
            batch.Entry(rows.Stand[s, t], 1);
            if (t + 1 < weeks) batch.Entry(rows.Stand[s, t + 1], -1);
            if (cold >= 0 && rows.Shared[cold, t] >= 0) batch.Entry(rows.Shared[cold, t], 1);
            if (spots[s].Kind == SpotKind.FreeCold) batch.Entry(rows.Blocked[s, t], 1);
        }
        if (spots[s].Kind != SpotKind.FreeSealed) return;
        for (int o = instance.AsOf; o <= weeks; o++)
        {
            if (rows.Opening[s, o] < 0) continue;
            Open(batch, columns, 0, 1, new MasterColumn(ColumnKind.Opening, s, -1, -1, o, null, null));
            batch.Entry(rows.Opening[s, o], -place.Capacity);
            batch.Entry(rows.OneSchedule[s], 1);
            for (int t = o; cold >= 0 && t < weeks; t++) batch.Entry(rows.Blocked[cold, t], place.Capacity);
            int last = o == weeks ? weeks : Spots.LastWeekOut(instance, spots[s].Place, o);
            for (int t = o; t <= last; t++)
            {
                Open(batch, columns, 0, Infinite, new MasterColumn(ColumnKind.Outflow, s, -1, o, t, null, null));
                batch.Entry(rows.Opening[s, o], 1);
                batch.Entry(rows.Out[s, t], -1);
            }
        }
    }

    internal void Fill(ColumnBatch batch, List<MasterColumn> columns, int orderLine, int product, int week)
    {
        InstanceOrderLine l = instance.OrderLines[orderLine];
        Open(batch, columns, l.GainIn(week), Infinite,
            new MasterColumn(ColumnKind.Fill, orderLine, product, -1, week, null, null));
        batch.Entry(rows.OrderLine[orderLine], 1);
        batch.Entry(rows.Available[product, week], 1);
    }

    internal void Whole(ColumnBatch batch, List<MasterColumn> columns, int order, int[] products, int week)
    {
        InstanceWholeOrder whole = instance.WholeOrders[order];
        double gain = 0;
        foreach (int i in whole.Lines)
        {
            InstanceOrderLine l = instance.OrderLines[i];
            gain += l.Mass * l.GainIn(week);
        }
        Open(batch, columns, gain, 1, new MasterColumn(ColumnKind.Whole, order, -1, -1, week, null, products));
        batch.Entry(rows.WholeOrder[order], 1);
        foreach (var g in whole.Lines.Select((line, k) => (products[k], instance.OrderLines[line].Mass)).GroupBy(x => x.Item1))
            batch.Entry(rows.Available[g.Key, week], g.Sum(x => x.Mass));
    }

    internal void Path(ColumnBatch batch, List<MasterColumn> columns, PathColumn path)
    {
        var entries = new SortedDictionary<int, double>();
        void Add(int row, double value)
        {
            if (row < 0) throw new InvalidOperationException("A path uses a row that the master left out.");
            entries[row] = entries.GetValueOrDefault(row) + value;
        }
        InstanceRow r = instance.Rows[path.Row];
        InstanceLot lot = instance.Lots[r.Lot];
        double cost = 0, w = path.MassRatio;
        Add(rows.Row[path.Row], 1);
        for (int k = 0; k < path.Stays.Length; k++)
        {
            Stay stay = path.Stays[k];
            int until = k + 1 < path.Stays.Length ? path.Stays[k + 1].Enter : path.Exit.Week;
            if (k > 0) cost += r.BinsPerMass * instance.Places[spots[stay.Spot].Place].MoveInCost;
            if (until > stay.Enter)
            {
                Add(rows.Stand[stay.Spot, stay.Enter], -r.BinsPerMass);
                if (until < instance.Weeks) Add(rows.Stand[stay.Spot, until], r.BinsPerMass);
            }
            if (spots[stay.Spot].Kind == SpotKind.FreeSealed) Add(rows.Out[stay.Spot, until], r.BinsPerMass);
        }
        double gain = -cost;
        if (path.Exit.Line >= 0 && instance.PinOf(r.Lot, path.Exit.Line, path.Exit.Week) is var pin and >= 0) Add(rows.Pin[pin], -w);
        if (path.Exit.Line >= 0 && rows.LeastRun.TryGetValue((r.Lot, path.Exit.Line, path.Exit.Week), out int least)) Add(least, -w);
        if (path.Exit.Line >= 0 && rows.OpenRun.TryGetValue((r.Lot, path.Exit.Line, path.Exit.Week), out int open)) Add(open, w);
        if (path.Exit.SortedLine >= 0 && rows.OpenRun.TryGetValue((-1, path.Exit.SortedLine, path.Exit.SortedWeek), out int openSorted))
            Add(openSorted, FreshRuns.SortedOut(instance, path));
        foreach ((int week, int finished) in rows.FinishedOf[path.Row])
            if (path.Exit.Week > week) Add(finished, 1);
        Exit exit = path.Exit;
        int supply = instance.SupplyOf(r.Lot), t = exit.Week;
        switch (exit.Kind)
        {
            case ExitKind.Fresh:
                Add(rows.Hour[exit.Line, t], w * charges[r.Lot, exit.Line, t]);
                double fit = w * path.Fresh * instance.KeptFresh;
                for (int k = 0; k < instance.Sorts.Length && !instance.Sorts[k].Clove; k++)
                    if ((exit.Packed >> k & 1) != 0 && fit * lot.SortShares[k] > 0) Add(rows.Supply[k, supply, t], -fit * lot.SortShares[k]);
                if (exit.SortedLine >= 0)
                {
                    double sorted = FreshRuns.SortedOut(instance, path);
                    Add(rows.Hour[exit.SortedLine, exit.SortedWeek], sorted * charges.OfSorted(exit.SortedLine, exit.SortedWeek));
                    Cloves(Add, lot, supply, exit.SortedWeek, sorted * instance.KeptCrack);
                }
                break;
            case ExitKind.Unsplit:
                Add(rows.Hour[exit.Line, t], w * charges[r.Lot, exit.Line, t]);
                int[] gives = rows.Unsplit[(r.Lot, t)];
                for (int k = 0; k < instance.Sorts.Length; k++)
                    if (gives[k] >= 0) Add(gives[k], -w * path.Fresh * instance.KeptFresh * lot.SortShares[k]);
                Add(gives[^1], -FreshRuns.SortedOut(instance, path with { Exit = exit with { Packed = UnsplitRuns.Packable(gives) } }));
                break;
            case ExitKind.Crack:
                Add(rows.Hour[exit.Line, t], w * charges[r.Lot, exit.Line, t]);
                Cloves(Add, lot, supply, t, w * (path.Fresh + path.Crack) * instance.KeptCrack);
                break;
            case ExitKind.Seed:
                Add(rows.Hour[exit.Line, t], w * charges[r.Lot, exit.Line, t]);
                double cloves = w * path.Fresh * instance.KeptSeed;
                Add(rows.Seed[exit.Need], cloves);
                gain += cloves * instance.SeedNeeds[exit.Need].ShortCost;
                break;
            case ExitKind.SoldAsIs:
                gain += w * instance.AsIs[exit.Need].Price;
                if (rows.AsIs[exit.Need, t] >= 0) Add(rows.AsIs[exit.Need, t], w);
                break;
            case ExitKind.Stand:
                gain += w * (path.Fresh + path.Crack) * instance.EndPrice;
                break;
            case ExitKind.Discard:
                break;
            default:
                throw new InvalidOperationException($"No coefficients are written for an exit by {exit.Kind}.");
        }
        Open(batch, columns, gain, Infinite, new MasterColumn(ColumnKind.Path, path.Row, -1, -1, t, path, null));
        foreach ((int row, double value) in entries)
            if (value != 0) batch.Entry(row, value);
    }

    private void Cloves(Action<int, double> add, InstanceLot lot, int supply, int week, double cloves) => Cloves(instance, rows, add, lot, supply, week, cloves);

    /// <summary>Cloves of a lot in a week, into the supply of every grade that is packed.</summary>
    internal static void Cloves(PlanningInstance instance, MasterRows rows, Action<int, double> add, InstanceLot lot, int supply, int week, double cloves)
    {
        for (int k = instance.Sorts.Length - 1; k >= 0 && instance.Sorts[k].Clove; k--)
            if (instance.Sorts[k].Packed && lot.SortShares[k] * cloves > 0) add(rows.Supply[k, supply, week], -lot.SortShares[k] * cloves);
    }

    private static void Open(ColumnBatch batch, List<MasterColumn> columns, double gain, double most, MasterColumn column)
    {
        batch.Open(gain, 0, most);
        columns.Add(column);
    }
}
