using Cloveshed.Ledger;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Web.Setup;

/// <summary>How many rows of a list name a row in a column.</summary>
public sealed record RowUse(SeasonList List, string Column, int Rows);

/// <summary>What depends on a row: the rows of other lists that name it.</summary>
public static class RowUses
{
    public static IReadOnlyList<RowUse> Of(SeasonRows rows, SeasonRow row)
    {
        string name = row.Cells.GetValueOrDefault(SeasonTable.Of(row.File)!.Columns[0], "");
        // A second row of the same lot keeps its name alive; then nothing depends on this one.
        if (name.Length == 0 || rows.Of(row.File).Any(other => other.Row != row.Row && other.Cells.GetValueOrDefault(SeasonTable.Of(row.File)!.Columns[0]) == name))
        {
            return [];
        }

        IEnumerable<ColumnGuide> naming = ColumnGuides.Naming(row.File);
        if (row.File == "yields.csv")
        {
            naming = ColumnGuides.Of("lines.csv").Where(guide => guide.Name == "mode");
        }

        return [.. naming.Select(guide => new RowUse(SeasonLists.Of(guide.File), guide.Name, rows.Of(guide.File).Count(other => Names(other, guide, name, row.File)))).Where(use => use.Rows > 0)];
    }

    /// <summary>A product is made of a size class or of a clove grade, by its form: the same name may be both.</summary>
    private static bool Names(SeasonRow other, ColumnGuide guide, string name, string file) =>
        other.Cells.GetValueOrDefault(guide.Name) == name
        && (guide is not { File: "products.csv", Name: "from" } || string.Equals(other.Cells.GetValueOrDefault("form")?.Trim(), file == "sizes.csv" ? "bulb" : "clove", StringComparison.OrdinalIgnoreCase));
}
