using Cloveshed.Core.Lots;

namespace Cloveshed.Core.Tests.Handbook;

public class TrigammaTests
{
    /// <summary>Abramowitz and Stegun, Handbook of Mathematical Functions, 6.4: psi'(1) = pi^2/6, psi'(1/2) = pi^2/2, psi'(2) = pi^2/6 - 1 (from memory).</summary>
    [Theory]
    [InlineData(1, 1.6449340668482264)]
    [InlineData(0.5, 4.934802200544679)]
    [InlineData(2, 0.6449340668482264)]
    public void Trigamma_has_its_closed_values(double x, double value) => Assert.Equal(value, SpreadPooling.Trigamma(x), 1e-12);

    [Theory]
    [InlineData(0.01)]
    [InlineData(1.7)]
    [InlineData(40)]
    [InlineData(3000)]
    public void Its_inverse_inverts(double x) => Assert.Equal(1, SpreadPooling.TrigammaInverse(SpreadPooling.Trigamma(x)) / x, 1e-9);
}
