using Cloveshed.Core.Planning;
using static Cloveshed.Solver.Highs.HighsLibrary;

namespace Cloveshed.Solver.Highs;

/// <summary>One HiGHS object kept alive between solves, so that bases and added columns are reused.</summary>
internal sealed unsafe class HighsProgram : ILinearProgram
{
    private const int StatusOk = 0, StatusWarning = 1;
    private const int BasisBasic = 1;

    private nint _highs;
    private int _integral;

    public HighsProgram(int threads)
    {
        _highs = Highs_create();
        Must(Highs_setBoolOptionValue(_highs, "output_flag", 0), "output_flag");
        Must(Highs_setIntOptionValue(_highs, "threads", threads), "threads");
        Must(Highs_setStringOptionValue(_highs, "parallel", threads > 1 ? "on" : "off"), "parallel");
        Must(Highs_changeObjectiveSense(_highs, -1), "sense");
    }

    public int RowCount { get; private set; }
    public int ColumnCount { get; private set; }
    public double Objective { get; private set; }
    public double[] ColumnValues { get; private set; } = [];
    public double[] RowDuals { get; private set; } = [];
    public double[] ReducedCosts { get; private set; } = [];

    public void AddRows(IReadOnlyList<double> lower, IReadOnlyList<double> upper)
    {
        if (lower.Count == 0) return;
        double[] lo = [.. lower], up = [.. upper];
        int[] starts = new int[lo.Length];
        fixed (double* l = lo, u = up)
        fixed (int* s = starts)
            Must(Highs_addRows(_highs, lo.Length, l, u, 0, s, null, null), "addRows");
        RowCount += lo.Length;
    }

    public void AddRows(IReadOnlyList<LinearRow> rows)
    {
        if (rows.Count == 0) return;
        double[] lo = [.. rows.Select(r => r.Lower)], up = [.. rows.Select(r => r.Upper)], value = [.. rows.SelectMany(r => r.Entries.Select(e => e.Value))];
        int[] index = [.. rows.SelectMany(r => r.Entries.Select(e => e.Column))], starts = new int[rows.Count];
        for (int r = 1; r < starts.Length; r++) starts[r] = starts[r - 1] + rows[r - 1].Entries.Count;
        fixed (double* l = lo, u = up, v = value)
        fixed (int* s = starts, i = index)
            Must(Highs_addRows(_highs, lo.Length, l, u, index.Length, s, i, v), "addRows");
        RowCount += lo.Length;
    }

    public void AddColumns(ColumnBatch batch)
    {
        if (batch.Count == 0) return;
        double[] c = [.. batch.Cost], lo = [.. batch.Lower], up = [.. batch.Upper], v = [.. batch.Values];
        int[] s = [.. batch.Starts], i = [.. batch.Rows];
        fixed (double* pc = c, pl = lo, pu = up, pv = v)
        fixed (int* ps = s, pi = i)
            Must(Highs_addCols(_highs, c.Length, pc, pl, pu, v.Length, ps, pi, pv), "addCols");
        ColumnCount += c.Length;
    }

    public void DeleteColumns(IReadOnlyList<int> columns)
    {
        if (columns.Count == 0) return;
        // Deleting drops the basis; keep it for the columns that stay.
        LinearBasis? basis = Basis();
        int[] set = [.. columns];
        Array.Sort(set);
        fixed (int* p = set) Must(Highs_deleteColsBySet(_highs, set.Length, p), "deleteColsBySet");
        ColumnCount -= set.Length;
        if (basis is null) return;
        HashSet<int> gone = [.. set];
        Restore(basis with { Columns = [.. basis.Columns.Where((_, k) => !gone.Contains(k))] });
    }

    public void SetRowBounds(int row, double lower, double upper) => Must(Highs_changeRowBounds(_highs, row, lower, upper), "changeRowBounds");

