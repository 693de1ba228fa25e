using Cloveshed.Core;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Layouts;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>A row's price in its own cell or by a list, at the dock or delivered.</summary>
internal static class PriceCells
{
    public static PriceListId? List(string? list) => list is null ? null : new PriceListId(list);

    public static DestinationId? To(string? destination) => destination is null ? null : new DestinationId(destination);

    /// <summary>Exactly one of price and list; both names known.</summary>
    public static void Check(Table table, SeasonDraft draft, Column price, decimal? given, Column listColumn, string? list, Column toColumn, string? destination)
    {
        draft.PriceListNames.Require(table, listColumn, list);
        if (table.Cells.IsEmpty(price) && list is null)
            table.Fault(FaultRule.OneCellOf, price, $"{price.Name}, {listColumn.Name}");
        else if (given is not null && list is not null)
            table.Fault(FaultRule.OnlyOneOf, listColumn, $"{price.Name}, {listColumn.Name}");
        draft.DestinationNames.Require(table, toColumn, destination);
    }
}
