using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning.Promises;

/// <summary>
/// One question put to a solved master. Each line becomes a row that wants what is asked, columns that take the product in each week, and one for what
/// is missed, dearer than anything. Solved up to three times: by the day asked, whatever it costs; where not all can be had, with the later weeks open,
/// each a little dearer (from when); and with the price offered and nothing forced (what pays).
/// </summary>
internal sealed class PromiseProbe(Master master, GenerationLimits limits, PromiseQuestion question, int[] rows, LinearBasis stands)
{
    /// <summary>Scaled money per scaled mass, far above any price (the median price is 1) and below what a missed pin pays.</summary>
    private const double AboveAll = RunWishes.MissedPin * 0.8;

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

    private int From => Math.Clamp(_instance.Season.Settings.WeekOf(question.ShipFrom), _instance.AsOf, _instance.Weeks);

    private int Due => Math.Min(_instance.Weeks - 1, _instance.Season.Settings.WeekOf(question.Due));

    internal void Run(int rounds)
    {
        // By the day asked, whatever it costs. The row is broken where the model stands, and all else in order: work for the dual simplex.
        for (int k = 0; k < question.Lines.Count; k++) master.Program.SetRowBounds(rows[k], Mass(k), double.PositiveInfinity);
        Open();
        StandingPlan.SolveOn(master, LinearMethod.DualSimplex);
        for (int round = 0; round < rounds && MorePaths(); round++) StandingPlan.SolveOn(master, LinearMethod.WarmSimplex);
        (_had, _with) = (Had(), new OutcomeOfOrders(master));
        _valueWith = master.Value + AboveAll * Missed();
        _last = [.. _had.Select((mass, k) => All(k, mass) ? Due : -1)];
        double[] dearest = [.. question.Lines.Select((_, k) => -master.Duals[rows[k]])];
        if (_last.Contains(-1))
        {
            // Each week later costs a little more, so that a line is complete as early as it can be.
            Set((_, week) => (-0.1 * AboveAll * Math.Max(0, week - Due) / _instance.Weeks, true));
            master.Program.Restore(stands);
            StandingPlan.SolveOn(master, LinearMethod.DualSimplex);
            double[] ever = Had();
            for (int k = 0; k < ever.Length; k++)
                if (_last[k] < 0 && All(k, ever[k])) _last[k] = Math.Max(Due, Latest(k));
        }
        double?[] offered = [.. question.Lines.Select((line, k) => line.Price is { } price ? PerMass(k, (double)price) : (double?)null)];
        if (offered.All(price => price is null)) return;
        // Where even the last unit costs no more than is offered, all of it pays.
        if (Enumerable.Range(0, offered.Length).All(k => All(k, _had[k]) && dearest[k] <= offered[k] * (1 + 1e-9)))
        {
            _worth = _had;
            return;
        }
        for (int k = 0; k < question.Lines.Count; k++) master.Program.SetRowBounds(rows[k], double.NegativeInfinity, Mass(k));
        Set((line, week) => (offered[line] ?? 0, week <= Due && offered[line] is not null));
        master.Program.SetColumnBounds(_missed, [.. _missed.Select(_ => 0.0)], [.. _missed.Select(_ => 0.0)]);
        master.Program.Restore(stands);
        StandingPlan.SolveOn(master, LinearMethod.WarmSimplex);
        _worth = Had();
    }

    /// <param name="value">The master's value without the question, over the same paths.</param>
    internal PromiseAnswer Told(Prices before, double value, OutcomeOfOrders without)
    {
        SeasonSettings s = _instance.Season.Settings;
        double cost = Math.Max(0, value - _valueWith) * _instance.MoneyScale, mass = _had.Sum();
        double[] cheapest = [.. question.Lines.Select((_, k) => _columns.Where(c => c.Line == k && c.Week <= Due).Select(c => before.Available[c.Product, c.Week]).DefaultIfEmpty(double.PositiveInfinity).Min())];
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
        master.Remove([.. _at, .. _missed]);
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
            _missed.Add(master.AddChoice(-AboveAll, double.PositiveInfinity, [(rows[k], 1)]));
            foreach (int q in OrderBuilding.Alternatives(_instance.Season, _products[k], question.Lines[k].LargerOk))
                for (int t = From; t < _instance.Weeks; t++)
                {
                    _columns.Add((k, t, q));
                    _at.Add(master.AddChoice(0, t <= Due ? double.PositiveInfinity : 0, [(rows[k], 1), (master.Rows.Available[q, t], 1)]));
                }
        }
    }

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

    private bool MorePaths()
    {
        Prices now = master.ReadPrices();
        UpperBound.Repair(_instance, now);
        return master.AddPaths(Pricing.At(master, now, limits, 5, deep: false).Paths) > 0;
    }
}
