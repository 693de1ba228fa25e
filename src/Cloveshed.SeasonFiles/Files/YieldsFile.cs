using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>yields.csv: what a mode keeps of the mass of fit bulbs.</summary>
internal static class YieldsFile
{
    public static readonly FileLayout Layout = new("yields.csv", needed: true);
    private static readonly Column Mode = Layout.NeededText("mode");
    private static readonly Column KeptShare = Layout.NeededNumber("kept_share", Bounds.Share);

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Mode);
        Cells cells = table.Cells;
        while (table.Next())
        {
            LineMode? mode = cells.Word(Mode, Words.LineModes);
            string? name = mode is { } known ? Words.LineModes.TextOf(known) : null;
            keys.Take(table, name);
            draft.ModeNames.Add(name);
            double kept = cells.Number(KeptShare) ?? 0;
            if (table.RowSound)
                draft.Yields.Add(new ModeYield(mode!.Value, kept));
        }
        draft.ModeNames.Complete = !table.SomeLost;
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (ModeYield row in season.Yields)
            text.Word(Words.LineModes, (LineMode?)row.Mode).Number(row.KeptShare).EndRow();
        return text.ToBytes();
    }
}
