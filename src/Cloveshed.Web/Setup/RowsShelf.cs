using Cloveshed.Ledger;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Setup;

/// <summary>The rows of lists as they were found and sorted, kept so that the next page of the same question is only shown.</summary>
public sealed class RowsShelf
{
    /// <summary>Of a few people who look through lists at once; each is references to rows that are there anyway.</summary>
    private const int Room = 12;

    private readonly Shelf<(IReadOnlyList<SeasonRow> Found, int All)> shelf = new(Room);

    public RowsFound Of(ShedState state, Viewer viewer, SeasonList list, RowsAsked asked)
    {
        string key = $"{state.Head.Hash} {(viewer.AsOf is { } asOf ? Viewer.AsOfName(asOf) : "")} {list.File} {(asked with { Page = 1 }).Query}";
        (IReadOnlyList<SeasonRow> found, int all) = shelf.Of(key, () =>
        {
            IReadOnlyList<SeasonRow> rows = [.. state.Rows!.Of(list.File)];
            return (asked.From(rows, list), rows.Count);
        });
        return asked.PageOf(found, all);
    }
}
