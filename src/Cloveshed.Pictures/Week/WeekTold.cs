using Cloveshed.Core;
using Cloveshed.Core.Shift;
using Cloveshed.Pictures.Reading;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Pictures.Week;

/// <summary>A week in order in words: times, breaches, lots.</summary>
public sealed class WeekTold(ShiftQuestion question, Reader reader)
{
    private static readonly LocalTimePattern Time = LocalTimePattern.CreateWithInvariantCulture("HH:mm");

    /// <summary>A minute of the week as day and time; the week's last midnight as its Sunday's 24:00.</summary>
    public string Moment(int minute) => minute == ShiftQuestion.WeekMinutes ? $"{Day(minute - 1)} 24:00" : $"{Day(minute)} {Clock(minute)}";

    /// <summary>The time of day alone.</summary>
    public string Clock(int minute) => Time.Format(question.At(minute).TimeOfDay);

    /// <summary>The day alone, with its name.</summary>
    public string Day(int minute) => $"{DayName(minute)} {reader.Day(question.At(minute).Date)}";

    /// <summary>The name of the day, short.</summary>
    public string DayName(int minute) => reader.Say(Say.WeekDayNames).Split(' ')[(int)question.At(minute).DayOfWeek - 1];

    /// <summary>A run by what people know it by: its lot, or what was sorted out of it.</summary>
    public string Run(string? id) => question.Runs.FirstOrDefault(run => run.Id == id) is not { } run ? id ?? ""
        : run.Sorted ? reader.Say(Say.SortedOf, run.Lot) : run.Lot.Text;

    /// <summary>What does not hold, with what was found, what is allowed, and by how much.</summary>
    public string Breach(ShiftBreach breach)
    {
        string run = Run(breach.Run), other = Run(breach.Other), line = breach.Line?.Text ?? "";
        string Found() => Moment((int)breach.Found);
        string Allowed() => Moment((int)breach.Allowed);
        string Count(double number) => reader.Number(number, number == Math.Round(number) ? 0 : 1);
        return breach.Rule switch
        {
            ShiftRule.EachOnce => reader.Say(Say.WeekEachOnce, run, Count(breach.Found), Count(breach.Allowed)),
            ShiftRule.OwnLine => reader.Say(Say.WeekOwnLine, run, line, breach.What),
            ShiftRule.InShift => reader.Say(Say.WeekInShift, run, line, Found(), Allowed(), Count(breach.By)),
            ShiftRule.NotInBreak => reader.Say(Say.WeekNotInBreak, run, line, Found(), breach.What, Allowed(), Count(breach.By)),
            ShiftRule.NotInMaintenance => reader.Say(Say.WeekNotInMaintenance, run, line, Found(), breach.What, Allowed(), Count(breach.By)),
            ShiftRule.Cleaned => reader.Say(Say.WeekCleaned, run, line, Found(), Allowed(), Count(breach.By)),
            ShiftRule.Length => reader.Say(Say.WeekLength, run, line, Count(breach.Found), Count(breach.Allowed), Count(breach.By)),
            ShiftRule.OneAtATime => reader.Say(Say.WeekOneAtATime, run, line, Found(), other, Allowed(), Count(breach.By)),
            ShiftRule.SetUp => reader.Say(Say.WeekSetUp, run, other, line, Count(breach.Found), Count(breach.Allowed), Count(breach.By)),
            ShiftRule.CleanOut => reader.Say(Say.WeekCleanOut, run, other, line, Count(breach.Found), Count(breach.Allowed), Count(breach.By)),
            ShiftRule.Bins => reader.Say(Say.WeekBins, run, line, Count(breach.Found), Count(breach.Allowed), Count(breach.By)),
            ShiftRule.Heads => reader.Say(Say.WeekHeads, Moment(breach.Minute ?? 0), Count(breach.Found), Count(breach.Allowed), Count(breach.By), run),
            ShiftRule.SortedFirst => reader.Say(Say.WeekSortedFirst, run, Found(), other, Allowed(), Count(breach.By)),
            ShiftRule.Costs => reader.Say(Say.WeekCosts, breach.What switch { "late" => reader.Say(Say.WeekLate), "overrun" => reader.Say(Say.WeekOverrun), _ => reader.Say(Say.WeekChangeover) }, reader.Price(breach.Found), reader.Price(breach.Allowed)),
            _ => throw new ArgumentOutOfRangeException(nameof(breach), breach.Rule, null),
        };
    }

    /// <summary>What was taken for granted.</summary>
    public string Default(ShiftDefault taken) => reader.Say(taken switch
    {
        ShiftDefault.SetupsOfLines => Say.WeekDefaultSetups, ShiftDefault.ShiftsOfLines => Say.WeekDefaultShifts, _ => Say.WeekDefaultDock,
    });
}
