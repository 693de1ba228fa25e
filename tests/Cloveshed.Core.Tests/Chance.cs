namespace Cloveshed.Core.Tests;

/// <summary>Chance with a seed, the same on every machine.</summary>
internal sealed class Chance(uint seed)
{
    private readonly Random random = new((int)seed);

    public double Uniform() => random.NextDouble();

    /// <summary>Standard normal (G. E. P. Box and M. E. Muller, 1958).</summary>
    public double Normal() => Math.Sqrt(-2 * Math.Log(1 - Uniform())) * Math.Cos(2 * Math.PI * Uniform());

    public int Binomial(int n, double p) => Enumerable.Range(0, n).Count(_ => Uniform() < p);
}
