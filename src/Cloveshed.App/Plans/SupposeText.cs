using Cloveshed.App.Words;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Pictures;
using Cloveshed.Pictures.Reading;
using NodaTime.Text;

namespace Cloveshed.App.Plans;

/// <summary>What would come of a change, in a few lines: what it is worth, the runs that move, who gets less and who more.</summary>
internal static class SupposeText
{
    public static string Of(SupposeTold told, Phrasebook phrases)
    {
        Reader reader = new(told.Season.Settings, new ReportOptions(phrases.Language, told.Season.Settings.MassUnit));
        return TerminalText.Of(string.Join(Environment.NewLine, Lines(told, reader, phrases)));
    }

    /// <summary>A change as it was asked for.</summary>
    public static string Name(SeasonChange change) => change switch
    {
        SeasonChange.OrderCancelled c => Order(c.Order.Text, c.Number),
        SeasonChange.OrderResized c => Order(c.Order.Text, c.Number),
        SeasonChange.OrderMoved c => $"{Order(c.Order.Text, c.Number)}={LocalDatePattern.Iso.Format(c.Due)}",
        SeasonChange.LineStopped c => $"{c.Line}={LocalDatePattern.Iso.Format(c.First)}..{LocalDatePattern.Iso.Format(c.Last)}",
        SeasonChange.PeopleThere c => LocalDatePattern.Iso.Format(c.Day),
        SeasonChange.OrderAdded c => $"{c.Line.Product}={c.Line.Units}",
        SeasonChange.LotDugLater c => c.Lot.Text,
        SeasonChange.LotKeepsLess c => c.Lot.Text,
        SeasonChange.LotWeighsLess c => c.Lot.Text,
        SeasonChange.RunDone c => $"{c.Lot}@{c.Line}",
        SeasonChange.RoomOpened c => c.Place.Text,
        _ => throw new InvalidOperationException($"No name is written for {change.GetType().Name}."),
    };

    private static string Order(string order, string? number) => number is null ? order : $"{order}/{number}";

    private static IEnumerable<string> Lines(SupposeTold told, Reader reader, Phrasebook phrases)
    {
        SupposedAnswer answer = told.Answer;
        double more = answer.Value - answer.ValueBefore;
        yield return phrases.Say(more < 0 ? Phrase.SupposeLoses : Phrase.SupposeGains, reader.Money(Math.Abs(more)), reader.Money(answer.ValueBefore), reader.Money(answer.Value));
        yield return phrases.Say(Phrase.SupposeBound, reader.Money(Math.Max(0, answer.Bound - answer.Value)));
        yield return phrases[answer.Runs.Count > 0 ? Phrase.SupposeRuns : Phrase.SupposeNoRuns];
        foreach (string line in ExpensesText.First(answer.Runs, phrases, run => phrases.Say(Phrase.SupposeRun, run.Lot, run.Line, reader.DayYear(run.Monday), reader.Mass(run.Before), reader.Mass(run.After))))
        {
            yield return line;
        }

        if (answer.Runs.Count > 0)
        {
            yield return phrases.Say(Phrase.SupposeMoved, reader.Mass(answer.Moved), answer.Runs.Count);
        }

        foreach ((IReadOnlyList<PromiseExpense> who, Phrase head, ExpensePhrases said) in new[] { (answer.Less, Phrase.SupposeLess, ExpensesText.Less), (answer.More, Phrase.SupposeMore, ExpensesText.More) })
        {
            if (who.Count > 0)
            {
                yield return phrases[head];
            }

            foreach (string line in ExpensesText.Of(who, said, reader, phrases))
            {
                yield return line;
            }
        }

        yield return phrases.Say(Phrase.PromiseSure, reader.Percent(told.Gap, 2));
    }
}
