using System.Globalization;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Web.Keep;

/// <summary>Garlic of a row that was found spoiled.</summary>
/// <param name="Mass">As weighed, in the season's unit.</param>
/// <param name="ThrownOut">It has left the bins; otherwise it is still among the sound ones and a line must sort it out.</param>
/// <param name="BinsEmptied">Bins that stand no longer.</param>
public sealed record SpoiledFound(LotRow Row, SoundShares Shares, double Mass, bool ThrownOut, double BinsEmptied);

/// <summary>
/// What the row reads after it. Thrown out: the weight goes and the rest keeps its shares. Still in the bins: the weight stays, and the
/// shares that make grade and that are sound fall by the part that spoiled. Either way what is sound falls alike.
/// </summary>
/// <param name="Gone">Nothing of the row is left: it no longer counts.</param>
/// <param name="Cells">The cells that change, as text for the season's files.</param>
public sealed record SpoiledRow(double Net, double Bins, double Fresh, double Crack, bool Gone, IReadOnlyDictionary<string, string> Cells)
{
    /// <summary>More digits than a scale or a sample has; what is written is what counts.</summary>
    private const string Written = "0.######";

    /// <summary>Mass that makes grade or is sound for the cracker.</summary>
    public double Sound => Net * (Fresh + Crack);

    /// <summary>The row after what was found, or null where the mass is none or more than stands there, or the bins are.</summary>
    public static SpoiledRow? Of(SpoiledFound found)
    {
        LotRow row = found.Row;
        if (found is not { Mass: > 0, BinsEmptied: >= 0 } || found.Mass > row.Net || found.BinsEmptied > row.Bins)
        {
            return null;
        }

        if (!found.ThrownOut)
        {
            double stays = 1 - found.Mass / row.Net, fresh = Rounded(found.Shares.Fresh * stays), crack = Rounded(found.Shares.Crack * stays);
            return new SpoiledRow(row.Net, row.Bins, fresh, crack, false, new Dictionary<string, string> { ["fresh_share"] = Text(fresh), ["crack_share"] = Text(crack) });
        }

        double net = row.Net - found.Mass, bins = row.Bins - found.BinsEmptied;
        Dictionary<string, string> cells = new() { ["net"] = Text(net) };
        if (row.NetLow is { } low)
        {
            cells["net_low"] = Text(Math.Max(0, low - found.Mass));
        }

        if (row.NetHigh is { } high)
        {
            cells["net_high"] = Text(high - found.Mass);
        }

        if (found.BinsEmptied > 0)
        {
            cells["bins"] = Text(bins);
        }

        return new SpoiledRow(net, bins, found.Shares.Fresh, found.Shares.Crack, net <= 0, cells);
    }

    private static double Rounded(double share) => Math.Round(share, 6);

    private static string Text(double value) => value.ToString(Written, CultureInfo.InvariantCulture);
}
