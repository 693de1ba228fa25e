using System.Numerics;

namespace Cloveshed.Core.Planning;

/// <summary>For each point of a path table, the best place to move to and the best of the other places, for what stands in the best one already.</summary>
internal sealed class MoveOffers
{
    private readonly double[] _best = new double[PathTable.Points], _second = new double[PathTable.Points], _place = new double[PathTable.Points];
    private int _count;

    internal void Clear(int count)
    {
        _count = count;
        Array.Fill(_best, TableSheet.Nothing, 0, count);
        Array.Fill(_second, TableSheet.Nothing, 0, count);
        Array.Fill(_place, -1, 0, count);
    }

    internal void Offer(int place, ReadOnlySpan<double> there, double cost)
    {
        int i = 0, wide = Vector<double>.Count;
        Vector<double> at = new(place), less = new(cost);
        for (; i <= _count - wide; i += wide)
        {
            Vector<double> value = new Vector<double>(there[i..]) - less, best = new(_best, i), second = new(_second, i), where = new(_place, i);
            Vector<long> same = Vector.Equals(where, at), better = Vector.GreaterThan(value, best);
            // What was best before becomes second, unless it was a way to the same place; a lesser one may still be second.
            Vector<double> pushed = Vector.ConditionalSelect(same, second, best), lesser = Vector.ConditionalSelect(same, second, Vector.Max(second, value));
            Vector.ConditionalSelect(better, pushed, lesser).CopyTo(_second, i);
            Vector.ConditionalSelect(better, value, best).CopyTo(_best, i);
            Vector.ConditionalSelect(better, at, where).CopyTo(_place, i);
        }
        for (; i < _count; i++)
        {
            double value = there[i] - cost;
            if (value > _best[i])
            {
                if (_place[i] != place) _second[i] = _best[i];
                (_best[i], _place[i]) = (value, place);
            }
            else if (value > _second[i] && _place[i] != place)
            {
                _second[i] = value;
            }
        }
    }

    internal double From(int place, int point) => _place[point] == place ? _second[point] : _best[point];

    /// <summary>v = the greater of v and the best move from a place, less what leaving costs.</summary>
    internal void OfferTo(int place, double cost, Span<double> v)
    {
        int i = 0, wide = Vector<double>.Count;
        Vector<double> from = new(place), less = new(cost);
        for (; i <= v.Length - wide; i += wide)
        {
            Vector<double> offer = Vector.ConditionalSelect(Vector.Equals(new Vector<double>(_place, i), from), new Vector<double>(_second, i), new Vector<double>(_best, i));
            Vector.Max(new Vector<double>(v[i..]), offer - less).CopyTo(v[i..]);
        }
        for (; i < v.Length; i++) v[i] = Math.Max(v[i], From(place, i) - cost);
    }
}
