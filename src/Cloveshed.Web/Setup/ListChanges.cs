using Cloveshed.Ledger;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Setup;

/// <summary>When each list last changed, kept by the state that it was looked up for.</summary>
public sealed class ListChanges(ShedLedger ledger)
{
    /// <summary>Now, and a few past days.</summary>
    private const int Room = 6;

    private readonly Shelf<IReadOnlyDictionary<string, Fact?>> shelf = new(Room);

    /// <summary>By file: the fact that last set or dropped one of its rows; null for a list without rows.</summary>
    public IReadOnlyDictionary<string, Fact?> Of(ShedState state, Viewer viewer) =>
        shelf.Of(state.Head.Hash + (viewer.AsOf is { } asOf ? Viewer.AsOfName(asOf) : ""), () => SeasonLists.All.ToDictionary(list => list.File, list => Last(state, list, viewer.AsOf is null)));

    private Fact? Last(ShedState state, SeasonList list, bool now)
    {
        if (state.Rows is not { } rows)
        {
            return null;
        }

        long set = rows.Of(list.File).Select(row => row.Seq).DefaultIfEmpty(0).Max();
        // As of a past day only facts that count then are known, and a row that was dropped leaves none: there rows that stand say when.
        if (now && ledger.Find(rows.Opened) is { } opened && ledger.ReadBack(1, kind: FactKinds.Dropped(list.File)) is [var dropped] && dropped.Seq > Math.Max(set, opened.Seq))
        {
            return dropped;
        }

        return set == 0 ? null : ledger.Read(set - 1, most: 1).First();
    }
}
