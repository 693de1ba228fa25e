using System.Net;
using System.Text;
using Cloveshed.Core;
using Cloveshed.Ledger;
using Cloveshed.Web.Line;
using Cloveshed.Web.Tests.Setup;

namespace Cloveshed.Web.Tests.Line;

/// <summary>A sizer's file: read as it streams, taken whole or not at all, told where it is wrong.</summary>
public sealed class CountTests
{
    [Theory]
    [InlineData("weight_g\n61.5\n61.5\n40\n", 3, 2)]
    [InlineData("Weight (g),Count\r\n61.5,2\r\n40,1\r\n\r\n", 3, 2)]
    [InlineData("\uFEFFgrade;weight_g;bulbs\nA;61.5;2\nB;40;\n", 3, 2)] // an empty count is one bulb
    [InlineData("count\tgrams\n2\t61.50\n1\t\"40\"", 3, 2)]
    [InlineData("weight_lb,count\n0.135584291,2\n0.088184905,1\n", 3, 2)] // 61.5 g and 40 g, at 453.59237 g to the pound
    public async Task Weights_are_counted_by_tenths_of_a_gram(string text, long bulbs, long at615)
    {
        CountReader reader = await Read(text);
        Assert.Equal((0, bulbs, at615, 1L), (reader.Faults, reader.Bulbs, reader.Histogram[615], reader.Histogram[400]));
    }

    [Theory]
    [InlineData("", CountFaultKind.NoHeader, null, null)]
    [InlineData("size\n61.5\n", CountFaultKind.NoWeight, 1L, null)]
    [InlineData("weight_g,weight_lb\n61.5,0.1\n", CountFaultKind.TwoUnits, 1L, null)]
    [InlineData("weight_g\n61.5\nheavy\n", CountFaultKind.NotANumber, 3L, "heavy")]
    [InlineData("weight_g\n61,5\n", CountFaultKind.Cells, 2L, "61,5")] // a decimal comma is not read as 61
    [InlineData("weight_g\n\n0\n", CountFaultKind.OutOfBounds, 3L, "0")]
    [InlineData("weight_g\n5001\n", CountFaultKind.OutOfBounds, 2L, "5001")]
    [InlineData("weight_g,count\n50,1.5\n", CountFaultKind.NotWhole, 2L, "1.5")]
    [InlineData("weight_g,count\n50,-1\n", CountFaultKind.NotWhole, 2L, "-1")]
    [InlineData("weight_g\n\n", CountFaultKind.NoBulbs, null, null)]
    public async Task What_is_wrong_is_told_with_its_line_and_value(string text, CountFaultKind kind, long? line, string? value)
    {
        CountReader reader = await Read(text);
        CountFault fault = Assert.Single(reader.Told);
        Assert.Equal(kind, fault.Kind);
        if (line is not null)
        {
            Assert.Equal(line, fault.Line);
        }

        if (value is not null)
        {
            Assert.Equal(value, fault.Value);
        }
    }

    /// <summary>However the stream is cut, the counts are those of a plain reading of the whole.</summary>
    [Fact]
    public async Task Parts_of_any_length_count_alike()
    {
        var random = new Random(7);
        int[] tenths = [.. Enumerable.Range(0, 5000).Select(_ => random.Next(100, 1500))];
        byte[] bytes = Encoding.UTF8.GetBytes("weight_g\n" + string.Concat(tenths.Select(one => (one / 10.0).ToString(System.Globalization.CultureInfo.InvariantCulture) + "\r\n")));
        foreach (int part in new[] { 1, 7, 4096 })
        {
            CountReader reader = new();
            await reader.Read(new Dripping(bytes, part), (_, _) => { }, TestContext.Current.CancellationToken);
            Assert.Equal(5000, reader.Bulbs);
            Assert.All(tenths.CountBy(one => one), one => Assert.Equal(one.Value, reader.Histogram[one.Key]));
        }
    }

    [Fact]
    public async Task A_file_becomes_one_fact_and_stands_against_what_was_expected()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        long head = shed.Ledger.Head().Seq;
        Got page = await visitor.Get("/line/count/L1");
        byte[] file = Encoding.UTF8.GetBytes("weight_g,count\n40,100\n55.5,300\n80,50\n");
        Got answer = await Send(visitor, page, "morning run.csv", file, "12");
        Assert.Equal(HttpStatusCode.SeeOther, answer.Status);
        Got then = await Ended(visitor, answer.Header("Location"));
        Assert.Contains("morning run.csv is taken in: 450 bulbs of 12 bins.", then.Read(), StringComparison.Ordinal);
        await Send(visitor, page, "morning run.csv", file, "12");
        Assert.Equal(head + 1, shed.Ledger.Head().Seq);
        SizerTotal total = shed.Ledger.Now().SizerTotal(new LotId("L1"))!;
        Assert.Equal((12, 450L, 300L), (total.BinsRun, total.Counts.Bulbs, total.Counts[555]));

