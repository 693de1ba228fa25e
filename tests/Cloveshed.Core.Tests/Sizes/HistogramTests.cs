using Cloveshed.Core.Quantities;
using Cloveshed.Core.Sizes;
using CsCheck;

namespace Cloveshed.Core.Tests.Sizes;

public class HistogramTests
{
    private static readonly Gen<int[]> Bulbs = Gen.Int[0, 60_000].Array[0, 200];

    private static WeightHistogram Of(IEnumerable<int> tenths)
    {
        var histogram = new WeightHistogram();
        foreach (int t in tenths)
            histogram.AddTenths(t, 1);
        return histogram;
    }

    private static bool Same(WeightHistogram a, WeightHistogram b) =>
        a.TooHeavy == b.TooHeavy && Enumerable.Range(0, WeightHistogram.Cells).All(cell => a[cell] == b[cell]);

    [Fact]
    public void Joining_is_exact_associative_and_the_same_in_any_order() =>
        Gen.Select(Bulbs, Bulbs, Bulbs).Sample((a, b, c) =>
        {
            WeightHistogram left = Of(a), right = Of(b), whole = Of([.. c, .. a, .. b]);
            left.Join(right);
            left.Join(Of(c));
            WeightHistogram inner = Of(b), outer = Of(a);
            inner.Join(Of(c));
            outer.Join(inner);
            return Same(left, outer) && Same(left, whole) && whole.Bulbs + whole.TooHeavy == a.Length + b.Length + c.Length;
        }, iter: 30);

    [Fact]
    public void Taking_a_bulb_allocates_nothing()
    {
        var histogram = new WeightHistogram();
        histogram.Add(PieceMass.FromTenths(453));
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int k = 0; k < 10_000; k++)
            histogram.AddTenths(300 + k % 700, 1);
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.Equal(10_001, histogram.Bulbs);
    }

    [Fact]
    public void What_is_no_bulb_is_refused_or_counted_apart()
    {
        var histogram = new WeightHistogram();
        histogram.AddTenths(50_000, 2);
        histogram.AddTenths(50_001, 3);
        Assert.Equal((2, 3), (histogram.Bulbs, histogram.TooHeavy));
        Assert.Throws<ArgumentOutOfRangeException>(() => histogram.AddTenths(-1, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => histogram.AddTenths(1, -1));
    }

    /// <summary>MathNet's own descriptive statistics as referee.</summary>
    [Fact]
    public void Moments_are_those_of_MathNet_however_they_are_joined() =>
        Gen.Select(Gen.Double[0.1, 200].Array[2, 60], Gen.Double[0.1, 200].Array[1, 60]).Sample((a, b) =>
        {
            Moments left = default, right = default;
            foreach (double x in a)
                left.Add(x);
            foreach (double x in b)
                right.Add(x);
            left.Join(right);
            var referee = new MathNet.Numerics.Statistics.DescriptiveStatistics([.. a, .. b]);
            Assert.Equal(referee.Mean, left.Mean, 1e-9);
            Assert.Equal(referee.StandardDeviation, left.Sd, 1e-9);
        }, iter: 200);
}
