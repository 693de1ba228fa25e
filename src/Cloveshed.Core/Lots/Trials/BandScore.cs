namespace Cloveshed.Core.Lots.Trials;

/// <summary>How 80% bands did where the answer is known. A class that is less than a two-hundredth of its lot is left out: it is easily right.</summary>
/// <param name="Lots">Lots tried.</param>
/// <param name="Shares">Class shares compared.</param>
/// <param name="Held">Of these, the shares that lay in their band; four in five is what a band promises.</param>
/// <param name="RawOff">Root mean square error of what the raw sample says of a share.</param>
/// <param name="CountsOff">The same of the sample's class counts, pooled as counts alone (<see cref="ClassCountPooling"/>): the plainer way, which the curve has to beat.</param>
/// <param name="PooledOff">The same of the pooled curve.</param>
public sealed record BandScore(int Lots, int Shares, double Held, double RawOff, double CountsOff, double PooledOff)
{
    /// <summary>What is asked of the bands: 75 to 85 in a hundred.</summary>
    public const double LeastHeld = 0.75, MostHeld = 0.85;

    /// <summary>True shares under this are not compared.</summary>
    internal const double LeastShare = 0.005;

    /// <summary>Whether the bands keep their promise.</summary>
    public bool Honest => Held is >= LeastHeld and <= MostHeld;
}

/// <summary>Adds a <see cref="BandScore"/> up.</summary>
internal sealed class Scoring
{
    private int lots, shares, held;
    private double raw, counts, pooled;

    public void Lot() => lots++;

    public void Share(double truth, double rawSays, double countsSay, double pooledSays, Band band)
    {
        shares++;
        held += band.Low <= truth && truth <= band.High ? 1 : 0;
        raw += (rawSays - truth) * (rawSays - truth);
        counts += (countsSay - truth) * (countsSay - truth);
        pooled += (pooledSays - truth) * (pooledSays - truth);
    }

    /// <summary>Null where nothing was compared.</summary>
    public BandScore? Score => shares == 0 ? null : new(lots, shares, held / (double)shares, Math.Sqrt(raw / shares), Math.Sqrt(counts / shares), Math.Sqrt(pooled / shares));
}
