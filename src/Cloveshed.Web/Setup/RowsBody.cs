using System.Text;
using System.Text.Encodings.Web;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Web.Setup;

/// <summary>The rows of a list as the body of a table, each cell as it was entered.</summary>
internal static class RowsBody
{
    public static string Write(SeasonList list, IReadOnlyList<ColumnGuide> columns, RowsFound found, string query)
    {
        StringBuilder html = new("<tbody>");
        HtmlEncoder encoder = HtmlEncoder.Default;
        string after = encoder.Encode(query);
        foreach (SeasonRow row in found.Rows)
        {
            html.Append(System.Globalization.CultureInfo.InvariantCulture, $"<tr id=\"r{row.Row}\"><td class=\"n\"><a href=\"{list.Path}/{row.Row}{after}\">{row.Row}<span class=\"visually-hidden\"> {encoder.Encode(list.KeyText(row))}</span></a></td>");
            bool head = true;
            foreach (ColumnGuide column in columns)
            {
                string cell = row.Cells.GetValueOrDefault(column.Name, "");
                html.Append(head ? "<th scope=\"row\"" : "<td");
                if (column.Kind is ColumnKind.Number or ColumnKind.Whole)
                {
                    html.Append(" class=\"n\"");
                }

                html.Append('>').Append(encoder.Encode(cell)).Append(head ? "</th>" : "</td>");
                head = false;
            }

            html.Append("</tr>");
        }

        return html.Append("</tbody>").ToString();
    }
}
