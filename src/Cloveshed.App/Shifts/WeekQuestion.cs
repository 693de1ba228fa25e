using Cloveshed.App.Plans;
using Cloveshed.App.Words;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.App.Shifts;

/// <summary>A season and its plan from their folders, and one week of them as a question; what is wrong is said and null comes back.</summary>
internal static class WeekQuestion
{
    /// <param name="week">Finds the week in the season; null where there is none, with the reason said.</param>
    public static ShiftQuestion? Read(string folder, string plan, Func<SeasonSettings, int?> week, World world, Phrasebook phrases)
    {
        if (SeasonAndPlan.Read(folder, plan, Phrase.ShiftNoPlan, world, phrases) is not { } read || week(read.Season.Settings) is not { } index)
        {
            return null;
        }

        read.Warn(world, phrases);
        return ShiftForming.Of(read.Season, read.Plan, index);
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
}
