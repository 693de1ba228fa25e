namespace Cloveshed.Ledger.Folds;

/// <summary>The few past days that are looked at, page after page: each state as long as no fact is taken, the longest unused going first.</summary>
internal sealed class KeptPasts
{
    /// <summary>Each holds a whole season.</summary>
    private const int Most = 4;

    private readonly Lock guard = new();
    private readonly List<(AsOf When, ShedState State)> kept = [];

    /// <summary>Null where it is not kept, or where the ledger has gone on.</summary>
    public ShedState? Find(AsOf when, LedgerHead head)
    {
        lock (guard)
        {
            int at = kept.FindIndex(past => past.When == when);
            if (at < 0)
                return null;
            (AsOf, ShedState State) past = kept[at];
            kept.RemoveAt(at);
            if (past.State.Head != head)
                return null;
            kept.Add(past);
            return past.State;
        }
    }

    public void Keep(AsOf when, ShedState state)
    {
        lock (guard)
        {
            kept.RemoveAll(past => past.When == when);
            kept.Add((when, state));
            if (kept.Count > Most)
                kept.RemoveAt(0);
        }
    }
}
