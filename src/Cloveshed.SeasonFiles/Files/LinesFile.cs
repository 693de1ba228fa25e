using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>lines.csv: what a line does, how fast, for how long and at what cost.</summary>
internal static class LinesFile
{
    private const double HoursOfWeek = 168;

    public static readonly FileLayout Layout = new("lines.csv", needed: true, rowLimit: 10_000);
    private static readonly Column Name = Layout.NeededText("line");
    private static readonly Column Mode = Layout.NeededText("mode");
    private static readonly Column Rate = Layout.NeededNumber("rate_per_hour", Bounds.Rate);
    private static readonly Column Hours = Layout.NeededNumber("hours_per_week", Bounds.LineHours);
    private static readonly Column Overtime = Layout.Number("overtime_hours", Bounds.LineHours);
    private static readonly Column Cost = Layout.Number("cost_per_hour", Bounds.Money);
    private static readonly Column OvertimeCost = Layout.Number("overtime_cost_per_hour", Bounds.Money);
    private static readonly Column Heads = Layout.Number("heads", Bounds.Heads);
    private static readonly Column MinRun = Layout.Number("min_run", Bounds.Mass);
    private static readonly Column Setup = Layout.Number("setup_hours", Bounds.LineHours);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Name);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? name = cells.Text(Name);
            keys.Take(table, name);
            draft.LineNames.Add(name);
            LineMode? mode = cells.Word(Mode, Words.LineModes);
            if (mode is { } used && draft.ModeNames.Lacks(Words.LineModes.TextOf(used)))
                table.Fault(FaultRule.YieldMissing, Mode);
            Line line = new(
                new LineId(name ?? ""), mode ?? default, cells.Number(Rate) ?? 0, cells.Number(Hours) ?? 0, cells.Number(Overtime) ?? 0,
                cells.Money(Cost) ?? 0, cells.Money(OvertimeCost), cells.Number(Heads) ?? 1, cells.Number(MinRun) ?? 0, cells.Number(Setup) ?? 0);
            if (line.HoursPerWeek + line.OvertimeHours > HoursOfWeek)
                table.Warn(WarningRule.HoursAboveWeek, Hours, NumberText.Of(line.HoursPerWeek + line.OvertimeHours));
            if (table.RowSound)
                draft.Lines.Add(line);
        }
        draft.LineNames.Complete = !table.SomeLost;
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (Line row in season.Lines)
            text.Text(row.Id.Text).Word(Words.LineModes, (LineMode?)row.Mode).Number(row.RatePerHour).Number(row.HoursPerWeek)
                .Number(row.OvertimeHours).Money(row.CostPerHour).Money(row.OvertimeCostPerHour).Number(row.Heads).Number(row.MinRun)
                .Number(row.SetupHours).EndRow();
        return text.ToBytes();
    }
}
