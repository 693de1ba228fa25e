using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>varieties.csv: how mass goes with diameter, how long a variety keeps, and its cloves.</summary>
internal static class VarietiesFile
{
    public static readonly FileLayout Layout = new("varieties.csv", needed: true, rowLimit: 10_000);
    private static readonly Column Name = Layout.NeededText("variety");
    private static readonly Column MassA = Layout.NeededNumber("mass_a", Bounds.LawIntercept);
    private static readonly Column MassB = Layout.NeededNumber("mass_b", Bounds.LawSlope);
    private static readonly Column MassS = Layout.NeededNumber("mass_s", Bounds.LawSpread);
    private static readonly Column Keeps = Layout.Text("keeps");
    private static readonly Column ClovesPerBulb = Layout.Number("cloves_per_bulb", Bounds.ClovesPerBulb);
    private static readonly Column CloveCv = Layout.Number("clove_cv", Bounds.Variation);
    private static readonly Column CloveA = Layout.Number("clove_a", Bounds.LawIntercept);
    private static readonly Column CloveB = Layout.Number("clove_b", Bounds.LawSlope);
    private static readonly Column CloveS = Layout.Number("clove_s", Bounds.LawSpread);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Name);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? name = cells.Text(Name);
            keys.Take(table, name);
            draft.VarietyNames.Add(name);
            MassLaw bulbs = new(cells.Number(MassA) ?? 0, cells.Number(MassB) ?? 0, cells.Number(MassS) ?? 0);
            KeepClass? keeps = cells.Word(Keeps, Words.Keeps);
            double? cloves = cells.Number(ClovesPerBulb), cv = cells.Number(CloveCv);
            MassLaw? law = ReadCloveLaw(table);
            if (table.RowSound)
                draft.Varieties.Add(new Variety(new VarietyId(name!), bulbs, keeps, cloves, cv, law));
        }
        draft.VarietyNames.Complete = !table.SomeLost;
    }

    private static MassLaw? ReadCloveLaw(Table table)
    {
        Column[] columns = [CloveA, CloveB, CloveS];
        double?[] law = [.. columns.Select(table.Cells.Number)];
        bool[] empty = [.. columns.Select(column => table[column].Trim(" \t"u8).IsEmpty)];
        if (empty.Any(it => it) && !empty.All(it => it))
            for (int at = 0; at < 3; at++)
                if (empty[at])
                    table.Fault(FaultRule.CloveLawInParts, columns[at]);
        return law is [{ } a, { } b, { } s] ? new MassLaw(a, b, s) : null;
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (Variety row in season.Varieties)
            text.Text(row.Id.Text).Number(row.BulbLaw.A).Number(row.BulbLaw.B).Number(row.BulbLaw.S).Word(Words.Keeps, row.Keeps)
                .Number(row.ClovesPerBulb).Number(row.CloveCv).Number(row.CloveLaw?.A).Number(row.CloveLaw?.B).Number(row.CloveLaw?.S).EndRow();
        return text.ToBytes();
    }
}
