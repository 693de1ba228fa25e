using Cloveshed.Core.Planning;

namespace Cloveshed.Bench;

/// <summary>Passes everything on to a solver and keeps the linear program as it stands, so that others can be given the same one.</summary>
internal sealed class RecordingSolver(ILinearSolver inner) : ILinearSolver
{
    public RecordedProgram? Last { get; private set; }

    public ILinearProgram NewProgram() => Last = new RecordedProgram(inner.NewProgram());
}

/// <summary>A column as recorded; entries are (row, value).</summary>
internal sealed record RecordedColumn(double Cost, double Lower, double Upper, (int Row, double Value)[] Entries);

/// <summary>The rows and columns that a program was given, in order; rows added over existing columns are not followed, as no root master has them.</summary>
internal sealed class RecordedProgram(ILinearProgram inner) : ILinearProgram
{
    public List<(double Lower, double Upper)> Rows { get; } = [];
    public List<RecordedColumn> Columns { get; private set; } = [];

    public int RowCount => inner.RowCount;
    public int ColumnCount => inner.ColumnCount;
    public double Objective => inner.Objective;
    public double[] ColumnValues => inner.ColumnValues;
    public double[] RowDuals => inner.RowDuals;
    public double[] ReducedCosts => inner.ReducedCosts;

    public void AddRows(IReadOnlyList<double> lower, IReadOnlyList<double> upper)
    {
        Rows.AddRange(lower.Zip(upper));
        inner.AddRows(lower, upper);
    }

    public void AddRows(IReadOnlyList<LinearRow> rows) =>
        throw new NotSupportedException("The recording is of masters that have no rows over existing columns.");

    public void AddColumns(ColumnBatch batch)
    {
        for (int k = 0; k < batch.Count; k++)
        {
            int end = k + 1 < batch.Count ? batch.Starts[k + 1] : batch.Rows.Count;
            Columns.Add(new(batch.Cost[k], batch.Lower[k], batch.Upper[k], [.. Enumerable.Range(batch.Starts[k], end - batch.Starts[k]).Select(e => (batch.Rows[e], batch.Values[e]))]));
        }
        inner.AddColumns(batch);
    }

    public void DeleteColumns(IReadOnlyList<int> columns)
    {
        HashSet<int> gone = [.. columns];
        Columns = [.. Columns.Where((_, k) => !gone.Contains(k))];
        inner.DeleteColumns(columns);
    }

    public void SetRowBounds(int row, double lower, double upper)
    {
        Rows[row] = (lower, upper);
        inner.SetRowBounds(row, lower, upper);
    }

    public void SetColumnBounds(IReadOnlyList<int> columns, IReadOnlyList<double> lower, IReadOnlyList<double> upper)
    {
        for (int k = 0; k < columns.Count; k++) Columns[columns[k]] = Columns[columns[k]] with { Lower = lower[k], Upper = upper[k] };
        inner.SetColumnBounds(columns, lower, upper);
    }

    public void SetColumnCosts(IReadOnlyList<int> columns, IReadOnlyList<double> costs)
    {
        for (int k = 0; k < columns.Count; k++) Columns[columns[k]] = Columns[columns[k]] with { Cost = costs[k] };
        inner.SetColumnCosts(columns, costs);
    }

    public void SetIntegral(IReadOnlyList<int> columns, bool integral) => inner.SetIntegral(columns, integral);
    public LinearStatus Solve(LinearMethod method, double secondsAtMost, double tolerance = 1e-2) => inner.Solve(method, secondsAtMost, tolerance);
    public MixedResult SolveMixed(double secondsAtMost, double relativeGap, int? nodesAtMost, double[]? start, int seed) => inner.SolveMixed(secondsAtMost, relativeGap, nodesAtMost, start, seed);
    public bool[]? BasicColumns() => inner.BasicColumns();

    public LinearBasis? Basis() => inner.Basis();

    public void Restore(LinearBasis basis) => inner.Restore(basis);
    public void Dispose() => inner.Dispose();
}
