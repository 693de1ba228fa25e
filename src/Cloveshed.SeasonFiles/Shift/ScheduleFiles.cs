using System.Text.Json;
using Cloveshed.Core;
using Cloveshed.Core.Shift;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;
using Cloveshed.SeasonFiles.Weighing;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.SeasonFiles.Shift;

/// <summary>What a folder says of a week in order: when each run is, and what it says that this costs.</summary>
/// <param name="Week">Its Monday.</param>
public sealed record ReadSchedule(LocalDate Week, ShiftSchedule Schedule, double Late, double Overrun, double Changeover);

/// <summary>
/// A week in order as files: schedule.csv has a row for each run, late.csv what docks do not find ready, schedule.json the costs and how the
/// search ended. Of these the check reads run, line, start and end, and the costs; the rest is for people and can be worked out again.
/// </summary>
public static class ScheduleFiles
{
    public const string ScheduleName = "schedule.csv", LateName = "late.csv", SummaryName = "schedule.json";

    private static readonly LocalDateTimePattern Minute = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd'T'HH:mm");

    private static readonly FileLayout Rows = new(ScheduleName, needed: true);
    private static readonly Column Run = Rows.NeededText("run"), Line = Rows.NeededText("line"), Position = Rows.Number("position", Bounds.AnyWhole), Lot = Rows.Text("lot"),
        Start = Rows.NeededText("start"), End = Rows.NeededText("end"), Minutes = Rows.Number("minutes", Bounds.AnyWhole), Setup = Rows.Number("setup_minutes", Bounds.AnyWhole),
        CleanOut = Rows.YesNo("clean_out"), Travel = Rows.Number("travel_minutes", Bounds.AnyWhole), Heads = Rows.Number("heads", Bounds.Any);

    private static readonly FileLayout Late = LateLayout();

    private static readonly string[] Keys =
    [
        "week", "late", "overrun", "first_bound", "first_gap", "changeover", "changeover_bound", "changeover_gap", "overrun_minutes", "setup_minutes", "clean_outs", "greedy_first",
        "greedy_changeover", "seconds", "status", "defaults",
    ];

    private static readonly string[] CostKeys = ["late", "overrun", "changeover"];

    /// <summary>The columns of the two tables, for the manual's test.</summary>
    internal static IReadOnlyList<FileLayout> Layouts => [Rows, Late];

    /// <summary>The files by name, schedule.json last; pure.</summary>
    public static IReadOnlyList<(string Name, byte[] Bytes)> Render(ShiftQuestion question, ShiftAnswer answer)
    {
        Dictionary<string, ShiftRun> runs = question.Runs.ToDictionary(run => run.Id);
        SetupTable setups = new(question);
        CsvText rows = new(Rows), late = new(Late);
        foreach (ShiftLine line in question.Lines)
        {
            ShiftRun? before = null;
            foreach ((int at, PlacedRun placed) in answer.Schedule.Of(line.Id).Index())
            {
                ShiftRun run = runs[placed.Run];
                SetUp setUp = before is null ? setups.First(run) : setups.Between(before, run);
                rows.Text(placed.Run).Text(line.Id.Text).Whole(at + 1).Text(run.Lot.Text).Text(Text(question, placed.Start)).Text(Text(question, placed.End)).Whole(run.Minutes)
                    .Whole(setUp.Minutes).YesNo(setUp.CleanOut).Whole(setUp.TravelMinutes).Number(line.Heads).EndRow();
                before = run;
            }
        }

        foreach (DockShort row in answer.Costs.Shorts)
            late.Text(row.Need.Product.Text).Text(Text(question, row.Need.Minute)).Number(row.Units).Number(row.Cost)
                .Text(string.Join("; ", row.Need.Loads.Select(load => $"{load.Order} {load.Number}"))).EndRow();
        return [(ScheduleName, rows.ToBytes()), (LateName, late.ToBytes()), (SummaryName, Summary(question, answer))];
    }

    /// <summary>Into a folder, all files or none; files of other names in it stay.</summary>
    public static void Write(ShiftQuestion question, ShiftAnswer answer, string folder) => FolderSwap.Put(folder, Render(question, answer));

    /// <summary>Reads a folder back, every fault at once.</summary>
    public static FileReading<ReadSchedule> Read(string folder, TextLanguage language)
    {
        FaultList faults = new(language);
        ReadSchedule? read = null;
        if (!Directory.Exists(folder))
            faults.Add(FaultRule.FolderMissing, folder, null, null, null);
        else
        {
            byte[]? rows = Bytes(folder, ScheduleName, faults), summary = Bytes(folder, SummaryName, faults);
            read = rows is null || summary is null ? null : Parse(rows, summary, faults);
        }

        return new FileReading<ReadSchedule>(
            faults.Count == 0 ? read : null, faults.InOrder([ScheduleName, SummaryName]), faults.Count, faults.WarningsInOrder([ScheduleName, SummaryName]));
    }

