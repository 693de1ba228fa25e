using Cloveshed.App.Words;
using Cloveshed.Core.Shift;
using Cloveshed.Pictures;
using Cloveshed.Pictures.Reading;
using Cloveshed.Pictures.Week;

namespace Cloveshed.App.Shifts;

/// <summary>A week in order as a person reads it in a terminal: line by line, what it costs, what is late.</summary>
internal static class WeekText
{
    public static IEnumerable<string> Lines(ShiftQuestion question, ShiftAnswer answer, Phrasebook phrases)
    {
        Reader reader = new(question.Settings, new ReportOptions(phrases.Language, question.Settings.MassUnit));
        WeekTold told = new(question, reader);
        SetupTable setups = new(question);
        yield return phrases.Say(Phrase.ShiftHead, reader.WeekYear(question.Week), question.Runs.Count);
        foreach (ShiftLine line in question.Lines.Where(line => question.Runs.Any(run => run.Line == line.Id)))
        {
            yield return "";
            yield return phrases.Say(Phrase.ShiftLine, line.Id, line.Heads, reader.Number(LineHours.Of(question, line).Total / 60.0, 1));
            ShiftRun? before = null;
            foreach (PlacedRun placed in answer.Schedule.Of(line.Id))
            {
                ShiftRun run = question.Runs.First(run => run.Id == placed.Run);
                SetUp setUp = before is null ? setups.First(run) : setups.Between(before, run);
                yield return "  " + phrases.Say(
                    Phrase.ShiftRun, told.Moment(placed.Start), told.Moment(placed.End), told.Run(run.Id), reader.Mass(run.Mass), setUp.CleanOut ? phrases[Phrase.ShiftCleanOut] : "", setUp.Minutes);
                before = run;
            }
        }

        yield return "";
        ShiftCosts costs = answer.Costs;
        yield return phrases.Say(Phrase.ShiftCosts, reader.Price(costs.Late), reader.Price(costs.Overrun), reader.Price(costs.Changeover));
        yield return phrases.Say(Phrase.ShiftGreedy, reader.Price(answer.Greedy.First), reader.Price(answer.Greedy.Changeover));
        yield return answer.Status == ShiftStatus.Proven ? phrases.Say(Phrase.ShiftProven, reader.Number(answer.Seconds, 1))
            : phrases.Say(Phrase.ShiftGaps, reader.Price(costs.First - answer.FirstBound), reader.Price(costs.Changeover - answer.ChangeoverBound), reader.Number(answer.Seconds, 1));
        if (costs.OverrunMinutes > 0)
        {
            yield return phrases.Say(Phrase.ShiftOver, costs.OverrunMinutes);
        }

        if (costs.Shorts.Count == 0)
        {
            yield return phrases[Phrase.ShiftLateNone];
        }

        foreach (DockShort missing in costs.Shorts)
        {
            yield return phrases.Say(Phrase.ShiftLateRow, told.Moment(missing.Need.Minute), reader.Number(missing.Units, 1), missing.Need.Product, reader.Price(missing.Cost));
        }

        foreach (ShiftDefault taken in question.Defaults)
        {
            yield return told.Default(taken);
        }

        yield return reader.Say(Say.CautionMachines);
    }
}
