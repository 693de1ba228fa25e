using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning.Promises;

/// <summary>
/// One question put to a solved master. Each line becomes a row that wants what is asked, columns that take the product in each week, and one for what
/// is missed, dearer than anything. Solved up to three times: by the day asked, whatever it costs; where not all can be had, with the later weeks open,
/// each a little dearer (from when); and with the price offered and nothing forced (what pays).
/// </summary>
/// <param name="before">The prices where the model stands, made usable.</param>
internal sealed class PromiseProbe(Master master, GenerationLimits limits, PromiseQuestion question, int[] rows, AskedColumns asked, LinearBasis stands, Prices before, Func<bool> stopped)
{
    private const double AboveAll = AskedColumns.AboveAll;

    /// <summary>What the solver's numbers are good to, relative.</summary>
    private const double Fine = 1e-9;

    /// <summary>Of the clock, for a solve from a basis that was found from scratch: near it or not at all.</summary>
    private const double NearSeconds = 1;

    private readonly PlanningInstance _instance = master.Instance;

    /// <summary>[line] index of its product.</summary>
    private readonly int[] _products = [.. question.Lines.Select(line => Array.FindIndex(master.Instance.Products, p => p.Id == line.Product))];
    private readonly List<(int Line, int Week, int Product)> _columns = [];
    private readonly List<int> _at = [];
    private readonly List<int> _missed = [];
    private double[] _had = [];
    private int[] _last = [];
    private double[]? _worth;
    private double _valueWith;
    private OutcomeOfOrders? _with;
    private bool _far;

    private int From => Math.Clamp(_instance.Season.Settings.WeekOf(question.ShipFrom), _instance.AsOf, _instance.Weeks);

    private int Due => Math.Min(_instance.Weeks - 1, _instance.Season.Settings.WeekOf(question.Due));

    internal void Run(int rounds)
    {
        Open();
        // By the day asked, whatever it costs. The row is broken where the model stands, and all else in order: work for the dual simplex.
        SolveFrom(stands);
        for (int round = 0; round < rounds && MorePaths(); round++) SolveOn();
        (_had, _with) = (Had(), new OutcomeOfOrders(master));
        _valueWith = master.Value + AboveAll * Missed();
        _last = [.. _had.Select((mass, k) => All(k, mass) ? Due : -1)];
        double[] dearest = [.. question.Lines.Select((_, k) => -master.Duals[rows[k]])];
        bool all = !_last.Contains(-1);
        if (!all) FromWhen();
        double?[] offered = [.. question.Lines.Select((line, k) => line.Price is { } price ? PerMass(k, (double)price) : (double?)null)];
        if (offered.All(price => price is null)) return;
        _worth = Paying(offered, dearest, all);
    }

    /// <summary>Opens the later weeks, each a little dearer, so that a line is complete as early as it can be.</summary>
    private void FromWhen()
    {
        Set((_, week) => (-0.1 * AboveAll * Math.Max(0, week - Due) / _instance.Weeks, true));
        SolveFrom(stands);
        double[] ever = Had();
        for (int k = 0; k < ever.Length; k++)
            if (_last[k] < 0 && All(k, ever[k])) _last[k] = Math.Max(Due, Latest(k));
    }

