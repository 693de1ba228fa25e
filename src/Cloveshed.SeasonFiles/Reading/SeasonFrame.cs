using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>
/// What of season.json could be read. The other files are checked against as much of it as there is, so that a fault in
/// season.json does not hide theirs.
/// </summary>
internal sealed record SeasonFrame(LocalDate? FirstWeek, int? Weeks, LocalDate? AsOf, SeasonSettings? Settings)
{
    public static readonly SeasonFrame Nothing = new(null, null, null, null);

    // Where first_week is not known, weeks are counted from any Monday: the records are thrown away, only faults remain.
    private static readonly LocalDate AnyMonday = new(2024, 1, 1);

    public int WeekOf(LocalDate date)
    {
        int days = Period.DaysBetween(FirstWeek ?? AnyMonday, date);
        return days >= 0 ? days / 7 : -((6 - days) / 7);
    }

    public bool InSeason(int week) => FirstWeek is null || Weeks is null || (week >= 0 && week < Weeks);

    /// <summary>The later of the harvest, as_of and first_week: where a row's path starts. Null where as_of is not known.</summary>
    public LocalDate? StartOf(LocalDate harvested) =>
        AsOf is { } asOf && FirstWeek is { } first ? LocalDate.Max(harvested, LocalDate.Max(asOf, first)) : null;
}
