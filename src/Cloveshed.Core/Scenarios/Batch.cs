using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>How a mass left its batch: run on a line, or sold as is, or discarded (Line -1). Mass in scaled mass at the row's start.</summary>
internal readonly record struct BatchExit(int Week, int Line, bool Discarded, double Mass);

/// <summary>
/// So much of a row as stands together: it follows a path of the plan as long as it can. Masses are scaled, at the row's start; what a
/// scale would show is mass times Ratio.
/// </summary>
internal sealed class Batch
{
    public Batch(int path, int row, int lot, int place, int start, double whole, double life, int weeks)
    {
        (Path, Row, Lot, Place, Start, Whole, Left, Life) = (path, row, lot, place, start, whole, whole, life);
        (PlaceAt, RatioAt, LifeAt) = (new int[weeks + 1], new double[weeks + 1], new double[weeks + 1]);
    }

    private Batch(Batch other, double mass)
    {
        (Path, Row, Lot, Place, Start, Life, Ratio) = (other.Path, other.Row, other.Lot, other.Place, other.Start, other.Life, other.Ratio);
        (PlaceAt, RatioAt, LifeAt) = ([.. other.PlaceAt], [.. other.RatioAt], [.. other.LifeAt]);
        (Whole, Left) = (mass, mass);
    }

    public int Path { get; }
    public int Row { get; }
    public int Lot { get; }
    public int Place { get; set; }
    public int Start { get; }

    /// <summary>Scaled mass at the row's start that this batch began with, and what is left of it.</summary>
    public double Whole { get; private set; }
    public double Left { get; private set; }
    public double Ratio { get; set; } = 1;
    public double Life { get; set; }

    /// <summary>[week] as it was at the week's start, place after the week's move.</summary>
    public int[] PlaceAt { get; }
    public double[] RatioAt { get; }
    public double[] LifeAt { get; }
    public List<BatchExit> Exits { get; } = [];

    /// <summary>Mass that counts as nothing: digits of a file.</summary>
    public double Dust => 1e-7 * Whole;

    /// <summary>What it is worth to keep, in the week in which that was last worked out.</summary>
    public (int Week, double Worth) Kept { get; set; } = (-1, 0);

    public bool LeftIn(int week) => Exits.Count > 0 && Exits[^1].Week == week;

    /// <summary>Takes up to a mass; all of it where only dust would stay. The mass taken.</summary>
    /// <param name="noMore">A limit holds: dust stays.</param>
    public double Take(double mass, int week, int line, bool discarded, bool noMore = false)
    {
        double taken = mass >= Left - (noMore ? 0 : Dust) ? Left : mass;
        if (taken <= 0) return 0;
        Left -= taken;
        Exits.Add(new BatchExit(week, line, discarded, taken));
        return taken;
    }

    /// <summary>A part of what is left becomes a batch of its own with the same history.</summary>
    public Batch Split(double mass)
    {
        double part = Math.Min(mass, Left);
        Left -= part;
        Whole -= part;
        return new Batch(this, part);
    }
}