    /// <summary>What pays at the prices offered, by line; nothing is forced.</summary>
    /// <param name="dearest">What the last unit of each line costs, where all is had.</param>
    private double[] Paying(double?[] offered, double[] dearest, bool all)
    {
        double[] cheapest = [.. offered.Select((_, k) => Cheapest(k))];
        // Costs only grow with the units. So nothing pays where not even the first unit does, and all does where the last one does.
        if (Enumerable.Range(0, offered.Length).All(k => offered[k] is not { } price || price <= cheapest[k] * (1 - Fine))) return new double[offered.Length];
        if (all && Enumerable.Range(0, offered.Length).All(k => dearest[k] <= offered[k] * (1 + Fine))) return _had;
        for (int k = 0; k < question.Lines.Count; k++) master.Program.SetRowBounds(rows[k], double.NegativeInfinity, Mass(k));
        Set((line, week) => (offered[line] ?? 0, week <= Due && offered[line] is not null));
        double[] none = new double[_missed.Count];
        master.Program.SetColumnBounds(_missed, none, none);
        // From all of it down where most pays, and from where each line takes all of it at the prices that stand where little does: the model has then less far to go.
        if (all && Enumerable.Range(0, offered.Length).All(k => offered[k] > 0.5 * (cheapest[k] + dearest[k]))) SolveOn();
        else SolveFrom(Taking(offered));
        return Had();
    }

    /// <summary>
    /// The standing basis, but that each line that pays takes all that it asks for from its cheapest week. No week pays any more beside that one, so prices are in order and
    /// only supply is not: a start for the dual simplex, which has far fewer steps to take here than the primal has from a line that takes nothing.
    /// </summary>
    private LinearBasis Taking(double?[] offered)
    {
        const int basic = 1, upper = 2;
        int[] columns = [.. stands.Columns, .. new int[master.ColumnCount - stands.Columns.Length]], ofRows = [.. stands.Rows];
        for (int k = 0; k < offered.Length; k++)
        {
            int best = Enumerable.Range(0, _at.Count).Where(c => _columns[c].Line == k && _columns[c].Week <= Due).DefaultIfEmpty(-1).MinBy(c => c < 0 ? 0 : PriceOf(_columns[c]));
            if (best < 0 || offered[k] is not { } price || price <= PriceOf(_columns[best])) continue;
            (columns[_at[best]], ofRows[rows[k]]) = (basic, upper);
        }
        return new LinearBasis(columns, ofRows);
    }

    /// <param name="value">The master's value without the question, over the same paths.</param>
    internal PromiseAnswer Told(double value, OutcomeOfOrders without)
    {
        SeasonSettings s = _instance.Season.Settings;
        double cost = Math.Max(0, value - _valueWith) * _instance.MoneyScale, mass = _had.Sum();
        double[] cheapest = [.. question.Lines.Select((_, k) => Cheapest(k))];
        // What all lines cost together is shared by what each would cost on the margin.
        double marginal = Enumerable.Range(0, _had.Length).Sum(k => _had[k] > 0 ? _had[k] * cheapest[k] : 0);
        LinePromise[] lines = [.. question.Lines.Select((line, k) =>
        {
            InstanceProduct p = Product(k);
            int units = Units(k, _had[k]);
            return new LinePromise(line.Product, line.Units, units, _last[k] < 0 ? null : s.Monday(_last[k]), line.Price is null || _worth is null ? null : Units(k, _worth[k]),
                double.IsInfinity(cheapest[k]) ? null : cheapest[k] * p.Net * _instance.MoneyScale, units == 0 ? null : cost * p.Net * (marginal > 0 ? cheapest[k] / marginal : 1 / mass));
        })];
        double? paid = question.Lines.All(line => line.Price is not null) ? question.Lines.Select((line, k) => (double)line.Price!.Value * lines[k].ByDue).Sum() : null;
        PromiseVerdict verdict = lines.All(line => line.ByDue == line.Asked) ? paid < cost ? PromiseVerdict.AtALoss : PromiseVerdict.Yes
            : lines.All(line => line.AllFrom is not null) ? PromiseVerdict.Later
            : lines.Any(line => line.ByDue > 0) ? PromiseVerdict.Part : PromiseVerdict.No;
        return new PromiseAnswer(verdict, lines, cost, paid, without.LostIn(_with!));
    }

    /// <summary>Takes the question out again; the basis is the caller's to restore.</summary>
    internal void Close()
    {
        double[] free = new double[_at.Count];
        master.Program.SetColumnCosts(_at, free);
        asked.Hold();
        foreach (int row in rows) master.Program.SetRowBounds(row, double.NegativeInfinity, double.PositiveInfinity);
    }

