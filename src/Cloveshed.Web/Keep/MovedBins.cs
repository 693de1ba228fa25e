using System.Globalization;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Keep;

/// <summary>Bins of a lot's row that went to another place.</summary>
/// <param name="There">The lot's row in that place; null where it has none.</param>
/// <param name="Bins">More than none, and at most what the row has.</param>
public sealed record BinsMoved(SeasonRow From, SeasonRow? There, string To, double Bins);

/// <summary>
/// What the rows read after it; weight goes with the bins, bin for bin, and no pound is lost in the division. Where the lot has no row in the other place, its row
/// goes there with all that it has been through, and what stays behind is entered as a row that never left. Where it has one, that row takes the bins in: its shares
/// become those of both by weight, and it counts as dug on the earlier of the two days.
/// </summary>
/// <param name="From">Cells of the row that gave the bins; null: it no longer counts.</param>
/// <param name="There">Cells of the row that took them in; null where there was none.</param>
/// <param name="Stays">Cells of a new row, of what stays behind; null where nothing does, or the first row says it.</param>
public sealed record MovedRows(IReadOnlyDictionary<string, string>? From, IReadOnlyDictionary<string, string>? There, IReadOnlyDictionary<string, string>? Stays)
{
    /// <summary>More digits than a scale has; what is written is what counts.</summary>
    private const string Written = "0.######";

    private static readonly string[] Masses = ["net", "net_low", "net_high"], Shares = ["fresh_share", "crack_share"];

    /// <summary>Null where it goes nowhere, or the bins are none or more than stand there.</summary>
    public static MovedRows? Of(BinsMoved moved)
    {
        IReadOnlyDictionary<string, string> from = moved.From.Cells;
        if (moved.To == from["place"] || Number(from, "bins") is not { } all || !(moved.Bins > 0 && moved.Bins <= all))
        {
            return null;
        }

        (Dictionary<string, string> goes, Dictionary<string, string> stays) = Divided(from, moved.Bins, all);
        bool whole = moved.Bins >= all;
        if (moved.There is { } there)
        {
            return new MovedRows(whole ? null : stays, Joined(there.Cells, goes), null);
        }

        goes["place"] = moved.To;
        return new MovedRows(goes, null, whole ? null : stays);
    }

    private static (Dictionary<string, string> Goes, Dictionary<string, string> Stays) Divided(IReadOnlyDictionary<string, string> row, double bins, double all)
    {
        Dictionary<string, string> goes = new(row, StringComparer.Ordinal), stays = new(row, StringComparer.Ordinal);
        (goes["bins"], stays["bins"]) = (Text(bins), Text(all - bins));
        foreach (string column in Masses)
        {
            if (Number(row, column) is { } mass)
            {
                double part = Math.Round(mass * (bins / all), 3);
                (goes[column], stays[column]) = (Text(part), Text(mass - part));
            }
        }

        return (goes, stays);
    }

    private static Dictionary<string, string> Joined(IReadOnlyDictionary<string, string> there, Dictionary<string, string> comes)
    {
        Dictionary<string, string> joined = new(there, StringComparer.Ordinal) { ["bins"] = Text((Number(there, "bins") ?? 0) + Number(comes, "bins")!.Value) };
        double here = Number(there, "net") ?? 0, more = Number(comes, "net") ?? 0;
        foreach (string column in Shares)
        {
            // A share that only one of them has is of samples in the other: what stands there keeps what it says.
            if (Number(there, column) is { } ours && Number(comes, column) is { } theirs)
            {
                joined[column] = Text((ours * here + theirs * more) / (here + more));
            }
        }

        foreach (string column in Masses)
        {
            if (Number(there, column) is { } ours)
            {
                joined[column] = Text(ours + (Number(comes, column) ?? more));
            }
        }

        // Days are written as ISO 8601, whose order is that of their text.
        joined["harvested"] = string.CompareOrdinal(comes["harvested"], there["harvested"]) < 0 ? comes["harvested"] : there["harvested"];
        return joined;
    }

    private static double? Number(IReadOnlyDictionary<string, string> row, string column) =>
        row.TryGetValue(column, out string? cell) && double.TryParse(cell, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : null;

    private static string Text(double value) => value.ToString(Written, CultureInfo.InvariantCulture);
}
