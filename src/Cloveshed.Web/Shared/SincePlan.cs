using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Shared;

/// <summary>What of the season was entered or changed after the facts that the adopted plan was made from.</summary>
public sealed class SincePlan
{
    private readonly HashSet<(string Order, string Line)> lines = [];
    private readonly HashSet<string> lots = [];

    public SincePlan(ShedState state)
    {
        if (state is not { Adopted: { } adopted, Rows: { } rows })
        {
            return;
        }

        foreach (SeasonRow row in rows.Of("orders.csv").Where(row => row.Seq > adopted.Basis))
        {
            lines.Add((row.Cells["order"], row.Cells["line"].Trim(' ', '\t')));
        }

        foreach (SeasonRow row in rows.Of("lots.csv").Where(row => row.Seq > adopted.Basis))
        {
            lots.Add(row.Cells["lot"]);
        }
    }

    public int Lines => lines.Count;

    public int Lots => lots.Count;

    public bool Has(OrderLine line) => lines.Contains((line.Order.Text, line.Number));

    public bool Has(LotId lot) => lots.Contains(lot.Text);
}
