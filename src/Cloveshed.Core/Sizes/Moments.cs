namespace Cloveshed.Core.Sizes;

/// <summary>
/// Count, mean and standard deviation of numbers as they come, and of two such sums joined. Sums are taken of what the numbers
/// lie from the first one, so that figures that share many leading digits lose none of them.
/// </summary>
public struct Moments : IEquatable<Moments>
{
    private double origin, sum, squares;

    /// <summary>How many; counts may be any positive number.</summary>
    public double Count { get; private set; }

    /// <summary>Arithmetic mean; 0 of none.</summary>
    public readonly double Mean => Count > 0 ? origin + sum / Count : 0;

    /// <summary>Sum of squares about the mean.</summary>
    public readonly double SquaresAboutMean => Count > 0 ? Math.Max(0, squares - sum * sum / Count) : 0;

    /// <summary>With n - 1; 0 of fewer than two.</summary>
    public readonly double Sd => Count > 1 ? Math.Sqrt(SquaresAboutMean / (Count - 1)) : 0;

    /// <summary>Sd over mean.</summary>
    public readonly double Cv => Mean != 0 ? Sd / Mean : 0;

    /// <summary>Takes a number that occurred so often.</summary>
    public void Add(double x, double count = 1)
    {
        if (Count == 0)
            origin = x;
        double away = x - origin;
        Count += count;
        sum += count * away;
        squares += count * away * away;
    }

    /// <summary>Takes all that another one has taken.</summary>
    public void Join(Moments other)
    {
        if (other.Count == 0)
            return;
        if (Count == 0)
        {
            this = other;
            return;
        }

        double away = other.origin - origin;
        squares += other.squares + 2 * away * other.sum + away * away * other.Count;
        sum += other.sum + away * other.Count;
        Count += other.Count;
    }

    /// <inheritdoc/>
    public readonly bool Equals(Moments other) => (origin, sum, squares, Count) == (other.origin, other.sum, other.squares, other.Count);

    /// <inheritdoc/>
    public override readonly bool Equals(object? obj) => obj is Moments other && Equals(other);

    /// <inheritdoc/>
    public override readonly int GetHashCode() => HashCode.Combine(origin, sum, squares, Count);

    /// <summary>The same sums.</summary>
    public static bool operator ==(Moments left, Moments right) => left.Equals(right);

    /// <summary>Other sums.</summary>
    public static bool operator !=(Moments left, Moments right) => !left.Equals(right);
}
