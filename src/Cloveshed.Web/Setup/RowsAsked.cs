using System.Globalization;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles;
using Microsoft.AspNetCore.Http;

namespace Cloveshed.Web.Setup;

/// <summary>Which rows of a list are asked for, in which order; it is what stands after the ? of the list's address.</summary>
/// <param name="Find">Words that must all be in a row, or with In the whole cell.</param>
/// <param name="In">Null: in any column.</param>
/// <param name="Sort">Null: as entered.</param>
public sealed record RowsAsked(string Find, string? In, string? Sort, bool Down, int Page)
{
    /// <summary>Rows on a page: as many as a person scrolls through, a small page on the wire.</summary>
    public const int PageRows = 200;

    /// <summary>Reads the query; what makes no sense counts as not asked.</summary>
    public static RowsAsked Of(IQueryCollection query, SeasonList list) => new(
        query["find"].ToString().Trim(), Column(query["in"], list), Column(query["sort"], list), query["down"] == "1",
        int.TryParse(query["page"], NumberStyles.None, CultureInfo.InvariantCulture, out int page) && page > 0 ? page : 1);

    /// <summary>The same as a query, ? included; empty where nothing special is asked.</summary>
    public string Query
    {
        get
        {
            (string Name, string? Value)[] parts = [("find", Find), ("in", In), ("sort", Sort), ("down", Down ? "1" : null), ("page", Page > 1 ? Page.ToString(CultureInfo.InvariantCulture) : null)];
            string query = string.Join('&', parts.Where(part => !string.IsNullOrEmpty(part.Value)).Select(part => $"{part.Name}={Uri.EscapeDataString(part.Value!)}"));
            return query.Length == 0 ? "" : "?" + query;
        }
    }

    /// <summary>Sorted by a column; asked of the column that it is sorted by already, the other way round.</summary>
    public RowsAsked SortedBy(string column) => this with { Sort = column, Down = Sort == column && !Down, Page = 1 };

    /// <summary>One page of what was found.</summary>
    /// <param name="all">How many rows the list has.</param>
    public RowsFound PageOf(IReadOnlyList<SeasonRow> found, int all)
    {
        int pages = Math.Max(1, (found.Count + PageRows - 1) / PageRows), page = Math.Min(Page, pages);
        return new RowsFound([.. found.Skip((page - 1) * PageRows).Take(PageRows)], found.Count, all, page, pages);
    }

    /// <summary>All rows that are asked for, in their order.</summary>
    public IReadOnlyList<SeasonRow> From(IReadOnlyList<SeasonRow> rows, SeasonList list)
    {
        List<SeasonRow> found = Find.Length == 0 ? [.. rows] : In is { } column ? [.. rows.Where(row => row.Cells.GetValueOrDefault(column, "") == Find)] : [.. rows.Where(HasAll)];
        if (Sort is { } sort)
        {
            found = Sorted(found, list.Columns.First(guide => guide.Name == sort));
        }

        return found;
    }

    private bool HasAll(SeasonRow row) =>
        Find.Split(' ', StringSplitOptions.RemoveEmptyEntries).All(word => row.Cells.Any(cell => cell.Value.Contains(word, StringComparison.OrdinalIgnoreCase)));

    /// <summary>Numbers by size, all else by letters; empty cells stand last either way, and equal ones as entered.</summary>
    private List<SeasonRow> Sorted(List<SeasonRow> rows, ColumnGuide guide)
    {
        if (guide.Kind is ColumnKind.Number or ColumnKind.Whole)
        {
            return Sorted(rows, row => double.TryParse(row.Cells.GetValueOrDefault(guide.Name), NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : null, Comparer<double?>.Default);
        }

        return Sorted(rows, row => row.Cells.GetValueOrDefault(guide.Name)?.Trim() is { Length: > 0 } text ? text : null, StringComparer.OrdinalIgnoreCase);
    }

    private List<SeasonRow> Sorted<TKey>(List<SeasonRow> rows, Func<SeasonRow, TKey?> key, IComparer<TKey?> order)
    {
        IOrderedEnumerable<SeasonRow> filled = rows.OrderBy(row => key(row) is null);
        return [.. Down ? filled.ThenByDescending(key, order) : filled.ThenBy(key, order)];
    }

    private static string? Column(string? name, SeasonList list) => list.Columns.Any(guide => guide.Name == name) ? name : null;
}

/// <summary>One page of the rows that were found.</summary>
/// <param name="Found">How many were found.</param>
/// <param name="All">How many the list has.</param>
public sealed record RowsFound(IReadOnlyList<SeasonRow> Rows, int Found, int All, int Page, int Pages);
