using Cloveshed.Core.Grading;
using Cloveshed.Core.Seasons;
using CsCheck;
using NodaTime;

namespace Cloveshed.Core.Tests.Grading;

public class GradingTests
{
    /// <summary>
    /// 4 defective of 20, the example of NIST/SEMATECH e-Handbook of Statistical Methods 7.2.4.1 and 7.2.4.2 (inputs and method seen there,
    /// figures recomputed).
    /// </summary>
    [Theory]
    [InlineData(0.90, 0.093118, 0.378377, 0.071354, 0.401028)]
    [InlineData(0.95, 0.080658, 0.416017, 0.057334, 0.436614)]
    public void Four_of_twenty_has_the_handbooks_intervals(double confidence, double wilsonLow, double wilsonHigh, double exactLow, double exactHigh)
    {
        ShareInterval wilson = ShareInterval.Wilson(4, 20, confidence), exact = ShareInterval.Exact(4, 20, confidence);
        Assert.Equal(wilsonLow, wilson.Low, 1e-6);
        Assert.Equal(wilsonHigh, wilson.High, 1e-6);
        Assert.Equal(exactLow, exact.Low, 1e-6);
        Assert.Equal(exactHigh, exact.High, 1e-6);
    }

    /// <summary>The ends of the exact interval are where the binomial's tails are what was asked (MathNet's binomial as referee).</summary>
    [Fact]
    public void Exact_ends_leave_the_tails_that_they_promise() =>
        Gen.Select(Gen.Int[1, 300], Gen.Double[0, 1], Gen.Double[0.5, 0.99]).Sample((n, part, confidence) =>
        {
            int x = (int)(part * n);
            ShareInterval exact = ShareInterval.Exact(x, n, confidence);
            double tail = (1 - confidence) / 2;
            if (x > 0)
                Assert.Equal(tail, 1 - MathNet.Numerics.Distributions.Binomial.CDF(exact.Low, n, x - 1), 1e-6);
            if (x < n)
                Assert.Equal(tail, MathNet.Numerics.Distributions.Binomial.CDF(exact.High, n, x), 1e-6);
        }, iter: 300);

    /// <summary>U.S. No. 1: 10% defects, therein 2% decay, by weight (USDA AMS, Garlic Grades and Standards).</summary>
    [Fact]
    public void The_verdict_follows_the_interval_and_the_further_bulbs_settle_it()
    {
        Assert.Equal(GradeVerdict.Makes, Of(400, 12, 0).Verdict);
        Assert.Equal(GradeVerdict.Fails, Of(400, 70, 0).Verdict);
        Assert.Equal(GradeVerdict.Fails, Of(400, 20, 20).Verdict);
        GradeAnswer likely = Of(100, 7, 0);
        Assert.Equal(GradeVerdict.Likely, likely.Verdict);
        Assert.Equal(GradeVerdict.Unlikely, Of(100, 12, 0).Verdict);
        int more = likely.Limits[0].MoreBulbs!.Value;
        Assert.True(more > 0);
        double all = likely.Bulbs + more, share = likely.Limits[0].Found.Share;
        Assert.True(ShareInterval.Wilson(share * all, all, 0.9).High <= 0.1);
        Assert.True(ShareInterval.Wilson(share * (all - 1), all - 1, 0.9).High > 0.1);
    }

    [Fact]
    public void Heavy_bulbs_weigh_more_and_a_few_of_them_are_less_sure()
    {
        SampleBulb[] bulbs = [Bulb(100, Defect.Skin), .. Enumerable.Range(0, 10).Select(_ => Bulb(20, Defect.None))];
        GradeAnswer answer = GradeJudging.Of(bulbs, GradeRule.UsNo1, 0.9);
        Assert.Equal(100 / 300.0, answer.Limits[0].Found.Share, 1e-12);
        Assert.Equal(300 * 300 / (100 * 100 + 10 * 400.0), answer.Bulbs, 1e-12);
    }

    /// <summary>The binomial by adding up its terms: 50 lb of 100 g bulbs are 227; at most 11 of them may be off size at 5%.</summary>
    [Fact]
    public void The_inspectors_risk_is_the_binomials()
    {
        Inspection inspection = new(22.6796185, 0.05);
        Assert.Equal(227, InspectionRisk.Bulbs(inspection, 100, 0));
        double pass = 0;
        for (int k = 0; k <= 11; k++)
            pass += Math.Exp(MathNet.Numerics.SpecialFunctions.FactorialLn(227) - MathNet.Numerics.SpecialFunctions.FactorialLn(k) - MathNet.Numerics.SpecialFunctions.FactorialLn(227 - k) + k * Math.Log(0.04) + (227 - k) * Math.Log(0.96));
        Assert.Equal(1 - pass, InspectionRisk.Refused(inspection, 0.04, 100, 0), 1e-9);
        double most = InspectionRisk.MostWrong(inspection, 0.1, 100, 0);
        Assert.Equal(0.1, InspectionRisk.Refused(inspection, most, 100, 0), 1e-6);
        Assert.True(most < 0.05);
    }

    private static GradeAnswer Of(int bulbs, int skin, int decay) => GradeJudging.Of(
        [.. Enumerable.Range(0, bulbs).Select(k => Bulb(50, k < skin ? Defect.Skin : k < skin + decay ? Defect.Decay : Defect.None))], GradeRule.UsNo1, 0.9);

    private static SampleBulb Bulb(double g, Defect defect) => new(new("L"), new LocalDate(2026, 9, 1), g, null, defect);
}
