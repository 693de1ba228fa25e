using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>lots.csv: one row per lot and place. What rows have to do with each other and with rooms is in <see cref="LotChecks"/>.</summary>
internal static class LotsFile
{
    public static readonly FileLayout Layout = new("lots.csv", needed: true, rowLimit: 50_000);
    public static readonly Column Lot = Layout.NeededText("lot");
    public static readonly Column Place = Layout.NeededText("place");
    private static readonly Column Variety = Layout.NeededText("variety");
    private static readonly Column Field = Layout.NeededText("field");
    public static readonly Column Harvested = Layout.NeededDate("harvested");
    public static readonly Column Bins = Layout.NeededNumber("bins", Bounds.Bins);
    private static readonly Column Net = Layout.NeededNumber("net", Bounds.SomeMass);
    private static readonly Column State = Layout.Text("state");
    private static readonly Column NetLow = Layout.Number("net_low", Bounds.Mass);
    private static readonly Column NetHigh = Layout.Number("net_high", Bounds.Mass);
    private static readonly Column Organic = Layout.YesNo("organic");
    private static readonly Column Cured = Layout.YesNo("cured");
    private static readonly Column Inhibitor = Layout.YesNo("inhibitor");
    private static readonly Column FreshShare = Layout.Number("fresh_share", Bounds.Share);
    private static readonly Column CrackShare = Layout.Number("crack_share", Bounds.Share);
    private static readonly Column SeedClassColumn = Layout.Text("seed_class");
    private static readonly Column MeanG = Layout.Number("mean_g", Bounds.BulbGrams);
    private static readonly Column Cv = Layout.Number("cv", Bounds.Variation);
    private static readonly Column Ready = Layout.Date("ready");
    private static readonly Column Hold = Layout.YesNo("hold");

    /// <summary>What rows of one lot must have alike, as text for comparison.</summary>
    public static readonly IReadOnlyList<(Column Column, Func<LotRow, string> Text)> Alike =
    [
        (Variety, row => row.Variety.Text),
        (Field, row => row.Field),
        (State, row => row.State is { } state ? Words.LotStates.TextOf(state) : ""),
        (Organic, row => YesNoText(row.Organic)),
        (Cured, row => YesNoText(row.Cured)),
        (Inhibitor, row => YesNoText(row.Inhibitor)),
        (SeedClassColumn, row => row.SeedClass is { } seed ? Words.SeedClasses.TextOf(seed) : ""),
        (MeanG, row => row.MeanG is { } mean ? NumberText.Of(mean) : ""),
        (Cv, row => row.Cv is { } cv ? NumberText.Of(cv) : ""),
        (Ready, row => row.Ready is { } ready ? IsoDate.Text(ready) : ""),
        (Hold, row => YesNoText(row.Hold)),
    ];

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Lot, Place);
        Cells cells = table.Cells;
        while (table.Next())
        {
            string? lot = cells.Text(Lot), place = cells.Text(Place), variety = cells.Text(Variety);
            keys.Take(table, lot, place);
            draft.LotNames.Add(lot);
            draft.PlaceNames.Require(table, Place, place);
            draft.VarietyNames.Require(table, Variety, variety);
            LotRow row = new(
                new LotId(lot ?? ""), new PlaceId(place ?? ""), new VarietyId(variety ?? ""), cells.Text(Field) ?? "",
                cells.Date(Harvested) ?? default, cells.Number(Bins) ?? 0, cells.Number(Net) ?? 0, cells.Word(State, Words.LotStates),
                cells.Number(NetLow), cells.Number(NetHigh), cells.YesNo(Organic) ?? false, cells.YesNo(Cured), cells.YesNo(Inhibitor) ?? false,
                cells.Number(FreshShare), cells.Number(CrackShare), cells.Word(SeedClassColumn, Words.SeedClasses), cells.Number(MeanG),
                cells.Number(Cv), cells.Date(Ready), cells.YesNo(Hold) ?? false);
            CheckTogether(table, row);
            if (table.RowSound)
                draft.Lots.Add((row, table.Line));
        }
        draft.LotNames.Complete = !table.SomeLost;
    }

    private static void CheckTogether(Table table, LotRow row)
    {
        if (!table.RowSound)
            return;
        if (row.NetLow > row.Net)
            table.Fault(FaultRule.LowAboveHigh, NetLow, NetLow.Name, Net.Name, NumberText.Of(row.Net));
        if (row.NetHigh < row.Net)
            table.Fault(FaultRule.LowAboveHigh, NetHigh, Net.Name, NetHigh.Name, NumberText.Of(row.Net));
        // Shares that a spreadsheet rounded to ten digits may sum to a little above 1.
        if (row.FreshShare + row.CrackShare > 1 + 1e-9)
            table.Fault(FaultRule.SharesAboveOne, CrackShare, NumberText.Of(row.FreshShare!.Value + row.CrackShare!.Value));
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (LotRow row in season.Lots)
            text.Text(row.Lot.Text).Text(row.Place.Text).Text(row.Variety.Text).Text(row.Field).Date(row.Harvested).Number(row.Bins)
                .Number(row.Net).Word(Words.LotStates, row.State).Number(row.NetLow).Number(row.NetHigh).YesNo(row.Organic).YesNo(row.Cured)
                .YesNo(row.Inhibitor).Number(row.FreshShare).Number(row.CrackShare).Word(Words.SeedClasses, row.SeedClass)
                .Number(row.MeanG).Number(row.Cv).Date(row.Ready).YesNo(row.Hold).EndRow();
        return text.ToBytes();
    }

    private static string YesNoText(bool? yes) => yes switch { true => "yes", false => "no", null => "" };
}
