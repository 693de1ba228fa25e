namespace Cloveshed.Core.Planning;

/// <summary>
/// The best decision that the polish has, and the solves that look for a better one, side by side in models that are alike. While yes and no are looked for, units may be
/// parts, which is far quicker; then they are whole.
/// </summary>
internal sealed class PolishSearch
{
    /// <summary>To find out what can be kept of a plan: its yes and no are held, so little is left.</summary>
    private const double MostToBegin = 10, GapToBegin = 3e-4;
    private const int NodesToBegin = 20;
    private const double Nothing = 1e-9, OfAUnit = 1e-5;

    private readonly IReadOnlyList<PolishModel> _models;
    private readonly int[] _columns;
    private readonly double[] _at;
    private readonly int _seed;
    private readonly double _toBegin;
    private readonly HashSet<PathColumn> _used;
    private bool _whole = true;

    /// <summary>Of all columns, where it last stood, with units whole or not; null before the first.</summary>
    private double[]? _values;
    private (double[] Values, double Objective)? _now, _best;

    /// <param name="models">Alike, one for each thread; units whole.</param>
    /// <param name="plan">Where it begins; what can't be kept of it is decided anew.</param>
    /// <param name="toBegin">Seconds after which it is too slow to be worth going on.</param>
    internal PolishSearch(IReadOnlyList<PolishModel> models, AnswerBuilding plan, int seed, double toBegin)
    {
        (_models, _columns, _seed, _toBegin) = (models, [.. models[0].Choices.Select(c => c.Column)], seed, Math.Min(MostToBegin, toBegin));
        _at = PolishStart.Of(models[0], plan);
        _used = new(plan.Paths.SelectMany(p => p.Exits.Select(e => models[0].Known(e.Column))), new Master.SamePath());
        Begin();
        _best = _now;
    }

    /// <summary>The best with whole units: the values of all columns and the objective; null where nothing was found.</summary>
    internal (double[] Values, double Objective)? Best => _best;

    /// <summary>
    /// Decides some choices anew, the others as they are; of several such, at most one for each model, the best is kept. Gained: it is better than before;
    /// Complete: nothing better is to be had so.
    /// </summary>
    internal (bool Gained, bool Complete) Decide(IReadOnlyList<Func<PolishChoice, bool>> free, double seconds, double gap, int nodes)
    {
        double[]? start = _now?.Values;
        var results = new MixedResult[free.Count];
        Parallel.For(0, free.Count, k => results[k] = Solve(_models[k], free[k], start, seconds, gap, nodes));
        bool complete = results.All(r => r.Status == LinearStatus.Optimal);
        MixedResult best = results.MaxBy(r => r.Objective)!;
        if (best.Values is null || (_now is { } now && best.Objective <= now.Objective + Nothing)) return (false, complete);
        Stand(best.Values, best.Objective);
        return (true, complete);
    }

    /// <summary>Goes on from what another search has found where that is better.</summary>
    internal void Join(PolishSearch other)
    {
        if (other._best is { } theirs && !(_best?.Objective >= theirs.Objective)) Stand(theirs.Values, theirs.Objective);
    }

    /// <summary>From here on units may be parts.</summary>
    internal void Parts() => SetWhole(false);

    /// <summary>
    /// From here on units are whole again: what is a part of one is left out, and what else may be shipped is decided by <paramref name="improve"/>.
    /// What was better with whole units before stays.
    /// </summary>
    internal void Units(Action improve)
    {
        if (_now is not { } parts) return;
        for (int k = 0; k < _at.Length; k++)
            if (!_models[0].Choices[k].IsYesNo) _at[k] = Math.Floor(parts.Values[_columns[k]] + OfAUnit);
        SetWhole(true);
        (var before, _now, _best, _values) = (_best, null, null, parts.Values);
        if (Begin()) improve();
        if (before is { } b && !(_now?.Objective > b.Objective)) Stand(b.Values, b.Objective);
    }

    private MixedResult Solve(PolishModel model, Func<PolishChoice, bool> free, double[]? start, double seconds, double gap, int nodes)
    {
        IReadOnlyList<PolishChoice> choices = model.Choices;
        double[] lower = new double[choices.Count], upper = new double[choices.Count];
        for (int k = 0; k < choices.Count; k++)
            (lower[k], upper[k]) = free(choices[k]) || choices[k].Kind == ChoiceKind.Part || (!_whole && !choices[k].IsYesNo) ? (0, choices[k].Most) : (_at[k], _at[k]);
        model.Master.Program.SetColumnBounds(_columns, lower, upper);
        if (model.IsLarge) model.Narrow(free, k => _values is null ? _used.Contains(model.Master.Columns[k].Path!) : _values[k] > 1e-9);
        return model.Master.Program.SolveMixed(seconds, gap, nodes, start, _seed);
    }

    /// <summary>The start as it is, or with other whole orders than it has. Which products a whole order takes is free in both.</summary>
    private bool Begin() =>
        Decide([_ => false], _toBegin, GapToBegin, NodesToBegin).Gained || Decide([c => c.Kind == ChoiceKind.Whole], _toBegin, GapToBegin, NodesToBegin).Gained;

    private void Stand(double[] values, double objective)
    {
        (_now, _values) = ((values, objective), values);
        if (_whole) _best = _now;
        for (int k = 0; k < _at.Length; k++) _at[k] = Math.Round(values[_columns[k]]);
    }

    private void SetWhole(bool whole)
    {
        _whole = whole;
        foreach (PolishModel model in _models) model.SetWholeUnits(whole);
    }
}
