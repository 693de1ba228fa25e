using Cloveshed.App.Words;
using Cloveshed.Core.Planning.Promises;
using Cloveshed.Pictures;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.App.Plans;

/// <summary>A promise in a few lines: the word, each line of the order, what it costs, and who gives way.</summary>
internal static class PromiseText
{
    public static string Of(PromiseTold told, Phrasebook phrases)
    {
        Reader reader = new(told.Season.Settings, new ReportOptions(phrases.Language, told.Season.Settings.MassUnit));
        return TerminalText.Of(string.Join(Environment.NewLine, Lines(told, reader, phrases)));
    }

    private static IEnumerable<string> Lines(PromiseTold told, Reader reader, Phrasebook phrases)
    {
        PromiseAnswer answer = told.Answer;
        yield return phrases[answer.Verdict switch
        {
            PromiseVerdict.Yes => Phrase.PromiseYes,
            PromiseVerdict.AtALoss => Phrase.PromiseAtALoss,
            PromiseVerdict.Later => Phrase.PromiseLater,
            PromiseVerdict.Part => Phrase.PromisePart,
            _ => Phrase.PromiseNo,
        }];
        foreach (LinePromise line in answer.Lines)
        {
            yield return "  " + phrases.Say(Phrase.PromiseHad, line.Product, reader.Number(line.ByDue, 0), reader.Number(line.Asked, 0));
            if (line.ByDue < line.Asked)
            {
                yield return "    " + (line.AllFrom is { } day ? phrases.Say(Phrase.PromiseAllFrom, reader.DayYear(day)) : phrases[Phrase.PromiseNever]);
            }

            if (line.Cost is { } cost)
            {
                yield return "    " + phrases.Say(Phrase.PromiseUnit, reader.Price(cost), line.CostLow is { } low ? reader.Price(low) : "-");
            }

            if (line.Worth is { } worth)
            {
                yield return "    " + phrases.Say(Phrase.PromiseWorth, reader.Number(worth, 0));
            }
        }

        if (answer.Lines.Any(line => line.ByDue > 0))
        {
            yield return answer.Paid is { } paid ? phrases.Say(Phrase.PromiseCostAndPaid, reader.Money(answer.Cost), reader.Money(paid)) : phrases.Say(Phrase.PromiseCost, reader.Money(answer.Cost));
            yield return phrases[answer.Expenses.Count > 0 ? Phrase.PromiseGivesWay : Phrase.PromiseNobody];
        }

        foreach (string line in ExpensesText.Of(answer.Expenses, ExpensesText.Less, reader, phrases))
        {
            yield return line;
        }

        yield return phrases.Say(Phrase.PromiseSure, reader.Percent(told.Gap, 2));
    }
}
