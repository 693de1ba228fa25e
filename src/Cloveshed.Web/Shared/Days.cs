using System.Globalization;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures;
using Cloveshed.Pictures.Reading;
using NodaTime;

namespace Cloveshed.Web.Shared;

/// <summary>Days for the viewer where no season is open to write them by.</summary>
public static class Days
{
    private static readonly SeasonSettings NoSeason = new("", new LocalDate(2001, 1, 1), 1, MassUnit.Pound, "USD", new LocalDate(2001, 1, 1), 0, null);

    private static readonly Reader English = new(NoSeason, new ReportOptions(Language.En, MassUnit.Pound));
    private static readonly Reader Spanish = new(NoSeason, new ReportOptions(Language.Es, MassUnit.Pound));

    /// <summary>Day and clock time as they were at the place where it happened.</summary>
    public static string LongWithTime(DateTimeOffset time, Language language) =>
        $"{Long(LocalDate.FromDateTime(time.DateTime), language)} {time.ToString("HH:mm", CultureInfo.InvariantCulture)}";

    /// <summary>The day with its year.</summary>
    public static string Long(LocalDate day, Language language) => (language == Language.Es ? Spanish : English).DayYear(day);
}
