namespace Cloveshed.Core.Planning;

/// <summary>
/// The master program: a linear model of the whole season under a room choice and run charges, over the paths, fills and whole
/// orders generated so far. Value is what it returns in scaled money, short orders and seed deducted.
/// </summary>
internal sealed class Master : IDisposable
{
    private readonly ILinearSolver _solver;
    private readonly ILinearProgram _program;
    private readonly int _static;
    private readonly MasterColumnWriter _writer;
    private readonly ColumnBatch _batch = new();
    private readonly HashSet<PathColumn> _paths = new(new SamePath());
    private readonly HashSet<(int, int, int)> _fills = [];
    private readonly HashSet<PackArc> _packs = [];
    private readonly HashSet<string> _wholes = [];
    private readonly List<double> _loose = [];
    private List<MasterColumn> _columns = [];
    private List<double> _gains = [];

    internal Master(PlanningInstance instance, RoomChoice choice, RunCharges charges, ILinearSolver solver, DecidedRuns? decided = null, bool grows = false)
        : this(instance, choice, charges, solver, decided) => AddPacks(grows ? PackArcs.First(instance) : PackArcs.All(instance));

    private Master(PlanningInstance instance, RoomChoice choice, RunCharges charges, ILinearSolver solver, DecidedRuns? decided)
    {
        _solver = solver;
        Instance = instance;
        Choice = choice;
        Charges = charges;
        SpotsHere = Spots.Of(instance, choice);
        Rows = new MasterRows(instance, SpotsHere, decided);
        Search = new PathSearch(instance, SpotsHere);
        OneMove = new OneMoveSearch(instance, SpotsHere);
        Table = new PathTable(instance, SpotsHere);
        _writer = new MasterColumnWriter(instance, SpotsHere, Rows, charges);
        _program = solver.NewProgram();
        _program.AddRows(Rows.Lower, Rows.Upper);
        _writer.Static(_batch, _columns);
        Flush();
        _static = _columns.Count;
    }

    /// <summary>The same columns under other run charges, begun from where this one stands.</summary>
    internal Master Under(RunCharges charges)
    {
        var master = new Master(Instance, Choice, charges, _solver, null);
        int[] kept = [.. Enumerable.Range(0, _columns.Count).Where(k => k < _static || _columns[k].Kind is ColumnKind.Path or ColumnKind.Fill or ColumnKind.Whole or ColumnKind.Pack)];
        foreach (int k in kept.Where(k => k >= _static)) master.Take(_columns[k]);
        master.Flush();
        if (_program.Basis() is { } basis) master._program.Restore(basis with { Columns = [.. kept.Select(k => basis.Columns[k])] });
        return master;
    }

    private void Take(MasterColumn column)
    {
        switch (column.Kind)
        {
            case ColumnKind.Path when _paths.Add(column.Path!): _writer.Path(_batch, _columns, column.Path!); break;
            case ColumnKind.Pack when _packs.Add(new PackArc(column.A, column.B, column.C, column.D)): _writer.Pack(_batch, _columns, new PackArc(column.A, column.B, column.C, column.D)); break;
            case ColumnKind.Fill when _fills.Add((column.A, column.B, column.D)): _writer.Fill(_batch, _columns, column.A, column.B, column.D); break;
            case ColumnKind.Whole when _wholes.Add(KeyOf(column.A, column.Products!, column.D)): _writer.Whole(_batch, _columns, column.A, column.Products!, column.D); break;
            default: throw new InvalidOperationException($"A second column like {column}, or one that can't be taken over.");
        }
    }

    private static string KeyOf(int order, int[] products, int week) => $"{order}/{week}/{string.Join(',', products)}";

    internal PlanningInstance Instance { get; }
    internal RoomChoice Choice { get; }
    internal RunCharges Charges { get; }
    internal Spot[] SpotsHere { get; }
    internal MasterRows Rows { get; }
    internal PathSearch Search { get; }
    internal OneMoveSearch OneMove { get; }
    internal PathTable Table { get; }
    internal IReadOnlyList<MasterColumn> Columns => _columns;
    /// <summary>By column, as of the last solve; columns added since are at 0.</summary>
    internal double[] Values { get; private set; } = [];

