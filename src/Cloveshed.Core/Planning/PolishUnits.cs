namespace Cloveshed.Core.Planning;

/// <summary>Rows of the polish that tie a column in pounds or bins to a whole number: units of a fill or a sale, and places in use.</summary>
internal static class PolishUnits
{
    /// <summary>Each fill and market sale is a whole number of units.</summary>
    internal static void Choose(Master master, List<int> whole)
    {
        for (int k = 0, columns = master.ColumnCount; k < columns; k++)
        {
            MasterColumn c = master.Columns[k];
            if (c.Kind is not (ColumnKind.Fill or ColumnKind.Market)) continue;
            double net = master.Instance.Products[c.B].Net;
            double most = c.Kind == ColumnKind.Fill ? master.Instance.OrderLines[c.A].Line.Units : master.Instance.Market[c.A].Units;
            int row = master.AddRow(0, 0, [(k, 1)]);
            whole.Add(master.AddChoice(0, most, [(row, -net)]));
        }
    }
}

/// <summary>A place's weekly cost is paid in full as soon as anything stands in it at a week's end.</summary>
internal static class PolishPlaces
{
    internal static void Choose(Master master, IReadOnlyList<int> standing, List<int> whole)
    {
        foreach (int k in standing)
        {
            InstancePlace place = master.Instance.Places[master.SpotsHere[master.Columns[k].A].Place];
            int row = master.AddRow(double.NegativeInfinity, 0, [(k, 1)]);
            whole.Add(master.AddChoice(-place.WeekCost, 1, [(row, -place.Capacity)]));
        }
    }
}
