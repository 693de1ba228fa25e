using System.Collections.Concurrent;

namespace Cloveshed.Web.Promises;

/// <summary>What was put to a model, by what was asked: the same question again is the same answer. The oldest that have ended make room.</summary>
internal sealed class AskShelf<TAsk, TAnswer>
    where TAsk : StandAsk<TAnswer>
    where TAnswer : class
{
    /// <summary>Answers that are still at hand.</summary>
    private const int Kept = 60;

    private readonly ConcurrentDictionary<string, TAsk> asks = new(StringComparer.Ordinal);

    /// <summary>The one that is there for the same question, or a new one, for which begin is called once.</summary>
    internal TAsk OneFor(TAsk mine, Action<TAsk> begin)
    {
        TAsk ask = asks.GetOrAdd(mine.Key, mine);
        if (ask.Left && asks.TryUpdate(mine.Key, mine, ask))
        {
            ask = mine;
        }

        if (ask != mine)
        {
            return ask;
        }

        foreach (string old in asks.Values.Where(one => one.Ended).OrderBy(one => one.Number).Select(one => one.Key).Take(Math.Max(0, asks.Count - Kept)))
        {
            asks.TryRemove(old, out _);
        }

        begin(ask);
        return ask;
    }

    /// <summary>Null where there is none.</summary>
    internal TAsk? Of(string key) => asks.GetValueOrDefault(key);

    /// <summary>Forgotten, so that it can be asked anew.</summary>
    internal void Forget(TAsk ask) => asks.TryRemove(KeyValuePair.Create(ask.Key, ask));
}
