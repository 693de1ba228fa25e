using System.Numerics;

namespace Cloveshed.Core.Planning;

/// <summary>The two steps that a path table consists of, several points at a time.</summary>
internal static class TableSteps
{
    /// <summary>v = the greater of v and level + slope x sound.</summary>
    internal static void RaiseToLine(Span<double> v, ReadOnlySpan<double> sound, double level, double slope)
    {
        int i = 0;
        Vector<double> a = new(level), b = new(slope);
        for (; i <= v.Length - Vector<double>.Count; i += Vector<double>.Count)
            Vector.Max(new Vector<double>(v[i..]), a + b * new Vector<double>(sound[i..])).CopyTo(v[i..]);
        for (; i < v.Length; i++) v[i] = Math.Max(v[i], level + slope * sound[i]);
    }

    /// <summary>v = the greater of v and keep x next + level, next read at points shifted on and between two of its own; beyond its end its last one holds.</summary>
    internal static void RaiseToNext(Span<double> v, ReadOnlySpan<double> next, double shift, double keep, double level)
    {
        int whole = (int)Math.Floor(shift), last = next.Length - 1, i = 0;
        double onward = keep * (shift - whole), here = keep - onward;
        Vector<double> a = new(here), b = new(onward), c = new(level);
        int safe = Math.Min(v.Length, last - whole - 1) - Vector<double>.Count;
        for (; i <= safe; i += Vector<double>.Count)
            Vector.Max(new Vector<double>(v[i..]), a * new Vector<double>(next[(i + whole)..]) + b * new Vector<double>(next[(i + whole + 1)..]) + c).CopyTo(v[i..]);
        for (; i < v.Length; i++) v[i] = Math.Max(v[i], here * next[Math.Min(i + whole, last)] + onward * next[Math.Min(i + whole + 1, last)] + level);
    }
}
