using System.Globalization;
using System.Net;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Line;
using Cloveshed.Web.Shared;
using Cloveshed.Web.Tests.Setup;
using MathNet.Numerics.Distributions;

namespace Cloveshed.Web.Tests.Line;

/// <summary>A sample typed by hand or by a scale: read, taken once, told where it is wrong, judged.</summary>
public sealed class SampleTests
{
    private static readonly Words<LineWord> English = Words.Of<LineWord>(Pictures.Language.En), Spanish = Words.Of<LineWord>(Pictures.Language.Es);

    [Theory]
    [InlineData("61.5", 61.5, null, Defect.None)]
    [InlineData("  61.5 g", 61.5, null, Defect.None)]
    [InlineData("61.5g\t52", 61.5, 52.0, Defect.None)]
    [InlineData("61.5;mold", 61.5, null, Defect.Mold)]
    [InlineData("61.5 sp 52.5", 61.5, 52.5, Defect.Sprout)]
    [InlineData("61.5 pudr", 61.5, null, Defect.Decay)]
    [InlineData("61.5 MOHO", 61.5, null, Defect.Mold)]
    public void A_line_is_a_bulb(string line, double g, double? mm, Defect defect) =>
        Assert.Equal(new TypedBulb(g, mm, defect), Assert.Single(SampleText.Of(line, line.Contains("pudr", StringComparison.Ordinal) || line.Contains("MOHO", StringComparison.Ordinal) ? Spanish : English).Bulbs));

    [Theory]
    [InlineData("heavy")]
    [InlineData("0")]
    [InlineData("-4")]
    [InlineData("5001")]
    [InlineData("61.5 52 53")]
    [InlineData("61.5 s")] // sprout, shatter, skin
    [InlineData("61.5 mold decay")]
    [InlineData("61.5 green")]
    public void A_line_that_holds_no_bulb_is_named(string line)
    {
        SampleText sample = SampleText.Of($"50\n\n{line}\n60\n", English);
        Assert.Equal(2, sample.Bulbs.Count);
        Assert.Equal(new TypedFault(3, line), Assert.Single(sample.Faults));
    }

    [Fact]
    public async Task A_sample_becomes_rows_however_often_it_is_sent()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got page = await visitor.Get("/line/sample/L1");
        for (int time = 0; time < 2; time++)
        {
            Got answer = await visitor.Send(page, "/line-facts/sample", ("date", "2026-09-02"), ("bulbs", "61.5\r\n58 52.5\r\n40.2 mold\r\n"));
            Assert.Equal((HttpStatusCode.SeeOther, "/line/sample/L1"), (answer.Status, answer.Header("Location")));
            shed.Clock.Pass(TimeSpan.FromMinutes(1));
        }

        Assert.Equal(["sample.entered", "sample.entered", "sample.entered"], shed.Ledger.Read(head).Select(fact => fact.Kind));
        SampleBulb[] bulbs = [.. shed.Ledger.Now().Season!.Samples.Where(bulb => bulb.Lot.Text == "L1" && bulb.Date == new NodaTime.LocalDate(2026, 9, 2))];
        Assert.Equal([(61.5, null, Defect.None), (58, 52.5, Defect.None), (40.2, (double?)null, Defect.Mold)], bulbs.Select(bulb => (bulb.WeightG, bulb.DiameterMm, bulb.Defect)));
        Assert.Contains("3 bulbs of lot L1 are in its samples.", (await visitor.Get("/line/sample/L1")).Read(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_wrong_is_shown_with_all_that_was_typed_and_nothing_is_written()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor("es");
        long head = shed.Ledger.Head().Seq;
        Got answer = await visitor.Send(await visitor.Get("/line/sample/L1"), "/line-facts/sample", ("date", "2026-09-02"), ("bulbs", "61.5\nx<y\n"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, answer.Status);
        Assert.Contains("El renglón 2, \"x<y\", no es una cabeza. Se esperaba un peso", answer.Read(), StringComparison.Ordinal);
        Assert.Matches("aria-invalid=\"true\"[^>]*>\\s*61.5(\n|&#xA;)x&lt;y", answer.Text);
        // What only the season's reader knows is told as well.
        Got day = await visitor.Send(answer, "/line-facts/sample", ("date", "yesterday"), ("bulbs", "61.5"));
        Assert.Equal(HttpStatusCode.UnprocessableEntity, day.Status);
        Assert.Contains("samples.csv", day.Read(), StringComparison.Ordinal);
        Assert.Equal(head, shed.Ledger.Head().Seq);
    }

    /// <summary>Four of twenty alike bulbs: Wilson 8.1 to 41.6% and Clopper-Pearson 5.7 to 43.7% are published for 95%; here 90% with MathNet's beta as referee.</summary>
    [Fact]
    public async Task The_verdict_has_both_intervals()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        await visitor.Send(await visitor.Get("/line/sample/L1"), "/line-facts/sample", ("date", "2026-09-02"), ("bulbs", string.Concat(Enumerable.Repeat("50\n", 16)) + string.Concat(Enumerable.Repeat("50 skin\n", 4))));
        string read = (await visitor.Get("/line/sample/L1?day=2026-09-02")).Read();
        const double Z = 1.6448536269514722, N = 20, P = 0.2;
        double centre = (P + Z * Z / 2 / N) / (1 + Z * Z / N), half = Z * Math.Sqrt(P * (1 - P) / N + Z * Z / (4 * N * N)) / (1 + Z * Z / N);
        Assert.Contains($"U.S. No. 1 all defects 10% 20.0% {Percent(centre - half)} to {Percent(centre + half)} {Percent(Beta.InvCDF(4, 17, 0.05))} to {Percent(Beta.InvCDF(5, 16, 0.95))} unlikely", read, StringComparison.Ordinal);
        Assert.Contains("Found: skin 4, among 20 bulbs.", read, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_bulb_that_cannot_be_so_is_flagged_with_the_way_to_its_row_and_counts()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        await visitor.Send(await visitor.Get("/line/sample/L1"), "/line-facts/sample", ("date", "2026-09-02"), ("bulbs", "61.5 52\n615 52\n"));
        Got page = await visitor.Get("/line/sample/L1");
        Assert.Contains("href=\"/setup/samples/5\"", page.Text, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await visitor.Get("/setup/samples/5")).Status);
        Assert.Contains(shed.Ledger.Now().Season!.Samples, bulb => bulb.WeightG == 615);
    }

    private static string Percent(double share) => (share * 100).ToString("0.0", CultureInfo.InvariantCulture) + "%";
}
