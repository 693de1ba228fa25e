using Cloveshed.Core.Fits;

namespace Cloveshed.Core.Tests.Fits;

/// <summary>Nonlinear least squares against certified values (NIST StRD), from both of NIST's starts.</summary>
public class CurveFitTests
{
    public static TheoryData<string, int> Sets => [.. StrdSets.All.SelectMany(set => new (string, int)[] { (set.Name, 1), (set.Name, 2) })];

    [Theory, MemberData(nameof(Sets))]
    public void Certified_values_of_NIST_are_reached_to_seven_digits(string name, int start)
    {
        StrdSet set = StrdSets.All.Single(s => s.Name == name);
        FitAnswer fit = CurveFit.Of(new FitQuestion(b => [.. set.X.Zip(set.Y, (x, y) => set.Model(b, x) - y)], start == 1 ? set.Start1 : set.Start2));
        Assert.Equal(FitEnd.Converged, fit.End);
        for (int j = 0; j < set.Certified.Length; j++)
        {
            Assert.Equal(1, fit.Parameters[j] / set.Certified[j], 1e-7);
            Assert.Equal(1, fit.StandardErrors[j] / set.CertifiedSd[j], 1e-5);
        }

        Assert.Equal(1, fit.SumOfSquares / set.SumOfSquares, 1e-9);
        Assert.Equal(1, fit.ResidualSd / set.ResidualSd, 1e-9);
        Assert.Equal(set.Y.Length - set.Certified.Length, fit.Freedom);
    }

    [Fact]
    public void What_the_data_leave_open_is_said()
    {
        // Only the sum of the two can be known.
        FitAnswer fit = CurveFit.Of(new FitQuestion(b => [b[0] + b[1] - 3, 2 * (b[0] + b[1]) - 6.1, b[0] + b[1] - 2.9], [0, 0]));
        Assert.Equal(FitEnd.Undetermined, fit.End);
        Assert.All(fit.StandardErrors, error => Assert.Equal(double.PositiveInfinity, error));
    }

    [Fact]
    public void Too_few_steps_are_said() =>
        Assert.Equal(FitEnd.StepsUsedUp, CurveFit.Of(new FitQuestion(b => [b[0] * b[0] - 2, Math.Exp(b[0]) - 5], [10], MostSteps: 2)).End);

    [Fact]
    public void A_start_without_numbers_is_refused() =>
        Assert.Throws<ArgumentException>(() => CurveFit.Of(new FitQuestion(b => [Math.Log(b[0])], [-1])));
}
