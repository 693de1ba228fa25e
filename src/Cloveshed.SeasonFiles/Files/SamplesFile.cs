using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>samples.csv: one sampled bulb a row, of any date.</summary>
internal static class SamplesFile
{
    public static readonly FileLayout Layout = new("samples.csv", needed: false, rowLimit: 1_000_000);
    private static readonly Column Lot = Layout.NeededText("lot");
    private static readonly Column Date = Layout.NeededDate("date");
    private static readonly Column WeightG = Layout.NeededNumber("weight_g", Bounds.BulbGrams);
    private static readonly Column DiameterMm = Layout.Number("diameter_mm", Bounds.SomeMillimetres);
    private static readonly Column DefectColumn = Layout.Text("defect");

    public static void Read(Table table, SeasonDraft draft)
    {
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? lot = cells.Text(Lot);
            draft.LotNames.Require(table, Lot, lot);
            SampleBulb bulb = new(
                new LotId(lot ?? ""), cells.Date(Date) ?? default, cells.Number(WeightG) ?? 0, cells.Number(DiameterMm),
                cells.Word(DefectColumn, Words.Defects) ?? Defect.None);
            if (table.RowSound)
                draft.Samples.Add((bulb, table.Line));
        }
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (SampleBulb row in season.Samples)
            text.Text(row.Lot.Text).Date(row.Date).Number(row.WeightG).Number(row.DiameterMm)
                .Word(Words.Defects, row.Defect == Defect.None ? null : row.Defect).EndRow();
        return text.ToBytes();
    }
}
