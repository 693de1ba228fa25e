namespace Cloveshed.Core.Planning;

/// <summary>
/// Which room weeks to try next: those that promise most by all that was learnt from the weeks tried so far. Every pair of rooms is looked at together, all
/// others held, from the best start on until no pair promises more.
/// </summary>
internal sealed class RoomGuess
{
    private readonly int[] _rooms;
    private readonly RoomSchedule[][] _weeks;
    private readonly List<double> _base = [];
    private readonly List<double[][]> _gains = [];

    /// <param name="weeks">By room: the weeks that may be proposed.</param>
    internal RoomGuess(IReadOnlyDictionary<int, RoomSchedule[]> weeks)
    {
        _rooms = [.. weeks.Keys.Order()];
        _weeks = [.. _rooms.Select(p => weeks[p])];
    }

    internal void Learn(RoomCut cut, RoomChoice any)
    {
        double[][] gains = [.. _rooms.Select((p, r) => _weeks[r].Select(w => cut.Gain(p, w)).ToArray())];
        _gains.Add(gains);
        _base.Add(cut.Of(_rooms, _rooms.Index().Aggregate(any, (choice, r) => choice.With(r.Item, _weeks[r.Index][0]))) - gains.Sum(g => g[0]));
    }

    /// <summary>The choice that promises most, of those not tried; null where all promise no more than a value.</summary>
    /// <param name="within">Only weeks that are no further than this from those of the start; null: any.</param>
    internal RoomChoice? Next(RoomChoice from, Func<RoomChoice, bool> tried, double moreThan, int? within)
    {
        (int[]? Best, double Promise) best = (null, moreThan);
        int[][] open = [.. _rooms.Select((p, r) => Enumerable.Range(0, _weeks[r].Length).Where(w => within is not { } n || from.OfPlace[p] is not { } now || (Near(_weeks[r][w].Sealed, now.Sealed, n) && Near(_weeks[r][w].Opened, now.Opened, n))).ToArray())];
        if (open.Any(weeks => weeks.Length == 0)) return null;
        foreach (int[] start in Starts(from).Where(start => within is null || start.Index().All(at => open[at.Index].Contains(at.Item))))
        {
            int[] at = start;
            double here = double.NegativeInfinity;
            for (int sweep = 0; sweep < 6; sweep++)
            {
                double before = here;
                for (int i = 0; i < _rooms.Length; i++)
                    for (int j = Math.Min(i + 1, _rooms.Length - 1); j < _rooms.Length; j++)
                    {
                        (int[] next, double promise, int[]? untried, double untriedPromise) = Pair(from, at, open, i, j, tried, best.Promise);
                        if (promise > here) (at, here) = (next, promise);
                        if (untried is not null && untriedPromise > best.Promise) best = (untried, untriedPromise);
                    }
                if (here <= before) break;
            }
        }
        return best.Best is { } found ? Choice(from, found) : null;
    }

    private static readonly int[] One = [0];

    private static bool Near(int? a, int? b, int within) => a is { } x && b is { } y ? Math.Abs(x - y) <= within : a is null && b is null;

    private RoomChoice Choice(RoomChoice from, int[] at) => _rooms.Index().Aggregate(from, (choice, r) => choice.With(r.Item, _weeks[r.Index][at[r.Index]]));

    /// <summary>What is held now, and what each lesson alone would choose.</summary>
    private IEnumerable<int[]> Starts(RoomChoice from)
    {
        yield return [.. _rooms.Select((p, r) => Math.Max(0, Array.IndexOf(_weeks[r], from.OfPlace[p] ?? _weeks[r][0])))];
        foreach (double[][] gains in _gains.AsEnumerable().Reverse().Take(4))
            yield return [.. gains.Select(g => Array.IndexOf(g, g.Max()))];
    }

    /// <summary>The best weeks of two rooms with the others held, and the best of those choices that are not tried and promise more than a value.</summary>
    private (int[] At, double Promise, int[]? Untried, double UntriedPromise) Pair(RoomChoice from, int[] at, int[][] open, int i, int j, Func<RoomChoice, bool> tried, double moreThan)
    {
        double[] others = [.. _gains.Select((g, k) => _base[k] + Enumerable.Range(0, _rooms.Length).Where(r => r != i && r != j).Sum(r => g[r][at[r]]))];
        double most = double.NegativeInfinity, mostUntried = moreThan;
        (int A, int B) best = (at[i], at[j]);
        (int A, int B)? untried = null;
        foreach (int a in open[i])
            foreach (int b in i == j ? One : open[j])
            {
                double promise = double.PositiveInfinity;
                for (int k = 0; k < others.Length; k++) promise = Math.Min(promise, others[k] + _gains[k][i][a] + (i == j ? 0 : _gains[k][j][b]));
                if (promise > most) (most, best) = (promise, (a, i == j ? a : b));
                if (promise > mostUntried && !tried(Choice(from, Put(a, i == j ? a : b)))) (mostUntried, untried) = (promise, (a, i == j ? a : b));
            }
        return (Put(best.A, best.B), most, untried is { } u ? Put(u.A, u.B) : null, mostUntried);

        int[] Put(int a, int b)
        {
            int[] put = [.. at];
            (put[i], put[j]) = (a, b);
            return put;
        }
    }
}
