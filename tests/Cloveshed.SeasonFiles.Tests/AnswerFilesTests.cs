using System.Text;
using System.Text.Json;
using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.SeasonFiles.Tests;

public sealed class AnswerFilesTests
{
    private static readonly Season Season = new SmallSeason().Read().Season!;

    internal static readonly PlanAnswer Answer = new(
        new PlanSummary(
            1234.5, 1250, 0.0125, 0.01, 1e-7, 12.25, PlanStatus.GapReached, 2000,
            new Dictionary<string, double> { ["orders"] = 1500, ["market"] = 500 }, new Dictionary<string, double> { ["seed short"] = 1.5 },
            new Dictionary<string, double> { ["M30"] = 0.995 }, [new DefaultUsed("fresh_share", "0.8", "no samples of \"L2\"", null, 12.5)],
            ["years of ñ"], "0.1.0", "abc", new Dictionary<string, double> { ["columns"] = 4200 })
        {
            Sizes = [new LotSizes(new LotId("L1"), "samples n=60, shrunk toward variety", 52.5, 50, 55.25, [new SizeShare(new SizeClassId("M"), 0.5, 0.4, 0.6)])],
            SizeTotals = [new SizeTotal(new SizeClassId("M"), 1200.5, 1100, 1301)],
        },
        [
            new PathWeek("P1", new LotId("L1"), new PlaceId("Yard"), 0, new PlaceId("Yard"), 1, 0.8, 0.1, 0.000012345),
            new PathWeek("P1", new LotId("L1"), new PlaceId("Yard"), 10, new PlaceId("Cold 1"), 1.0 / 3, 0.8, 0.1, 0.5),
        ],
        [new LotShare(new LotId("L1"), ShareKind.BulbClass, "under", 0.25), new LotShare(new LotId("L1"), ShareKind.CloveGrade, "ungraded", 1)],
        [
            new RunRow("R1", 0, new LineId("Pack 1"), LineMode.Fresh, false, new LotId("L1"), "P1", new PlaceId("Yard"), 54000, 54000, 9.5, 0, "first, \"because\""),
            new RunRow("R2", 1, new LineId("Cracker"), LineMode.Crack, true, new LotId("L1"), null, null, 100, 0, 0.1, 0.2, ""),
        ],
        [new SortedRow("R1", new LotId("L1"), 0, 1e-9)],
        [new MadeRow("R1", 0, new ProductId("M30"), new LotId("L1"), 1234567.125, 37037013.75)],
        [new FillRow(new OrderId("O1"), "1", 2, new ProductId("L30"), 100)],
        [new SaleRow(3, new ProductId("M30"), 7)],
        [
            new AsIsRow(false, 4, new LotId("L1"), "P1", new PlaceId("Yard"), 10, 11),
            new AsIsRow(true, 5, new LotId("L1"), "P1", new PlaceId("Yard"), 10, 11),
        ],
        [new ShortRow(new OrderId("O1"), "2", 3, "no\nlarge bulbs")],
        [new KeepRow(9, new LotId("L1"), "P1", new PlaceId("Cold 1"), 12.5, 11250)],
        [new MoveRow(1, new LotId("L1"), new PlaceId("Yard"), new PlaceId("Cold 1"), 12.5)],
        [new RoomRow(new PlaceId("Room 1"), 2, 7), new RoomRow(new PlaceId("Room 2"), 2, null)],
        [new SeedRow("R3", 3, new VarietyId("Early Sorrel"), new LotId("L1"), SeedClass.A, SeedClass.B, new LocalDate(2026, 10, 5), 4000)],
        [new WorthRow("lot", "L1", null, 0.25), new WorthRow("people", "", 3, 12)]);