    public void SetColumnBounds(IReadOnlyList<int> columns, IReadOnlyList<double> lower, IReadOnlyList<double> upper)
    {
        if (columns.Count == 0) return;
        (int[] set, double[] lo, double[] up) = Ordered(columns, lower, upper);
        fixed (int* p = set)
        fixed (double* l = lo, u = up)
            Must(Highs_changeColsBoundsBySet(_highs, set.Length, p, l, u), "changeColsBoundsBySet");
    }

    public void SetColumnCosts(IReadOnlyList<int> columns, IReadOnlyList<double> costs)
    {
        if (columns.Count == 0) return;
        (int[] set, double[] c, _) = Ordered(columns, costs, costs);
        fixed (int* p = set)
        fixed (double* pc = c)
            Must(Highs_changeColsCostBySet(_highs, set.Length, p, pc), "changeColsCostBySet");
    }

    public void SetIntegral(IReadOnlyList<int> columns, bool integral)
    {
        if (columns.Count == 0) return;
        int[] set = [.. columns];
        Array.Sort(set);
        int[] kinds = new int[set.Length];
        Array.Fill(kinds, integral ? 1 : 0);
        fixed (int* p = set, k = kinds) Must(Highs_changeColsIntegralityBySet(_highs, set.Length, p, k), "changeColsIntegralityBySet");
        _integral += integral ? set.Length : -set.Length;
    }

    public LinearStatus Solve(LinearMethod method, double secondsAtMost, double tolerance = 1e-2)
    {
        bool central = method == LinearMethod.Central, interior = central || method == LinearMethod.InteriorPoint;
        // Presolve throws a warm basis away, and what it took out gets no prices back where there is no crossover.
        Must(Highs_setStringOptionValue(_highs, "solver", interior ? "ipm" : "simplex"), "solver");
        Must(Highs_setStringOptionValue(_highs, "run_crossover", central ? "off" : "on"), "run_crossover");
        Must(Highs_setDoubleOptionValue(_highs, "ipm_optimality_tolerance", central ? tolerance : 1e-8), "ipm_optimality_tolerance");
        Must(Highs_setStringOptionValue(_highs, "presolve", central || method is LinearMethod.WarmSimplex or LinearMethod.DualSimplex ? "off" : "on"), "presolve");
        // 1: dual simplex, 4: primal simplex, which stays feasible when columns are added.
        Must(Highs_setIntOptionValue(_highs, "simplex_strategy", method == LinearMethod.WarmSimplex ? 4 : 1), "simplex_strategy");
        if (interior || method == LinearMethod.ColdSimplex) Must(Highs_clearSolver(_highs), "clearSolver");
        LinearStatus status = Run(secondsAtMost);
        return central ? Nearness(status) : status;
    }

    /// <summary>A solve that was stopped early is as good as its numbers are finite: "unknown" is what the solver calls it.</summary>
    private LinearStatus Nearness(LinearStatus status) =>
        status is LinearStatus.Optimal or LinearStatus.Failed && double.IsFinite(Objective) && RowDuals.All(double.IsFinite) && RowDuals.Any(d => d != 0) ? LinearStatus.Near : status;

    private LinearStatus Run(double secondsAtMost)
    {
        // The time limit is of the object's life for linear programs, of the call for mixed ones: with the clocks put back it is of the call for both.
        Must(Highs_zeroAllClocks(_highs), "zeroAllClocks");
        Must(Highs_setDoubleOptionValue(_highs, "time_limit", Math.Max(0.01, secondsAtMost)), "time_limit");
        int run = Highs_run(_highs);
        if (run is not (StatusOk or StatusWarning)) return LinearStatus.Failed;
        LinearStatus status = StatusNow();
        ColumnValues = new double[ColumnCount];
        ReducedCosts = new double[ColumnCount];
        double[] rows = new double[RowCount];
        RowDuals = new double[RowCount];
        fixed (double* cv = ColumnValues, cd = ReducedCosts, rv = rows, rd = RowDuals)
            Must(Highs_getSolution(_highs, cv, cd, rv, rd), "getSolution");
        Must(Highs_getDoubleInfoValue(_highs, "objective_function_value", out double objective), "objective");
        Objective = objective;
        return status;
    }