    /// <summary>By column, as of the last solve; columns added since are at 0.</summary>
    internal double[] ReducedCosts { get; private set; } = [];
    internal double[] Duals { get; private set; } = [];
    internal double Value { get; private set; } = double.NegativeInfinity;
    internal ILinearProgram Program => _program;
    internal IEnumerable<PathColumn> Paths => _paths;

    internal int RowCount => _program.RowCount;

    /// <summary>Whether solving it is what takes the time: then simplex from nothing is slow, and a trial is dear.</summary>
    internal bool IsLarge => IsLargeWithout(0);

    internal bool IsLargeWithout(int rows) => RowCount - rows > 1500;

    /// <summary>A path that falls short of paying by no more than this, scaled money per scaled mass, nearly pays: 2% of what a mass is worth on average.</summary>
    internal double Nearly => 0.02 * Math.Abs(Value) / Math.Max(1, Instance.Rows.Sum(r => r.Mass));
    internal int ColumnCount => _columns.Count;

    /// <summary>What a column gains as it was written, scaled money.</summary>
    internal double GainOf(int column) => _gains[column];

    internal int AddPaths(IEnumerable<PathColumn> paths)
    {
        int before = _columns.Count;
        foreach (PathColumn path in paths)
            if (_paths.Add(path)) _writer.Path(_batch, _columns, path);
        Flush();
        return _columns.Count - before;
    }

    /// <summary>Paths that are there already, once more each, as choices: for what goes beyond a mass that the first one is held to.</summary>
    internal void AddAgain(IEnumerable<PathColumn> paths)
    {
        int first = _columns.Count;
        foreach (PathColumn path in paths) _writer.Path(_batch, _columns, path);
        for (int k = first; k < _columns.Count; k++) _columns[k] = _columns[k] with { Again = true };
        Flush();
    }

    internal int AddPacks(IEnumerable<PackArc> arcs)
    {
        int before = _columns.Count;
        foreach (PackArc arc in arcs)
            if (_packs.Add(arc)) _writer.Pack(_batch, _columns, arc);
        Flush();
        return _columns.Count - before;
    }

    internal int AddFills(IEnumerable<(int Line, int Product, int Week)> fills)
    {
        int before = _columns.Count;
        foreach ((int line, int product, int week) in fills)
            if (Rows.OrderLine[line] >= 0 && _fills.Add((line, product, week))) _writer.Fill(_batch, _columns, line, product, week);
        Flush();
        return _columns.Count - before;
    }

    internal int AddWholes(IEnumerable<(int Order, int[] Products, int Week)> wholes)
    {
        int before = _columns.Count;
        foreach ((int order, int[] products, int week) in wholes)
            if (_wholes.Add(KeyOf(order, products, week))) _writer.Whole(_batch, _columns, order, products, week);
        Flush();
        return _columns.Count - before;
    }

    internal LinearStatus Solve(LinearMethod method, double seconds, double tolerance = 1e-2)
    {
        LinearStatus status = _program.Solve(method, seconds, tolerance);
        // A solve that was cut off leaves numbers that are no solution: the last whole one is kept.
        if (status is not (LinearStatus.Optimal or LinearStatus.Near)) return status;
        Values = _program.ColumnValues;
        ReducedCosts = _program.ReducedCosts;
        Duals = _program.RowDuals;
        Value = _program.Objective + Instance.ValueOfNothing;
        return status;
    }

    /// <summary>Adds a column that is no path and no order. Entries are (row, value).</summary>
    internal int AddChoice(double gain, double most, IEnumerable<(int Row, double Value)> entries) => AddChoices([(gain, most, entries)]);

    /// <summary>The same for many, all at once; returns where the first stands.</summary>
    internal int AddChoices(IEnumerable<(double Gain, double Most, IEnumerable<(int Row, double Value)> Entries)> choices)
    {
        int first = _columns.Count;
        foreach ((double gain, double most, IEnumerable<(int Row, double Value)> entries) in choices)
        {
            _batch.Open(gain, 0, most);
            foreach ((int row, double value) in entries) _batch.Entry(row, value);
            _columns.Add(new MasterColumn(ColumnKind.Choice, -1, -1, -1, -1, null, null));
        }
        Flush();
        return first;
    }

