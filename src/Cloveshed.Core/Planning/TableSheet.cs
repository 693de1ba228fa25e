namespace Cloveshed.Core.Planning;

/// <summary>
/// What a path table is written on, used again row after row: for each week and spot the worth per mass as weighed over a grid of life
/// used, in the week and (at its start) before the choice of moving. Empty where nothing can be. One for each thread.
/// </summary>
internal sealed class TableSheet
{
    /// <summary>What a place is worth where nothing can be done: not minus infinity, since that times nothing is no number.</summary>
    internal const double Nothing = -1e30;

    private readonly int _spots;
    private readonly double[]?[] _inWeek, _atStart;
    private readonly bool[] _hasInWeek, _hasAtStart;
    private readonly int[] _count;
    private double _lifeAtStart;

    internal TableSheet(int weeks, int spots)
    {
        _spots = spots;
        _inWeek = new double[(weeks + 1) * spots][];
        _atStart = new double[(weeks + 1) * spots][];
        _hasInWeek = new bool[_inWeek.Length];
        _hasAtStart = new bool[_atStart.Length];
        _count = new int[weeks + 1];
        Gap = new double[weeks];
        Hulls = new ExitHull[weeks];
    }

    internal double[] Sound { get; } = new double[PathTable.Points];
    internal double[] Gap { get; }
    internal ExitHull[] Hulls { get; }
    internal MoveOffers Moves { get; } = new();
    internal double[,] Most { get; private set; } = new double[0, 0];
    internal double[,] Stayed { get; private set; } = new double[0, 0];
    private readonly double[] _spare = new double[PathTable.Points];

    /// <param name="mostLife">[week] the most life used by its start since the row's: points beyond it are not needed.</param>
    internal void Begin(InstanceRow row, double[,] most, double[,] stayed, double[] mostLife)
    {
        (_lifeAtStart, Most, Stayed) = (row.LifeAtStart, most, stayed);
        Array.Clear(_hasInWeek);
        Array.Clear(_hasAtStart);
        for (int t = 0; t < _count.Length; t++) _count[t] = (int)Math.Min(PathTable.Points, mostLife[t] / PathTable.Step + 4);
    }

    /// <summary>Points of the grid that a week needs.</summary>
    internal int Count(int week) => _count[week];

    internal Span<double> OpenInWeek(int week, int spot) => Open(_inWeek, _hasInWeek, week, spot);

    internal Span<double> OpenAtStart(int week, int spot) => Open(_atStart, _hasAtStart, week, spot);

    internal ReadOnlySpan<double> InWeek(int week, int spot) => Read(_inWeek, _hasInWeek, week, spot);

    internal ReadOnlySpan<double> AtStart(int week, int spot) => Read(_atStart, _hasAtStart, week, spot);

    internal Span<double> Spare(int week) => _spare.AsSpan(0, _count[week]);

    /// <summary>Between the points: the worth per mass at a life used.</summary>
    internal double InWeek(int week, int spot, double life) => Between(InWeek(week, spot), life);

    internal double AtStart(int week, int spot, double life) => Between(AtStart(week, spot), life);

    private double Between(ReadOnlySpan<double> values, double life)
    {
        if (values.Length == 0) return Nothing;
        double x = (life - _lifeAtStart) / PathTable.Step;
        int i = Math.Min((int)x, values.Length - 1), j = Math.Min(i + 1, values.Length - 1);
        double part = Math.Clamp(x - i, 0, 1);
        return part == 0 ? values[i] : (1 - part) * values[i] + part * values[j];
    }

    private Span<double> Open(double[]?[] sheets, bool[] has, int week, int spot)
    {
        int at = week * _spots + spot;
        has[at] = true;
        return (sheets[at] ??= new double[PathTable.Points]).AsSpan(0, _count[week]);
    }

    private ReadOnlySpan<double> Read(double[]?[] sheets, bool[] has, int week, int spot)
    {
        int at = week * _spots + spot;
        return has[at] ? sheets[at].AsSpan(0, _count[week]) : default;
    }
}
