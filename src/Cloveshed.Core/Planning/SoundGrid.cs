namespace Cloveshed.Core.Planning;

/// <summary>Sound shares over life used, read between the points of a fine grid: near enough to choose by, what is chosen is valued exactly.</summary>
internal sealed class SoundGrid
{
    private const double Finest = 1.0 / 1024;
    private const int Points = 4096;
    private readonly double[] _sound = new double[Points + 1];

    internal SoundGrid(Func<double, double> share)
    {
        for (int k = 0; k <= Points; k++) _sound[k] = share(k * Finest);
    }

    /// <summary>Beyond the grid, what holds at its end.</summary>
    internal double this[double life]
    {
        get
        {
            double x = life * (1 / Finest);
            if (x >= Points) return _sound[Points];
            int k = (int)x;
            return _sound[k] + (x - k) * (_sound[k + 1] - _sound[k]);
        }
    }
}
