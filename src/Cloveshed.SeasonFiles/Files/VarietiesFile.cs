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
    private static readonly Column MassA = Layout.Number("mass_a", Bounds.LawIntercept);
    private static readonly Column MassB = Layout.Number("mass_b", Bounds.LawSlope);
    private static readonly Column MassS = Layout.Number("mass_s", Bounds.LawSpread);
    private static readonly Column Keeps = Layout.Text("keeps");
    private static readonly Column ClovesPerBulb = Layout.Number("cloves_per_bulb", Bounds.ClovesPerBulb);
    private static readonly Column CloveCv = Layout.Number("clove_cv", Bounds.Variation);
    private static readonly Column CloveA = Layout.Number("clove_a", Bounds.LawIntercept);
    private static readonly Column CloveB = Layout.Number("clove_b", Bounds.LawSlope);
    private static readonly Column CloveS = Layout.Number("clove_s", Bounds.LawSpread);

    /// <summary>
    /// Where a file has no bulb law: g = 0.00289 mm^2.494, our log-log fit to the diameters and masses of the nine classes in the
    /// garlic table of the BC Ministry of Agriculture. The residual sd is our own, no published value. Warned about.
    /// </summary>
    public static readonly MassLaw BulbLawWhereNone = new(Math.Log(0.00289), 2.494, 0.1);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Name);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? name = cells.Text(Name);
            keys.Take(table, name);
            draft.VarietyNames.Add(name);
            MassLaw bulbs = ReadBulbLaw(table);
            KeepClass? keeps = cells.Word(Keeps, Words.Keeps);
            double? cloves = cells.Number(ClovesPerBulb), cv = cells.Number(CloveCv);
            MassLaw? law = ReadCloveLaw(table);
            if (table.RowSound)
                draft.Varieties.Add(new Variety(new VarietyId(name!), bulbs, keeps, cloves, cv, law));
        }
        draft.VarietyNames.Complete = !table.SomeLost;
    }

    private static MassLaw ReadBulbLaw(Table table)
    {
        double? a = table.Cells.Number(MassA), b = table.Cells.Number(MassB), spread = table.Cells.Number(MassS);
        AllOrNone(table, MassA, MassB);
        if (table.RowSound && (a is null || spread is null))
            table.Warn(
                WarningRule.BulbLawMissing, a is null ? MassA : MassS, NumberText.Of(a ?? BulbLawWhereNone.A), NumberText.Of(b ?? BulbLawWhereNone.B),
                NumberText.Of(spread ?? BulbLawWhereNone.S));
        return new MassLaw(a ?? BulbLawWhereNone.A, b ?? BulbLawWhereNone.B, spread ?? BulbLawWhereNone.S);
    }

    private static MassLaw? ReadCloveLaw(Table table)
    {
        double? a = table.Cells.Number(CloveA), b = table.Cells.Number(CloveB), spread = table.Cells.Number(CloveS);
        AllOrNone(table, CloveA, CloveB, CloveS);
        return a is { } intercept && b is { } slope && spread is { } sd ? new MassLaw(intercept, slope, sd) : null;
    }

    private static void AllOrNone(Table table, params ReadOnlySpan<Column> columns)
    {
        int empty = 0;
        foreach (Column column in columns)
            empty += table.Cells.IsEmpty(column) ? 1 : 0;
        if (empty == columns.Length)
            return;
        foreach (Column column in columns)
            if (table.Cells.IsEmpty(column))
                table.Fault(FaultRule.LawInParts, column);
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
