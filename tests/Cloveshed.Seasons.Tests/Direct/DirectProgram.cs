using Cloveshed.Core.Planning;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>What a direct program came to: the value of the best found, what nothing can exceed, and the columns.</summary>
internal sealed record DirectResult(LinearStatus Status, double Value, double Bound, double[] Columns);

/// <summary>A program written row by row and column by column, then solved once.</summary>
internal sealed class DirectProgram
{
    private readonly List<double> _lower = [];
    private readonly List<double> _upper = [];
    private readonly ColumnBatch _columns = new();
    private readonly List<int> _whole = [];

    internal int RowCount => _upper.Count;
    internal int ColumnCount => _columns.Count;

    internal int AtMost(double bound) => Row(double.NegativeInfinity, bound);

    internal int Equal(double value) => Row(value, value);

    /// <summary>A column from 0 to most; entries in the same row add up.</summary>
    internal int Column(double gain, double most, bool whole, params ReadOnlySpan<(int Row, double Value)> entries)
    {
        _columns.Open(gain, 0, most);
        var sums = new SortedDictionary<int, double>();
        foreach ((int row, double value) in entries) sums[row] = sums.GetValueOrDefault(row) + value;
        foreach ((int row, double value) in sums)
            if (value != 0) _columns.Entry(row, value);
        if (whole) _whole.Add(_columns.Count - 1);
        return _columns.Count - 1;
    }

    internal DirectResult Solve(double seconds, double gap)
    {
        using ILinearProgram program = new HighsSolver().NewProgram();
        program.AddRows(_lower, _upper);
        program.AddColumns(_columns);
        if (_whole.Count == 0)
        {
            LinearStatus status = program.Solve(LinearMethod.ColdSimplex, seconds);
            return new DirectResult(status, program.Objective, program.Objective, program.ColumnValues);
        }
        program.SetIntegral(_whole, true);
        MixedResult mixed = program.SolveMixed(seconds, gap, null, null, 1);
        return new DirectResult(mixed.Status, mixed.Objective, mixed.Bound, mixed.Values ?? []);
    }

    private int Row(double lower, double upper)
    {
        _lower.Add(lower);
        _upper.Add(upper);
        return _upper.Count - 1;
    }
}