    private double Missed() => _missed.Sum(k => Math.Max(0, master.Values[k]));

    private InstanceProduct Product(int line) => _instance.Products[_products[line]];

    private double Mass(int line) => question.Lines[line].Units * Product(line).Net;

    private double PerMass(int line, double price) => price / Product(line).NetInUnit * _instance.MassScale / _instance.MoneyScale;

    private bool All(int line, double mass) => Units(line, mass) >= question.Lines[line].Units;

    /// <summary>Whole units in a mass; the solver's tolerance is no reason to lose one.</summary>
    private int Units(int line, double mass) => (int)Math.Floor(mass / Product(line).Net + 1e-4);

    private void Open()
    {
        for (int k = 0; k < question.Lines.Count; k++)
        {
            master.Program.SetRowBounds(rows[k], Mass(k), double.PositiveInfinity);
            _missed.Add(asked.Missed(k));
            foreach (int q in OrderBuilding.Alternatives(_instance.Season, _products[k], question.Lines[k].LargerOk))
                for (int t = From; t < _instance.Weeks; t++)
                {
                    _columns.Add((k, t, q));
                    _at.Add(asked.Take(k, q, t));
                }
        }
        Set((_, week) => (0, week <= Due));
        master.Program.SetColumnBounds(_missed, new double[_missed.Count], [.. _missed.Select(_ => double.PositiveInfinity)]);
    }

    /// <summary>Solves from a basis that may be far from what is asked. Once that was too far, the next is begun from scratch at once.</summary>
    private void SolveFrom(LinearBasis basis)
    {
        LookUp();
        if (!_far) master.Program.Restore(basis);
        _far |= StandingPlan.SolveOn(master, _far ? LinearMethod.InteriorPoint : LinearMethod.DualSimplex);
    }

    /// <summary>Solves on from the last solve, to which what is asked is near.</summary>
    private void SolveOn()
    {
        LookUp();
        StandingPlan.SolveOn(master, LinearMethod.WarmSimplex, _far ? NearSeconds : StandingPlan.WarmSeconds);
    }

    private void LookUp()
    {
        if (stopped()) throw new OperationCanceledException();
    }

    private double PriceOf((int Line, int Week, int Product) column) => before.Available[column.Product, column.Week];

    /// <summary>What the first unit of a line costs in its best week, per mass; infinite where there is none.</summary>
    private double Cheapest(int line) => _columns.Where(c => c.Line == line && c.Week <= Due).Select(PriceOf).DefaultIfEmpty(double.PositiveInfinity).Min();

    /// <summary>Sets what a line's columns of a week gain per mass, and whether they are open.</summary>
    private void Set(Func<int, int, (double Gain, bool Open)> of)
    {
        (double Gain, bool Open)[] all = [.. _columns.Select(c => of(c.Line, c.Week))];
        master.Program.SetColumnCosts(_at, [.. all.Select(one => one.Gain)]);
        master.Program.SetColumnBounds(_at, [.. all.Select(_ => 0.0)], [.. all.Select(one => one.Open ? double.PositiveInfinity : 0)]);
    }

    private double[] Had()
    {
        double[] had = new double[question.Lines.Count];
        for (int k = 0; k < _at.Count; k++) had[_columns[k].Line] += Math.Max(0, master.Values[_at[k]]);
        return had;
    }

    private int Latest(int line)
    {
        int latest = -1;
        for (int k = 0; k < _at.Count; k++)
            if (_columns[k].Line == line && master.Values[_at[k]] > 1e-4 * Product(line).Net) latest = Math.Max(latest, _columns[k].Week);
        return latest;
    }

    private bool MorePaths() => master.AddPaths(Pricing.At(master, master.UsablePrices(), limits, 5, deep: false).Paths) > 0;
}