    /// <summary>Adds rows over columns that are there; returns where they stand.</summary>
    internal int[] AddRows(IReadOnlyList<LinearRow> rows)
    {
        int first = _program.RowCount;
        _program.AddRows(rows);
        return [.. Enumerable.Range(first, rows.Count)];
    }

    /// <summary>Takes out columns that are no paths and no orders.</summary>
    internal void Remove(IReadOnlyCollection<int> choices)
    {
        if (choices.FirstOrDefault(k => _columns[k].Kind != ColumnKind.Choice, -1) is var other and >= 0) throw new InvalidOperationException($"Column {other} is a {_columns[other].Kind}.");
        TakeOut(choices);
    }

    private void TakeOut(IReadOnlyCollection<int> columns)
    {
        if (columns.Count == 0) return;
        _program.DeleteColumns([.. columns]);
        HashSet<int> gone = [.. columns];
        _columns = [.. _columns.Where((_, k) => !gone.Contains(k))];
        _gains = [.. _gains.Where((_, k) => !gone.Contains(k))];
        Values = [.. Values.Where((_, k) => !gone.Contains(k))];
        ReducedCosts = [.. ReducedCosts.Where((_, k) => !gone.Contains(k))];
    }

    /// <summary>How the last solve left it, to come back to.</summary>
    internal MasterStand Stand() => new(_columns.Count, Values, ReducedCosts, Duals, Value);

    /// <summary>Comes back to how an earlier solve left it, at its basis; what came in since is taken out. Limits and gains that were changed are the caller's to put back.</summary>
    /// <param name="columns">So many columns stay, those that came in last at 0; null: as many as there were.</param>
    internal void BackTo(MasterStand stand, LinearBasis basis, int? columns = null)
    {
        int stay = columns ?? stand.Columns;
        _program.Restore(basis);
        int[] since = [.. Enumerable.Range(stay, _columns.Count - stay)];
        foreach (int k in since) Forget(_columns[k]);
        TakeOut(since);
        double[] more = new double[stay - stand.Columns];
        (Values, ReducedCosts, Duals, Value) = ([.. stand.Values, .. more], [.. stand.ReducedCosts, .. more], stand.Duals, stand.Value);
    }

    private void Forget(MasterColumn column)
    {
        bool known = column.Kind switch
        {
            ColumnKind.Path => column.Again || _paths.Remove(column.Path!),
            ColumnKind.Fill => _fills.Remove((column.A, column.B, column.D)),
            ColumnKind.Pack => _packs.Remove(new PackArc(column.A, column.B, column.C, column.D)),
            ColumnKind.Whole => _wholes.Remove(KeyOf(column.A, column.Products!, column.D)),
            _ => column.Kind == ColumnKind.Choice,
        };
        if (!known) throw new InvalidOperationException($"{column} came in where none like it could.");
    }

    /// <summary>
    /// Gives every price a limit, or takes the limits away again: supply may be bought for more than any order gains by it, and places may
    /// be let stand emptier than they are at no gain. Neither can pay, so no value changes; without them some prices have no end.
    /// </summary>
    internal void Loosen(bool loose)
    {
        if (loose && _loose.Count == 0)
        {
            _writer.Loose(_batch, _columns);
            _loose.AddRange(_batch.Upper);
            Flush();
            return;
        }
        int[] columns = [.. Enumerable.Range(0, _columns.Count).Where(k => _columns[k].Kind is ColumnKind.Dear or ColumnKind.Empty)];
        double[] none = new double[columns.Length];
        _program.SetColumnBounds(columns, none, loose ? _loose : none);
    }

    /// <summary>Takes over the values of a mixed-integer solve.</summary>
    internal void Take(double[] values, double objective) => (Values, Value) = (values, objective + Instance.ValueOfNothing);

