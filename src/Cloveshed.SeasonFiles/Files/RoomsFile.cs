using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;
using Cloveshed.SeasonFiles.Reading;
using NodaTime;

namespace Cloveshed.SeasonFiles.Files;

/// <summary>rooms.csv: rooms that are sealed already on the day that the files describe.</summary>
internal static class RoomsFile
{
    public static readonly FileLayout Layout = new("rooms.csv", needed: false, rowLimit: 10_000);
    private static readonly Column Name = Layout.NeededText("place");
    private static readonly Column Sealed = Layout.NeededDate("sealed");

    public static void Read(Table table, SeasonDraft draft)
    {
        RowKeys keys = new(Name);
        Dictionary<string, PlaceKind> kinds = [];
        foreach (Place place in draft.Places)
            kinds.TryAdd(place.Id.Text, place.Kind);
        while (table.Next())
        {
            string? name = table.Cells.Text(Name);
            LocalDate? date = table.Cells.Date(Sealed);
            keys.Take(table, name);
            draft.PlaceNames.Require(table, Name, name);
            if (name is not null && kinds.TryGetValue(name, out PlaceKind kind) && kind != PlaceKind.Sealed)
                table.Fault(FaultRule.NotSealable, Name, Words.PlaceKinds.TextOf(kind));
            if (date > draft.Frame.AsOf)
                table.Fault(FaultRule.SealedAfterAsOf, Sealed, IsoDate.Text(draft.Frame.AsOf.Value));
            if (table.RowSound)
                draft.SealedRooms.Add(new SealedRoom(new PlaceId(name!), date!.Value));
        }
    }

    public static byte[] Write(Season season)
    {
        CsvText text = new(Layout);
        foreach (SealedRoom row in season.SealedRooms)
            text.Text(row.Place.Text).Date(row.Sealed).EndRow();
        return text.ToBytes();
    }
}
