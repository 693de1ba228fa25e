namespace Cloveshed.Core.Planning;

/// <summary>How a solve ended. Anything but Optimal must not be believed further than it says. Near: prices to work with, no solution.</summary>
public enum LinearStatus { Optimal, Near, Infeasible, Unbounded, TimeLimit, Stopped, Failed }

/// <summary>
/// How to solve: from scratch by interior point with crossover, or from the last basis by simplex. Central: from scratch by interior point,
/// stopped early, for prices from the middle of where the best ones lie; of use only where no price can grow without end.
/// </summary>
public enum LinearMethod { InteriorPoint, WarmSimplex, ColdSimplex, DualSimplex, Central }

/// <summary>Makes linear programs; the solver is an argument of the planner, never a reference of it.</summary>
public interface ILinearSolver
{
    /// <summary>A new, empty linear program that maximises.</summary>
    ILinearProgram NewProgram();
}

/// <summary>A row over columns that are there already.</summary>
public sealed record LinearRow(double Lower, double Upper, IReadOnlyList<(int Column, double Value)> Entries);

/// <summary>A batch of columns in compressed form: entries of column k are [Starts[k], Starts[k+1]) (the last ends at the end).</summary>
public sealed class ColumnBatch
{
    public List<double> Cost { get; } = [];
    public List<double> Lower { get; } = [];
    public List<double> Upper { get; } = [];
    public List<int> Starts { get; } = [];
    public List<int> Rows { get; } = [];
    public List<double> Values { get; } = [];

    public int Count => Cost.Count;

    public void Open(double cost, double lower, double upper)
    {
        Cost.Add(cost);
        Lower.Add(lower);
        Upper.Add(upper);
        Starts.Add(Rows.Count);
    }

    public void Entry(int row, double value)
    {
        Rows.Add(row);
        Values.Add(value);
    }

    public void Clear()
    {
        Cost.Clear();
        Lower.Clear();
        Upper.Clear();
        Starts.Clear();
        Rows.Clear();
        Values.Clear();
    }
}

/// <summary>
/// A linear program, max c x, lower &lt;= A x &lt;= upper, that grows by columns and is solved again and again.
/// Duals are of the maximisation: the dual of a row "&lt;= b" is what one more unit of b adds, so it is not negative.
/// </summary>
public interface ILinearProgram : IDisposable
{
    int RowCount { get; }
    int ColumnCount { get; }

    void AddRows(IReadOnlyList<double> lower, IReadOnlyList<double> upper);
    void AddRows(IReadOnlyList<LinearRow> rows);
    void AddColumns(ColumnBatch batch);
    void DeleteColumns(IReadOnlyList<int> columns);
    void SetRowBounds(int row, double lower, double upper);
    void SetColumnBounds(IReadOnlyList<int> columns, IReadOnlyList<double> lower, IReadOnlyList<double> upper);
    void SetColumnCosts(IReadOnlyList<int> columns, IReadOnlyList<double> costs);
    void SetIntegral(IReadOnlyList<int> columns, bool integral);

    /// <param name="tolerance">Relative, of Central alone: where to stop.</param>
    LinearStatus Solve(LinearMethod method, double secondsAtMost, double tolerance = 1e-2);

    /// <summary>Branch and bound on the columns marked integral. Start may be null; a bound is always set, +infinity if none.</summary>
    MixedResult SolveMixed(double secondsAtMost, double relativeGap, int? nodesAtMost, double[]? start, int seed);

    double Objective { get; }
    double[] ColumnValues { get; }
    double[] RowDuals { get; }
    double[] ReducedCosts { get; }

    /// <summary>True in column k where column k is basic; null where there is no basis.</summary>
    bool[]? BasicColumns();

    /// <summary>The basis of the last solve, to come back to; null where there is none.</summary>
    LinearBasis? Basis();

    /// <summary>Comes back to a basis. Columns added since stand at their lower bound; none of its columns may have been taken out.</summary>
    void Restore(LinearBasis basis);
}

/// <summary>Where each column and each row stood at the end of a solve, in the solver's own numbers.</summary>
public sealed record LinearBasis(int[] Columns, int[] Rows);

/// <summary>The best solution found (null: none) and the proven bound.</summary>
public sealed record MixedResult(LinearStatus Status, double[]? Values, double Objective, double Bound);