    /// <summary>Goes back to the values of an earlier solve of the same columns.</summary>
    internal void Restore(double[] values) => Values = [.. values, .. new double[_columns.Count - values.Length]];

    /// <summary>Takes out path columns that the last solve left out of the basis and further out of the money than nearly: they are priced in again if they ever pay.</summary>
    internal void Drop()
    {
        bool[]? basic = _program.BasicColumns();
        double[] reduced = ReducedCosts;
        double nearly = Nearly;
        var gone = new List<int>();
        for (int k = 0; k < _columns.Count; k++)
            if (_columns[k].Kind == ColumnKind.Path && (basic is null || !basic[k]) && _columns[k].Path!.Exit.Kind != ExitKind.Discard && reduced[k] < -nearly) gone.Add(k);
        foreach (int k in gone) _paths.Remove(_columns[k].Path!);
        TakeOut(gone);
    }

    /// <summary>The duals as prices that bound and price.</summary>
    internal Prices UsablePrices()
    {
        Prices prices = ReadPrices();
        UpperBound.Repair(Instance, prices);
        return prices;
    }

    /// <summary>The duals as prices, not yet repaired.</summary>
    internal Prices ReadPrices()
    {
        var prices = new Prices(Instance, SpotsHere);
        double[] dual = Duals;
        double At(int row) => row < 0 ? 0 : dual[row];
        for (int k = 0; k < Instance.Sorts.Length; k++)
            for (int o = 0; o < Instance.SupplyKinds; o++)
                for (int t = 0; t < Instance.Weeks; t++) prices.Supply[k, o, t] = At(Rows.Supply[k, o, t]);
        for (int q = 0; q < Instance.Products.Length; q++)
            for (int t = 0; t < Instance.Weeks; t++) prices.Available[q, t] = At(Rows.Available[q, t]);
        for (int i = 0; i < Instance.Lines.Length; i++)
            for (int t = 0; t < Instance.Weeks; t++) prices.Hour[i, t] = At(Rows.Hour[i, t]);
        for (int t = 0; t < Instance.Weeks; t++) prices.People[t] = At(Rows.People[t]);
        for (int n = 0; n < Instance.SeedNeeds.Length; n++) prices.Seed[n] = At(Rows.Seed[n]);
        for (int a = 0; a < Instance.AsIs.Length; a++)
            for (int t = 0; t < Instance.Weeks; t++) prices.AsIs[a, t] = At(Rows.AsIs[a, t]);
        for (int p = 0; p < Instance.Pins.Count; p++) prices.Pin[p] = dual[Rows.Pin[p]];
        for (int s = 0; s < SpotsHere.Length; s++)
        {
            for (int t = Instance.AsOf; t < Instance.Weeks; t++)
            {
                prices.Stand[s, t] = (t + 1 < Instance.Weeks ? dual[Rows.Stand[s, t + 1]] : 0) - dual[Rows.Stand[s, t]];
                prices.Shared[s, t] = At(Rows.Shared[s, t]);
                prices.Blocked[s, t] = At(Rows.Blocked[s, t]);
            }
            for (int t = 0; t <= Instance.Weeks; t++) prices.Out[s, t] = At(Rows.Out[s, t]);
        }
        return prices;
    }

    /// <summary>What a mass of the row is worth by the last solve; nothing before the first.</summary>
    internal double DualOfRow(int row) => Duals.Length == 0 ? 0 : Duals[Rows.Row[row]];

    private void Flush()
    {
        _program.AddColumns(_batch);
        _gains.AddRange(_batch.Cost);
        _batch.Clear();
        Values = [.. Values, .. new double[_columns.Count - Values.Length]];
        ReducedCosts = [.. ReducedCosts, .. new double[_columns.Count - ReducedCosts.Length]];
    }

    public void Dispose() => _program.Dispose();

    internal sealed class SamePath : IEqualityComparer<PathColumn>
    {
        public bool Equals(PathColumn? x, PathColumn? y) => x is null ? y is null : y is not null && x.SameAs(y);
        public int GetHashCode(PathColumn path) => path.Key();
    }
}
