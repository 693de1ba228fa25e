namespace Cloveshed.Pictures.Markup;

/// <summary>A column; numbers are set flush right in tabular figures. Wide: words that take a line of their own where rows are stacked.</summary>
public sealed record Column(string Head, bool Number = false, bool Wide = false);

/// <summary>On which screens a table shows each row as a block of named cells, having no room for its columns.</summary>
public enum Stacking { Never, Phone, Tablet }

/// <summary>A cell. Language is given where the words come from the season's files, not from the text tables.</summary>
public sealed record Cell(string Text, string? Language = null)
{
    public static implicit operator Cell(string text) => new(text);

    public static Cell ToCell(string text) => new(text);
}

/// <summary>
/// The numbers of a picture or a section as rows. The first cell of a row names it.
/// </summary>
public sealed record DataTable(
    string Caption, IReadOnlyList<Column> Columns, IReadOnlyList<IReadOnlyList<Cell>> Rows, IReadOnlyList<Cell>? Total = null, Stacking Stacks = Stacking.Never)
{
    /// <summary>The table in a box of its own that scrolls sideways, reachable by keyboard.</summary>
    public MarkupText Write(string? name = null)
    {
        var markup = new MarkupText();
        markup.Open("div", ("class", "table-box"), ("tabindex", "0"), ("role", "group"), ("aria-label", Caption));
        markup.Open("table", ("data-table", name), ("class", Stacks switch { Stacking.Phone => "stacks-phone", Stacking.Tablet => "stacks", _ => null })).Element("caption", Caption);
        markup.Open("thead").Open("tr");
        foreach (Column column in Columns)
        {
            markup.Element("th", column.Head, ("scope", "col"), ("class", column.Number ? "n" : null));
        }
        markup.Close("tr").Close("thead").Open("tbody");
        foreach (IReadOnlyList<Cell> row in Rows)
        {
            WriteRow(markup, row);
        }
        markup.Close("tbody");
        if (Total is not null)
        {
            markup.Open("tfoot");
            WriteRow(markup, Total);
            markup.Close("tfoot");
        }
        return markup.Close("table").Close("div").NewLine();
    }

    private void WriteRow(MarkupText markup, IReadOnlyList<Cell> row)
    {
        markup.Open("tr");
        for (int i = 0; i < row.Count; i++)
        {
            string? kind = Columns[i].Number ? "n" : Columns[i].Wide ? "w" : null;
            if (i == 0)
            {
                markup.Element("th", row[i].Text, ("scope", "row"), ("class", kind), ("lang", row[i].Language));
            }
            else
            {
                string? head = Stacks != Stacking.Never && row[i].Text.Length > 0 ? Columns[i].Head : null;
                markup.Element("td", row[i].Text, ("class", kind), ("lang", row[i].Language), ("data-head", head));
            }
        }
        markup.Close("tr").NewLine();
    }
}