    private static ReadSchedule? Parse(byte[] rows, byte[] summary, FaultList faults)
    {
        if (JsonKeys.Read(SummaryName, summary, Keys, faults) is not { } json)
            return null;
        LocalDate? week = json.Text("week", "\"2026-10-05\"", needed: true) is { } text ? IsoDate.Read(System.Text.Encoding.UTF8.GetBytes(text)) : null;
        if (week is null && json.Sound)
            json.Fault(FaultRule.Date, "week");
        decimal?[] costs = [.. CostKeys.Select(key => json.Number(key, "12.5", Bounds.Any, needed: true))];
        Table table = new(Rows, rows, faults);
        Cells cells = table.Cells;
        List<PlacedRun> placed = [];
        LocalDateTime monday = (week ?? new LocalDate(2024, 1, 1)).AtMidnight();
        while (table.Next())
        {
            PlacedRun row = new(cells.Text(Run) ?? "", new LineId(cells.Text(Line) ?? ""), Moment(table, Start, monday), Moment(table, End, monday));
            if (table.RowSound)
                placed.Add(row);
        }

        return faults.Count == 0 ? new ReadSchedule(week!.Value, new ShiftSchedule(placed), (double)costs[0]!.Value, (double)costs[1]!.Value, (double)costs[2]!.Value) : null;
    }

    private static FileLayout LateLayout()
    {
        FileLayout late = new(LateName, needed: true);
        late.NeededText("product");
        late.NeededText("dock");
        late.NeededNumber("units_short", Bounds.Any);
        late.NeededNumber("cost", Bounds.Any);
        late.Text("orders");
        return late;
    }

    private static int Moment(Table table, Column column, LocalDateTime monday)
    {
        if (table.Cells.IsEmpty(column))
        {
            table.Fault(FaultRule.CellEmpty, column);
            return 0;
        }

        if (Minute.Parse(table.Cells.Canonical(column)) is { Success: true, Value: var moment } && Period.Between(monday, moment, PeriodUnits.Minutes).Minutes is > -100_000 and < 1_000_000 and var minutes)
            return (int)minutes;
        table.Fault(FaultRule.Moment, column);
        return 0;
    }

    private static byte[]? Bytes(string folder, string name, FaultList faults)
    {
        string path = Path.Combine(folder, name);
        if (File.Exists(path))
            return File.ReadAllBytes(path);
        faults.Add(FaultRule.FileMissing, name, null, null, null, "");
        return null;
    }

    private static string Text(ShiftQuestion question, int minute) => Minute.Format(question.At(minute));

    private static byte[] Summary(ShiftQuestion question, ShiftAnswer answer)
    {
        using MemoryStream stream = new();
        using (Utf8JsonWriter json = new(stream, JsonText.Written))
        {
            json.WriteStartObject();
            json.WriteString("week", IsoDate.Text(question.Settings.Monday(question.Week)));
            foreach ((string key, double number) in new[]
                {
                    ("late", answer.Costs.Late), ("overrun", answer.Costs.Overrun), ("first_bound", answer.FirstBound), ("first_gap", answer.FirstGap), ("changeover", answer.Costs.Changeover),
                    ("changeover_bound", answer.ChangeoverBound), ("changeover_gap", answer.ChangeoverGap), ("overrun_minutes", answer.Costs.OverrunMinutes), ("setup_minutes", answer.Costs.SetupMinutes),
                    ("clean_outs", answer.Costs.CleanOuts), ("greedy_first", answer.Greedy.First), ("greedy_changeover", answer.Greedy.Changeover), ("seconds", Math.Round(answer.Seconds, 3)),
                })
                json.WriteNumber(key, number);
            json.WriteString("status", answer.Status switch { ShiftStatus.Proven => "proven", ShiftStatus.TimeReached => "time", _ => "cancelled" });
            json.WriteString("defaults", string.Join(", ", question.Defaults.Select(taken => taken switch
            {
                ShiftDefault.SetupsOfLines => "setups of lines.csv", ShiftDefault.ShiftsOfLines => "hours of lines.csv", _ => "dock at each day's end",
            })));
            json.WriteEndObject();
        }

        stream.WriteByte((byte)'\n');
        return stream.ToArray();
    }
}
