using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Shared;

/// <summary>What of the season was entered or changed after the facts that the adopted plan was made from.</summary>
public sealed class SincePlan
{
    private readonly HashSet<(string Order, string Line)> lines = [];
    private readonly HashSet<string> lots = [];
    private readonly Season? season;
    private readonly Dictionary<(OrderId, string), OrderLine> then = [];
    private readonly HashSet<string> programs = [], lists = [], promoted = [], destinations = [];

    /// <param name="basis">The season that the adopted plan was made from, where buyers' terms make prices: a row of them that is gone is seen by what it made.</param>
    public SincePlan(ShedState state, Season? basis = null)
    {
        if (state is not { Adopted: { } adopted, Rows: { } rows })
        {
            return;
        }

        foreach (SeasonRow row in rows.Of("orders.csv").Where(row => row.Seq > adopted.Basis))
        {
            lines.Add((row.Cells["order"], row.Cells["line"].Trim(' ', '\t')));
        }

        season = state.Season;
        foreach (OrderLine line in basis?.Orders ?? [])
        {
            then[(line.Order, line.Number)] = line;
        }

        foreach ((string file, string column, HashSet<string> names) in new[] { ("programs.csv", "program", programs), ("price-lists.csv", "list", lists), ("promotions.csv", "product", promoted), ("freight.csv", "destination", destinations) })
        {
            names.UnionWith(rows.Of(file).Where(row => row.Seq > adopted.Basis).Select(row => row.Cells[column]));
        }

        foreach (SeasonRow row in rows.Of("lots.csv").Where(row => row.Seq > adopted.Basis))
        {
            lots.Add(row.Cells["lot"]);
        }
    }

    public int Lines => lines.Count;

    public int Lots => lots.Count;

    /// <summary>The line, or a row that its price or its program is from, be it one that is no longer there.</summary>
    public bool Has(OrderLine line) => lines.Contains((line.Order.Text, line.Number))
        || (then.TryGetValue((line.Order, line.Number), out OrderLine? was) && (was.Price, was.Units, was.LateCost, was.ShortCost) != (line.Price, line.Units, line.LateCost, line.ShortCost))
        || (season?.PriceOrigins.GetValueOrDefault((line.Order, line.Number)) is { } origin
            && ((origin.Program is { } week && programs.Contains(week.Program.Text)) || (origin.List is { } list && lists.Contains(list.Text)) || (origin.Destination is { } to && destinations.Contains(to.Text))
                || ((origin.Program is not null || origin.List is not null) && promoted.Contains(line.Product.Text))));

    public bool Has(LotId lot) => lots.Contains(lot.Text);
}