        // By the sizer's weights, and on the curve.
        string sizer = (await visitor.Get("/line/sizer/L1")).Read();
        Assert.Contains("By the 450 bulbs that the sizer counted in 12 bins", sizer, StringComparison.Ordinal);
        Assert.Contains("class=\"curve-counted\"", (await visitor.Get("/line/sizer/L1")).Text, StringComparison.Ordinal);
        Assert.Contains("as expected", then.Read(), StringComparison.Ordinal);

        // Taken back it no longer counts, once.
        for (int time = 0; time < 2; time++)
        {
            await visitor.Send(then, "/line-facts/count/drop");
            shed.Clock.Pass(TimeSpan.FromMinutes(1));
        }

        Assert.Equal(head + 2, shed.Ledger.Head().Seq);
        Assert.Null(shed.Ledger.Now().SizerTotal(new LotId("L1")));
        Assert.Empty(shed.Ledger.Verify().Flaws);
    }

    [Fact]
    public async Task A_file_with_a_fault_is_told_line_by_line_and_nothing_of_it_is_taken_in()
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor("es");
        long head = shed.Ledger.Head().Seq;
        Got answer = await Send(visitor, await visitor.Get("/line/count/L1"), "corrida.csv", "weight_g\n61.5\npesado\n6001\n"u8.ToArray(), "3");
        string read = (await Ended(visitor, answer.Header("Location"))).Read();
        Assert.Contains("corrida.csv no se metió: 2 fallas.", read, StringComparison.Ordinal);
        Assert.Contains("corrida.csv, renglón 3, weight_g: \"pesado\". Se esperaba un peso con dígitos y punto decimal. Corrija el renglón", read, StringComparison.Ordinal);
        Assert.Contains("corrida.csv, renglón 4, weight_g: \"6001\". Se esperaba un peso mayor que 0 y a lo más 5000 g.", read, StringComparison.Ordinal);
        Assert.Equal(head, shed.Ledger.Head().Seq);
    }

    /// <summary>A page that read the state just before the fact came in asks again, and does not tell of a count that it cannot show.</summary>
    [Fact]
    public async Task A_state_without_the_fact_is_not_told_that_it_is_taken()
    {
        await using ServedShed shed = await SmallShed.Open();
        CountRoom room = shed.Part<CountRoom>();
        ShedState before = shed.Ledger.Now();
        string path = room.NewPath();
        await File.WriteAllTextAsync(path, "weight_g\n61.5\n", TestContext.Current.CancellationToken);
        CountJob job = room.Take(new CountJob(Guid.CreateVersion7(), new LotId("L1"), "morning.csv", 30, 15, new FactOrigin(shed.Clock.GetLocalNow(), "test"), SeasonFiles.Faults.TextLanguage.English), path);
        Assert.True(SpinWait.SpinUntil(() => job.Stage != CountStage.Reading, TimeSpan.FromSeconds(60)), "The file is not read.");
        Assert.Equal("", job.Why);
        Assert.Equal((CountStage.Reading, CountStage.Taken), (job.StageIn(before), job.StageIn(shed.Ledger.Now())));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("some")]
    public async Task Bins_must_be_said(string bins)
    {
        await using ServedShed shed = await SmallShed.Open();
        using Visitor visitor = shed.Visitor();
        await Send(visitor, await visitor.Get("/line/count/L1"), "x.csv", "weight_g\n61.5\n"u8.ToArray(), bins);
        Assert.Contains("Say how many bins the file is of", (await visitor.Get("/line/count/L1")).Read(), StringComparison.Ordinal);
    }

    private static async Task<CountReader> Read(string text)
    {
        CountReader reader = new();
        using MemoryStream stream = new(Encoding.UTF8.GetBytes(text));
        await reader.Read(stream, (_, _) => { }, TestContext.Current.CancellationToken);
        return reader;
    }

    private static async Task<Got> Send(Visitor visitor, Got page, string name, byte[] bytes, string bins)
    {
        const string Action = "/line-facts/count";
        using MultipartFormDataContent content = [];
        foreach ((string field, string value) in SmallShed.Fields(page, Action))
        {
            content.Add(new StringContent(field == "bins" ? bins : value), field);
        }

        content.Add(new ByteArrayContent(bytes), "file", name);
        using HttpResponseMessage answer = await visitor.Client.PostAsync(new Uri(Action, UriKind.Relative), content, TestContext.Current.CancellationToken);
        return new Got(answer.StatusCode, await answer.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), answer);
    }

    private static async Task<Got> Ended(Visitor visitor, string path)
    {
        for (int look = 0; ; look++)
        {
            Got page = await visitor.Get(path);
            if (!page.Text.Contains("id=\"count-job\"", StringComparison.Ordinal))
            {
                return page;
            }

            Assert.True(look < 300, "The file is not read.");
            await Task.Delay(100, TestContext.Current.CancellationToken);
        }
    }

    /// <summary>Gives its bytes a few at a time.</summary>
    private sealed class Dripping(byte[] bytes, int part) : MemoryStream(bytes)
    {
        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default) => base.ReadAsync(buffer[..Math.Min(part, buffer.Length)], cancellationToken);
    }
}
