using System.Globalization;
using Cloveshed.Core.Calendar;
using CsCheck;
using NodaTime;

namespace Cloveshed.Core.Tests.Calendar;

/// <summary>The referee is the platform's ISO 8601 week arithmetic; 2026-11-23 was a Monday (any calendar).</summary>
public class ShedWeekTests
{
    private static readonly Gen<LocalDate> Date = Gen.Int[0, 400_000].Select(days => new LocalDate(1500, 1, 1).PlusDays(days));

    [Fact]
    public void The_week_of_a_date_is_its_ISO_week() =>
        Date.Sample(date =>
        {
            DateTime day = date.ToDateTimeUnspecified();
            DateTime monday = ISOWeek.ToDateTime(ISOWeek.GetYear(day), ISOWeek.GetWeekOfYear(day), DayOfWeek.Monday);
            return ShedWeek.Of(date).Monday == LocalDate.FromDateTime(monday);
        });

    [Fact]
    public void Every_date_is_in_one_week_of_seven_days() =>
        Date.Sample(date =>
        {
            ShedWeek week = ShedWeek.Of(date);
            return week.Contains(date) && week.Days.Contains(date) && week.Days.Length == 7 && week.Monday.DayOfWeek == IsoDayOfWeek.Monday
                && !week.Contains(week.Monday.PlusDays(-1)) && !week.Contains(week.Sunday.PlusDays(1))
                && ShedWeek.Named(week.Monday) == week;
        });

    [Fact]
    public void Weeks_are_counted_both_ways() =>
        Gen.Select(Date, Gen.Int[-5000, 5000]).Sample((date, count) =>
        {
            ShedWeek week = ShedWeek.Of(date), other = week.Plus(count);
            return other.WeeksAfter(week) == count && other.Monday == week.Monday.PlusWeeks(count) && (other < week) == (count < 0)
                && (other > week) == (count > 0) && (other <= week) == (count <= 0) && (other >= week) == (count >= 0)
                && Math.Sign(other.CompareTo(week)) == Math.Sign(count);
        });

    [Fact]
    public void A_week_is_named_by_its_Monday()
    {
        Assert.Equal("2026-11-23", ShedWeek.Named(new LocalDate(2026, 11, 23)).ToString());
        ArgumentException refused = Assert.Throws<ArgumentException>(() => ShedWeek.Named(new LocalDate(2026, 11, 25)));
        Assert.Contains("in the week of 2026-11-23", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void New_Year_does_not_split_a_week()
    {
        Assert.Equal(ShedWeek.Of(new LocalDate(2026, 12, 31)), ShedWeek.Of(new LocalDate(2027, 1, 3)));
        Assert.Equal(new LocalDate(2026, 12, 28), ShedWeek.Of(new LocalDate(2027, 1, 1)).Monday);
    }
}
