namespace Cloveshed.Core.Planning.Supposing;

/// <summary>
/// A small loss for each mass that is run otherwise than it was, so that of plans worth nearly the same one is told in which little moves: of a model that has many plans of one worth
/// any may come out of a solver. All of a lot goes somewhere, so it is enough to count what is run more: ways to run that were not gone lose it, and those that were are held to the mass that
/// they took, with another of each for what goes beyond. The model has no more rows by it.
/// </summary>
internal sealed class NearPlan
{
    private const int AtLower = 0, Basic = 1, AtUpper = 2;

    private readonly Master _master;
    private readonly int[] _gone, _others;
    private readonly double[] _taken;
    private readonly int _first;

    /// <param name="taken">Scaled mass that the ways to run took in the plan, by column.</param>
    /// <param name="loss">Scaled money per scaled mass (the median price is 1): a season that moved a tenth of its mass would lose a tenth of it.</param>
    internal NearPlan(Master master, IReadOnlyDictionary<int, double> taken, double loss)
    {
        _master = master;
        _gone = [.. taken.Keys.Order()];
        _taken = [.. _gone.Select(k => taken[k])];
        _others = [.. Enumerable.Range(0, master.ColumnCount).Where(k => IsRun(master, k) && !taken.ContainsKey(k))];
        _first = master.ColumnCount;
        master.AddAgain(_gone.Select(k => master.Columns[k].Path!));
        master.Program.SetColumnBounds(_gone, new double[_gone.Length], _taken);
        int[] beyond = [.. Enumerable.Range(_first, _gone.Length)];
        Lose(_others, loss);
        Lose(beyond, loss);
    }

    /// <summary>Where a standing master stands once what moves is counted; it is put back.</summary>
    internal static NearStand Stand(Master standing, LinearBasis basis, double loss)
    {
        MasterStand stand = standing.Stand();
        var near = new NearPlan(standing, Taken(standing), loss);
        try
        {
            Promises.StandingPlan.SolveOn(standing, LinearMethod.WarmSimplex);
            return new NearStand(loss, standing.Program.Basis() ?? near.Split(basis, stand.Values), near._gone, stand.Columns);
        }
        finally
        {
            near.Undo();
            standing.BackTo(stand, basis);
        }
    }

    /// <summary>The ways to run that are gone in a solved master, with their scaled mass.</summary>
    internal static Dictionary<int, double> Taken(Master master) =>
        Enumerable.Range(0, master.ColumnCount).Where(k => IsRun(master, k) && master.Values[k] > 1e-9).ToDictionary(k => k, k => master.Values[k]);

    /// <summary>A basis of the same without this, and the values that it stands for, with it: what goes beyond the mass that was taken goes by the other column of its way.</summary>
    internal LinearBasis Split(LinearBasis basis, double[] values)
    {
        int[] columns = [.. basis.Columns, .. new int[_gone.Length]];
        for (int k = 0; k < _gone.Length; k++)
        {
            columns[_first + k] = AtLower;
            if (basis.Columns[_gone[k]] != Basic || values[_gone[k]] <= _taken[k]) continue;
            (columns[_gone[k]], columns[_first + k]) = (AtUpper, Basic);
        }
        return basis with { Columns = columns };
    }

    /// <summary>Gains and limits as they were; the columns of what goes beyond are the caller's to take out.</summary>
    internal void Undo()
    {
        _master.Program.SetColumnCosts(_others, [.. _others.Select(_master.GainOf)]);
        _master.Program.SetColumnBounds(_gone, new double[_gone.Length], [.. _gone.Select(_ => double.PositiveInfinity)]);
    }

    private void Lose(int[] columns, double loss) => _master.Program.SetColumnCosts(columns, [.. columns.Select(k => _master.GainOf(k) - loss * _master.Columns[k].Path!.MassRatio)]);

    private static bool IsRun(Master master, int column) => master.Columns[column].Path is { Exit.Line: >= 0 };
}

/// <summary>Where a standing master stands once it counts what moves (<see cref="NearPlan"/>): found once, for each change to be put to it from there.</summary>
/// <param name="Gone">Columns of the ways to run that were gone.</param>
/// <param name="Columns">Of the master without what goes beyond; the basis has that after them.</param>
internal sealed record NearStand(double Loss, LinearBasis Basis, int[] Gone, int Columns)
{
    /// <summary>Whether it is of a master's plan still; it may have more columns by now.</summary>
    internal bool IsOf(Master standing, double loss) => loss == Loss && standing.ColumnCount >= Columns && NearPlan.Taken(standing).Keys.Order().SequenceEqual(Gone);

    /// <summary>For a master that has so many columns by now; new ones are at their lower limits.</summary>
    internal LinearBasis With(int columns) => Basis with { Columns = [.. Basis.Columns[..Columns], .. new int[columns - Columns], .. Basis.Columns[Columns..]] };
}
