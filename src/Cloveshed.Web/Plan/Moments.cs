using System.Globalization;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Shared;
using NodaTime;

namespace Cloveshed.Web.Plan;

/// <summary>Moments as the shed's own clock and calendar have them.</summary>
internal static class Moments
{
    /// <summary>The day that is looked at, today where none was chosen.</summary>
    public static LocalDate Today(TimeProvider clock, Viewer viewer) => viewer.AsOf?.Day ?? Day(clock.GetLocalNow());

    /// <summary>Day, year and minute by the shed's clock.</summary>
    public static string Long(DateTimeOffset moment, TimeProvider clock, Reader reader)
    {
        DateTimeOffset here = TimeZoneInfo.ConvertTime(moment, clock.LocalTimeZone);
        return reader.DayYear(Day(here)) + ", " + here.ToString("HH:mm", CultureInfo.InvariantCulture);
    }

    /// <summary>The day of a moment where it happened.</summary>
    public static LocalDate Day(DateTimeOffset moment) => new(moment.Year, moment.Month, moment.Day);
}
