using Cloveshed.App.Words;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;
using Cloveshed.SeasonFiles;
using Cloveshed.SeasonFiles.Faults;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.App.Shifts;

/// <summary>A season and its plan from their folders, and one week of them as a question; what is wrong is said and null comes back.</summary>
internal static class WeekQuestion
{
    /// <param name="week">Finds the week in the season; null where there is none, with the reason said.</param>
    public static ShiftQuestion? Read(string folder, string plan, Func<SeasonSettings, int?> week, World world, Phrasebook phrases)
    {
        SeasonReading reading = SeasonReader.Read(folder, phrases.FileLanguage);
        foreach (SeasonWarning warning in reading.Warnings)
        {
            world.Error.WriteLine(phrases.Say(Phrase.WarningLine, warning));
        }

        if (reading.Season is not { } season)
        {
            world.Error.WriteLine(phrases.Say(Phrase.ShiftNoPlan, folder));
            Tell(reading.Faults, reading.FaultCount, world, phrases);
            return null;
        }

        AnswerReading answer = AnswerReader.Read(plan, season, phrases.FileLanguage);
        if (answer.Answer is null)
        {
            world.Error.WriteLine(phrases.Say(Phrase.ShiftNoPlan, plan));
            Tell(answer.Faults, answer.FaultCount, world, phrases);
            return null;
        }

        if (week(season.Settings) is not { } index)
        {
            return null;
        }

        if (answer.Answer.Summary.InputDigest != reading.InputDigest)
        {
            world.Error.WriteLine(phrases.Say(Phrase.WarningLine, phrases[Phrase.ShiftOtherPlan]));
        }

        return ShiftForming.Of(season, answer.Answer, index);
    }

    /// <summary>A Monday or a number from 1.</summary>
    public static int? Week(string text, SeasonSettings season, World world, Phrasebook phrases)
    {
        int index = LocalDatePattern.Iso.Parse(text) is { Success: true, Value: var day } && day.DayOfWeek == IsoDayOfWeek.Monday ? season.WeekOf(day)
            : int.TryParse(text, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out int number) ? number - 1 : -1;
        if (index >= 0 && index < season.Weeks)
        {
            return index;
        }

        world.Error.WriteLine(phrases.Say(
            Phrase.ShiftWeekBad, text, LocalDatePattern.Iso.Format(season.FirstWeek), LocalDatePattern.Iso.Format(season.Monday(season.Weeks - 1)), season.Weeks));
        return null;
    }

    public static void Tell(IReadOnlyList<Fault> faults, int count, World world, Phrasebook phrases)
    {
        foreach (Fault fault in faults)
        {
            world.Error.WriteLine("  " + fault);
        }

        if (count > faults.Count)
        {
            world.Error.WriteLine("  " + phrases.Say(Phrase.MoreFaults, count - faults.Count));
        }
    }
}
