using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Core.Calendar;

/// <summary>
/// A week of the shed, Monday to Sunday, both included, named by its Monday. The same seven days as a week of ISO 8601, but
/// never numbered: a week number needs a year, and at New Year two people take two years.
/// </summary>
public readonly record struct ShedWeek : IComparable<ShedWeek>
{
    // Days since 1970-01-05, a Monday, over 7: the default value is a week like any other.
    private static readonly LocalDate Origin = new(1970, 1, 5);
    private readonly int weeks;

    private ShedWeek(int weeks) => this.weeks = weeks;

    /// <summary>The day that names the week.</summary>
    public LocalDate Monday => Origin.PlusWeeks(weeks);

    /// <summary>The last day of the week.</summary>
    public LocalDate Sunday => Monday.PlusDays(6);

    /// <summary>The seven days, Monday first.</summary>
    public DateInterval Days => new(Monday, Sunday);

    /// <summary>The week that holds a date.</summary>
    public static ShedWeek Of(LocalDate date)
    {
        int days = Period.DaysBetween(Origin, date);
        return new((days - ((days % 7) + 7) % 7) / 7);
    }

    /// <summary>The week named by a date that must be a Monday: what a file says.</summary>
    public static ShedWeek Named(LocalDate monday) =>
        monday.DayOfWeek == IsoDayOfWeek.Monday
            ? Of(monday)
            : throw new ArgumentException(
                $"A week is named by its Monday; {LocalDatePattern.Iso.Format(monday)} is a {monday.DayOfWeek}, in the week of {Of(monday)}.", nameof(monday));

    /// <summary>So many weeks later; earlier where negative.</summary>
    public ShedWeek Plus(int count) => new(weeks + count);

    /// <summary>How many weeks this one is after another: 0 for the same, negative where it is before.</summary>
    public int WeeksAfter(ShedWeek other) => weeks - other.weeks;

    /// <summary>Whether a date is one of the seven days.</summary>
    public bool Contains(LocalDate date) => Of(date) == this;

    /// <summary>Earlier.</summary>
    public static bool operator <(ShedWeek left, ShedWeek right) => left.weeks < right.weeks;

    /// <summary>Earlier or the same.</summary>
    public static bool operator <=(ShedWeek left, ShedWeek right) => left.weeks <= right.weeks;

    /// <summary>Later.</summary>
    public static bool operator >(ShedWeek left, ShedWeek right) => left.weeks > right.weeks;

    /// <summary>Later or the same.</summary>
    public static bool operator >=(ShedWeek left, ShedWeek right) => left.weeks >= right.weeks;

    /// <inheritdoc/>
    public int CompareTo(ShedWeek other) => weeks.CompareTo(other.weeks);

    /// <summary>The Monday in ISO 8601: "2026-11-23".</summary>
    public override string ToString() => LocalDatePattern.Iso.Format(Monday);
}
