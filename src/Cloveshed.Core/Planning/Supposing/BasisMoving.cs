namespace Cloveshed.Core.Planning.Supposing;

/// <summary>Carries a basis from one master to another of nearly the same season, by what rows and columns stand for. What is new stands out of it.</summary>
internal static class BasisMoving
{
    private const int AtLower = 0, Basic = 1;

    /// <param name="from">Columns of the old master that paths of the new one were carried from.</param>
    internal static LinearBasis To(Master old, LinearBasis stands, Master now, IReadOnlyDictionary<PathColumn, int> from)
    {
        var rows = new Dictionary<(char, object?, int, int, int), int>();
        foreach ((var name, int row) in Names(old)) rows.TryAdd(name, row);
        int[] rowStands = new int[now.RowCount];
        Array.Fill(rowStands, Basic);
        foreach ((var name, int row) in Names(now))
            if (rows.TryGetValue(name, out int was)) rowStands[row] = stands.Rows[was];
        var columns = new Dictionary<(ColumnKind, object?, int, int, int, int), int>();
        for (int k = 0; k < Math.Min(old.ColumnCount, stands.Columns.Length); k++)
            if (old.Columns[k].Path is null) columns.TryAdd(Name(old.Instance, old.Columns[k]), k);
        int[] columnStands = new int[now.ColumnCount];
        for (int k = 0; k < now.ColumnCount; k++)
        {
            MasterColumn c = now.Columns[k];
            int was = c.Path is { } path ? from.GetValueOrDefault(path, -1) : columns.GetValueOrDefault(Name(now.Instance, c), -1);
            columnStands[k] = was >= 0 && was < stands.Columns.Length ? stands.Columns[was] : AtLower;
        }
        return new LinearBasis(columnStands, rowStands);
    }

    private static (ColumnKind, object?, int, int, int, int) Name(PlanningInstance instance, MasterColumn c) => c.Kind switch
    {
        ColumnKind.Whole => (c.Kind, string.Join(',', c.Products!), c.A, c.B, c.C, c.D),
        ColumnKind.PinMissed => (c.Kind, Pin(instance, c.A), 0, 0, 0, 0),
        _ => (c.Kind, null, c.A, c.B, c.C, c.D),
    };

    private static object Pin(PlanningInstance instance, int pin) => instance.Pins[pin] is var p ? (instance.Lots[p.Lot].Id, p.Line, p.Week) : default;

    private static IEnumerable<((char, object?, int, int, int), int)> Names(Master master)
    {
        MasterRows rows = master.Rows;
        PlanningInstance instance = master.Instance;
        IEnumerable<((char, object?, int, int, int), int)> all =
        [
            .. rows.Row.Select((row, k) => (('l', (object?)(instance.Lots[instance.Rows[k].Lot].Id, instance.Rows[k].Place), 0, 0, 0), row)),
            .. Grid('v', rows.Available), .. List('k', rows.Stock), .. List('o', rows.OrderLine), .. List('w', rows.WholeOrder), .. List('s', rows.Seed), .. Grid('a', rows.AsIs), .. Grid('h', rows.Hour),
            .. List('p', rows.People), .. Grid('t', rows.Stand), .. Grid('u', rows.Out), .. Grid('n', rows.Opening), .. List('e', rows.OneSchedule), .. Grid('r', rows.Shared), .. Grid('b', rows.Blocked),
            .. rows.Pin.Select((row, k) => (('i', (object?)Pin(instance, k), 0, 0, 0), row)),
            .. from i in Enumerable.Range(0, rows.Supply.GetLength(0)) from j in Enumerable.Range(0, rows.Supply.GetLength(1)) from k in Enumerable.Range(0, rows.Supply.GetLength(2))
               select (('y', (object?)null, i, j, k), rows.Supply[i, j, k]),
        ];
        return all.Where(one => one.Item2 >= 0);
    }

    private static IEnumerable<((char, object?, int, int, int), int)> List(char kind, int[] rows) => rows.Select((row, k) => ((kind, (object?)null, k, 0, 0), row));

    private static IEnumerable<((char, object?, int, int, int), int)> Grid(char kind, int[,] rows) =>
        from i in Enumerable.Range(0, rows.GetLength(0)) from k in Enumerable.Range(0, rows.GetLength(1)) select ((kind, (object?)null, i, k, 0), rows[i, k]);
}
