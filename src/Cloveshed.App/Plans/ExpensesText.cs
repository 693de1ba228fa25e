using Cloveshed.App.Words;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.App.Plans;

/// <summary>What is said of an order line that only its day changes for, of one that units change for, of the market and of seed.</summary>
internal sealed record ExpensePhrases(Phrase Day, Phrase Line, Phrase Market, Phrase Seed);

/// <summary>Who gets less, or more, a line each, dearest first; the first of them.</summary>
internal static class ExpensesText
{
    private const int Shown = 10;

    public static readonly ExpensePhrases Less = new(Phrase.PromiseLaterLine, Phrase.PromiseFromLine, Phrase.PromiseFromMarket, Phrase.PromiseFromSeed);

    public static readonly ExpensePhrases More = new(Phrase.SupposeSoonerLine, Phrase.SupposeToLine, Phrase.SupposeToMarket, Phrase.SupposeToSeed);

    public static IEnumerable<string> Of(IReadOnlyList<PromiseExpense> who, ExpensePhrases said, Reader reader, Phrasebook phrases) => First(who, phrases, one => one.Kind switch
    {
        ExpenseKind.OrderLine when one.Less < 0.5 => phrases.Say(said.Day, one.Name, one.Product, reader.Money(one.Money)),
        ExpenseKind.OrderLine => phrases.Say(said.Line, one.Name, one.Product, reader.Number(one.Less, 0), reader.Money(one.Money)),
        ExpenseKind.Market => phrases.Say(said.Market, one.Product, reader.Number(one.Less, 0), reader.Money(one.Money)),
        _ => phrases.Say(said.Seed, one.Name, reader.Mass(one.Less), reader.Money(one.Money)),
    });

    /// <summary>The first lines of a list, and how many more there are.</summary>
    public static IEnumerable<string> First<T>(IReadOnlyList<T> all, Phrasebook phrases, Func<T, string> say)
    {
        foreach (T one in all.Take(Shown))
        {
            yield return "  " + say(one);
        }

        if (all.Count > Shown)
        {
            yield return "  " + phrases.Say(Phrase.MoreFaults, all.Count - Shown);
        }
    }
}