    /// <summary>The columns are those of the contract, in its order.</summary>
    [Theory]
    [InlineData("paths.csv", "path,lot,from_place,week,place,mass_ratio,fresh_share,crack_share,life_used", "P1,L1,Yard,2026-09-07,Yard,1,0.8,0.1,0.000012345")]
    [InlineData("shares.csv", "lot,kind,name,share", "L1,bulb class,under,0.25")]
    [InlineData("runs.csv", "run,week,line,mode,source,lot,path,place,mass_in,mass_at_start,hours,overtime_hours,reason", "R1,2026-09-07,Pack 1,fresh,lot,L1,P1,Yard,54000,54000,9.5,0,\"first, \"\"because\"\"\"")]
    [InlineData("sorted.csv", "run,lot,week,mass", "R1,L1,2026-09-07,0.000000001")]
    [InlineData("made.csv", "run,week,product,lot,units,mass", "R1,2026-09-07,M30,L1,1234567.125,37037013.75")]
    [InlineData("fills.csv", "order,line,week,product,units", "O1,1,2026-09-21,L30,100")]
    [InlineData("sales.csv", "week,product,units", "2026-09-28,M30,7")]
    [InlineData("as-is.csv", "kind,week,lot,path,place,mass,mass_at_start", "sold,2026-10-05,L1,P1,Yard,10,11")]
    [InlineData("shorts.csv", "order,line,units,why", "O1,2,3,\"no\nlarge bulbs\"")]
    [InlineData("keeps.csv", "week,lot,path,place,bins,mass_at_start", "2026-11-09,L1,P1,Cold 1,12.5,11250")]
    [InlineData("moves.csv", "week,lot,from,to,bins", "2026-09-14,L1,Yard,Cold 1,12.5")]
    [InlineData("rooms.csv", "place,sealed,opened", "Room 1,2026-09-21,2026-10-26")]
    [InlineData("seed.csv", "run,week,variety,lot,seed_class,need_class,by,cloves", "R3,2026-09-28,Early Sorrel,L1,A,B,2026-10-05,4000")]
    [InlineData("worths.csv", "kind,name,week,value", "lot,L1,,0.25")]
    public void Files_have_the_contracts_columns_and_cells(string file, string header, string firstRow)
    {
        string text = Encoding.UTF8.GetString(AnswerWriter.Render(Answer, Season).Single(it => it.Name == file).Bytes);

        Assert.StartsWith(header + "\r\n" + firstRow + "\r\n", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_paths_end_with_the_Monday_after_the_season()
    {
        string text = Encoding.UTF8.GetString(AnswerWriter.Render(Answer, Season).Single(it => it.Name == "paths.csv").Bytes);

        Assert.Contains("P1,L1,Yard,2026-11-16,Cold 1,0.3333333333333333,", text, StringComparison.Ordinal); // ten weeks after 7 September 2026
    }

    [Fact]
    public void The_summary_has_the_contracts_keys()
    {
        using JsonDocument summary = JsonDocument.Parse(AnswerWriter.Render(Answer, Season)[^1].Bytes);

        foreach (string key in new[]
            {
                "value", "bound", "gap", "gap_of_revenue", "gap_given_rooms", "seconds", "status", "revenue", "revenues", "costs",
                "fill_share", "defaults_used", "warnings", "version", "input_digest", "model", "sizes",
            })
            Assert.True(summary.RootElement.TryGetProperty(key, out _), key);
        Assert.Equal("gap", summary.RootElement.GetProperty("status").GetString());
        Assert.Equal(1e-7, summary.RootElement.GetProperty("gap_given_rooms").GetDouble());
        Assert.Equal("no samples of \"L2\"", summary.RootElement.GetProperty("defaults_used")[0].GetProperty("why").GetString());
    }

    [Fact]
    public void What_is_written_reads_back_the_same()
    {
        using TemporaryFolder folder = new();

        AnswerWriter.Write(Answer, Season, folder["out"]);
        AnswerReading reading = AnswerReader.Read(folder["out"], Season);

        Assert.Empty(reading.Faults);
        Assert.Equivalent(Answer, reading.Answer, strict: true);
    }

    [Fact]
    public void Every_file_is_written_also_without_rows()
    {
        using TemporaryFolder folder = new();
        PlanAnswer empty = new(Answer.Summary, [], [], [], [], [], [], [], [], [], [], [], [], [], []);

        AnswerWriter.Write(empty, Season, folder["out"]);

        Assert.Equal(15, Directory.GetFiles(folder["out"]).Length);
        Assert.Equivalent(empty, AnswerReader.Read(folder["out"], Season).Answer, strict: true);
    }

    [Fact]
    public void A_bound_that_is_not_known_is_null()
    {
        PlanAnswer unbounded = Answer with { Summary = Answer.Summary with { Bound = double.PositiveInfinity } };

        using JsonDocument summary = JsonDocument.Parse(AnswerWriter.Render(unbounded, Season)[^1].Bytes);

        Assert.Equal(JsonValueKind.Null, summary.RootElement.GetProperty("bound").ValueKind);
    }

    [Fact]
    public void A_number_that_is_not_finite_is_never_written_to_a_table()
    {
        PlanAnswer broken = Answer with { Sales = [], Sorted = [new SortedRow("R1", new LotId("L1"), 0, double.NaN)] };

        Assert.Throws<ArgumentOutOfRangeException>(() => AnswerWriter.Render(broken, Season));
    }
}
