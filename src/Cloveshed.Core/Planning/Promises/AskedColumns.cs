namespace Cloveshed.Core.Planning.Promises;

/// <summary>
/// The columns that take a product in a week for a line that is asked for, and those for what a line misses. Once made they stay in the master, held at nothing between
/// questions, for to add and take out a hundred of them costs a tenth of an answer.
/// </summary>
internal sealed class AskedColumns(Master master, int[] rows)
{
    /// <summary>Scaled money per scaled mass of what a line misses: far above any price (the median price is 1) and below what a missed pin pays.</summary>
    internal const double AboveAll = RunWishes.MissedPin * 0.8;

    /// <summary>So many are kept: more of them would slow every solve.</summary>
    private const int MostKept = 3000;

    private readonly Dictionary<(int Line, int Product, int Week), int> _takes = [];
    private readonly Dictionary<int, int> _missed = [];

    /// <summary>The column by which a line takes a product in a week.</summary>
    internal int Take(int line, int product, int week)
    {
        if (!_takes.TryGetValue((line, product, week), out int at))
            _takes[(line, product, week)] = at = master.AddChoice(0, 0, [(rows[line], 1), (master.Rows.Available[product, week], 1)]);
        return at;
    }

    /// <summary>The column of what a line misses.</summary>
    internal int Missed(int line)
    {
        if (!_missed.TryGetValue(line, out int at)) _missed[line] = at = master.AddChoice(-AboveAll, 0, [(rows[line], 1)]);
        return at;
    }

    /// <summary>Holds all at nothing; where they are too many, takes them out.</summary>
    internal void Hold()
    {
        int[] all = [.. _takes.Values, .. _missed.Values];
        if (all.Length > MostKept)
        {
            _takes.Clear();
            _missed.Clear();
            master.Remove(all);
            return;
        }
        double[] none = new double[all.Length];
        master.Program.SetColumnBounds(all, none, none);
    }
}
