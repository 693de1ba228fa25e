using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Shift;
using Cloveshed.SeasonFiles.Weighing;

namespace Cloveshed.SeasonFiles.Tests.Shift;

/// <summary>A week in order, written and read back; and what is said of one that was spoilt.</summary>
public sealed class ScheduleFilesTests
{
    private static readonly ShiftQuestion Question = Asked();

    [Fact]
    public void A_week_reads_back_as_it_was_written()
    {
        using TemporaryFolder folder = new();
        ShiftAnswer answer = Answer();
        ScheduleFiles.Write(Question, answer, folder["week"]);

        FileReading<ReadSchedule> reading = ScheduleFiles.Read(folder["week"], TextLanguage.English);

        Assert.Empty(reading.Faults);
        ReadSchedule read = reading.Value!;
        Assert.Equal(answer.Schedule.Runs, read.Schedule.Runs);
        Assert.Equal((answer.Costs.Late, answer.Costs.Overrun, answer.Costs.Changeover), (read.Late, read.Overrun, read.Changeover));
        Assert.Equal(Question.Settings.Monday(1), read.Week);
    }

    [Theory]
    [InlineData("schedule.csv", "T06:00", "T06.00", FaultRule.Moment, "start")]
    [InlineData("schedule.csv", "R1,", ",", FaultRule.CellEmpty, "run")]
    [InlineData("schedule.json", "2026-09-14", "14 September", FaultRule.Date, "week")]
    [InlineData("schedule.json", "\"late\": 0", "\"late\": \"none\"", FaultRule.JsonKind, "late")]
    public void What_was_spoilt_is_named(string file, string old, string by, FaultRule rule, string column)
    {
        using TemporaryFolder folder = new();
        ScheduleFiles.Write(Question, Answer(), folder["week"]);
        string path = Path.Combine(folder["week"], file), text = File.ReadAllText(path);
        Assert.Contains(old, text, StringComparison.Ordinal);
        File.WriteAllText(path, text.Replace(old, by, StringComparison.Ordinal));

        FileReading<ReadSchedule> reading = ScheduleFiles.Read(folder["week"], TextLanguage.English);

        Assert.Null(reading.Value);
        Assert.Contains(reading.Faults, fault => fault.File == file && fault.Rule == rule && fault.Column == column);
    }

    [Fact]
    public void Files_that_are_not_there_are_named_together()
    {
        using TemporaryFolder folder = new();
        Directory.CreateDirectory(folder["week"]);
        Assert.Equal([("schedule.csv", FaultRule.FileMissing), ("schedule.json", FaultRule.FileMissing)], ScheduleFiles.Read(folder["week"], TextLanguage.English).Faults.Select(fault => (fault.File, fault.Rule)));
        Assert.Equal(FaultRule.FolderMissing, Assert.Single(ScheduleFiles.Read(folder["none"], TextLanguage.English).Faults).Rule);
    }

    private static ShiftAnswer Answer()
    {
        ShiftTiming timing = new(Question);
        ShiftSchedule schedule = GreedySequence.Of(Question, timing);
        ShiftCosts costs = ShiftCosts.Of(Question, timing, schedule);
        return new ShiftAnswer(schedule, costs, 0, 0, ShiftStatus.TimeReached, 1.5, costs);
    }

    private static ShiftQuestion Asked()
    {
        Season season = new SmallSeason().Read().Season!;
        ShiftRun Run(string id, string variety) => new(
            id, new LineId("Pack 1"), LineMode.Fresh, new LotId("L1"), new VarietyId(variety), false, false, [new PlaceId("Cold 1")], 1000, 2, 120, "M", [], []);
        return new ShiftQuestion(
            season.Settings, 1, [new ShiftLine(new LineId("Pack 1"), LineMode.Fresh, 12, 180, 240, 30)], [Run("R1", "Early Sorrel"), Run("R2", "Late Sorrel")],
            [.. season.Setups.Where(row => row.Kind != SetupKind.Cleaning)], [.. season.Shifts.Where(row => row.Name != "Night")], [], []);
    }
}