    private LinearStatus StatusNow() => Highs_getModelStatus(_highs) switch
    {
        7 => LinearStatus.Optimal,
        8 => LinearStatus.Infeasible,
        9 or 10 => LinearStatus.Unbounded,
        13 => LinearStatus.TimeLimit,
        14 or 16 or 17 => LinearStatus.Stopped,
        _ => LinearStatus.Failed,
    };

    public MixedResult SolveMixed(double secondsAtMost, double relativeGap, int? nodesAtMost, double[]? start, int seed)
    {
        Must(Highs_setStringOptionValue(_highs, "solver", "choose"), "solver");
        Must(Highs_setStringOptionValue(_highs, "presolve", "on"), "presolve");
        Must(Highs_setDoubleOptionValue(_highs, "mip_rel_gap", relativeGap), "mip_rel_gap");
        Must(Highs_setIntOptionValue(_highs, "mip_max_nodes", nodesAtMost ?? int.MaxValue), "mip_max_nodes");
        Must(Highs_setIntOptionValue(_highs, "random_seed", seed), "random_seed");
        if (start is not null)
            fixed (double* p = start) Must(Highs_setSolution(_highs, p, null, null, null), "setSolution");
        LinearStatus status = Run(secondsAtMost);
        Must(Highs_getDoubleInfoValue(_highs, "mip_dual_bound", out double bound), "mip_dual_bound");
        // Without a solution the objective is infinite or the status says that there is none.
        bool found = Math.Abs(Objective) < 1e29 && status is LinearStatus.Optimal or LinearStatus.TimeLimit or LinearStatus.Stopped && Highs_getIntInfoValue(_highs, "primal_solution_status", out int primal) == StatusOk && primal == 2;
        return new MixedResult(status, found ? ColumnValues : null, found ? Objective : double.NegativeInfinity, bound);
    }

    public bool[]? BasicColumns() => Basis() is { } basis ? [.. basis.Columns.Select(s => s == BasisBasic)] : null;

    public LinearBasis? Basis()
    {
        int[] columns = new int[ColumnCount], rows = new int[RowCount];
        fixed (int* cs = columns, rs = rows)
            return Highs_getBasis(_highs, cs, rs) == StatusOk ? new LinearBasis(columns, rows) : null;
    }

    public void Restore(LinearBasis basis)
    {
        if (basis.Columns.Length > ColumnCount || basis.Rows.Length != RowCount)
            throw new ArgumentException($"A basis of {basis.Columns.Length} columns and {basis.Rows.Length} rows does not fit a program of {ColumnCount} and {RowCount}.", nameof(basis));
        int[] columns = [.. basis.Columns, .. new int[ColumnCount - basis.Columns.Length]];
        fixed (int* cs = columns, rs = basis.Rows) Must(Highs_setBasis(_highs, cs, rs), "setBasis");
    }

    public void Dispose()
    {
        if (_highs == nint.Zero) return;
        Highs_destroy(_highs);
        _highs = nint.Zero;
    }

    private static (int[] Set, double[] A, double[] B) Ordered(IReadOnlyList<int> columns, IReadOnlyList<double> a, IReadOnlyList<double> b)
    {
        int[] order = [.. Enumerable.Range(0, columns.Count).OrderBy(k => columns[k])];
        return ([.. order.Select(k => columns[k])], [.. order.Select(k => a[k])], [.. order.Select(k => b[k])]);
    }

    private static void Must(int status, string what)
    {
        if (status is not (StatusOk or StatusWarning))
            throw new InvalidOperationException($"The linear solver refused '{what}' (status {status}); this is a fault in the model that was built.");
    }
}
