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
    /// <param name="seconds">Until whoever asks looks again, at most.</param>
    internal TAsk OneFor(TAsk mine, double seconds, Action<TAsk> begin)
    {
        mine.Looked(seconds);
        TAsk ask = asks.GetOrAdd(mine.Key, mine);
        ask.Looked(seconds);
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

    /// <summary>A hand stops the work on a question.</summary>
    internal void Stop(string key) => asks.GetValueOrDefault(key)?.Stop();

    /// <summary>What a hand has stopped is forgotten, so that it can be asked anew.</summary>
    internal void ForgetStopped(string key)
    {
        if (asks.GetValueOrDefault(key) is { Stopped: true } ask)
        {
            asks.TryRemove(KeyValuePair.Create(key, ask));
        }
    }
}
