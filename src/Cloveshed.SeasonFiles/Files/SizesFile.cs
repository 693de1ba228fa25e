using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>sizes.csv: the size chart, small to large, each class beginning where the one before it ends.</summary>
internal static class SizesFile
{
    /// <summary>The name in shares.csv of what is smaller than the smallest class.</summary>
    public const string Under = "under";

    public static readonly FileLayout Layout = new("sizes.csv", needed: true, rowLimit: 1000);
    private static readonly Column Class = Layout.NeededText("class");
    private static readonly Column Code = Layout.Text("code");
    private static readonly Column MinMm = Layout.NeededNumber("min_mm", Bounds.Millimetres);
    private static readonly Column MaxMm = Layout.Number("max_mm", Bounds.SomeMillimetres);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Class);
        Cells cells = table.Cells;
        double? before = null;
        int openLine = 0;
        while (table.Next())
        {
            string? name = cells.Text(Class);
            double? min = cells.Number(MinMm), max = cells.Number(MaxMm);
            keys.Take(table, name);
            draft.SizeNames.Add(name);
            if (name == Under)
                table.Fault(FaultRule.ReservedName, Class, Under);
            if (openLine > 0)
                draft.Faults.Add(FaultRule.SizeOpenEnd, table.Layout.Name, openLine, MaxMm.Name, "");
            if (min is { } low && before is { } end && low != end)
                table.Fault(FaultRule.SizeGap, MinMm, NumberText.Of(end));
            if (min is { } from && max is { } to && to <= from)
                table.Fault(FaultRule.MinNotBelowMax, MaxMm, NumberText.Of(from));
            before = max;
            openLine = max is null && table.RowSound ? table.Line : 0;
            if (table.RowSound)
                draft.Sizes.Add(new SizeClass(new SizeClassId(name!), cells.Text(Code), min ?? 0, max));
        }
        draft.SizeNames.Complete = !table.SomeLost;
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (SizeClass row in season.Sizes)
            text.Text(row.Id.Text).Text(row.Code).Number(row.MinMm).Number(row.MaxMm).EndRow();
        return text.ToBytes();
    }
}
