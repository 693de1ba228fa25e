using Cloveshed.Core.Seasons;
using NodaTime;

namespace Cloveshed.SeasonFiles.Reading;

/// <summary>
/// What of season.json could be read. The other files are checked against as much of it as there is, so that a fault in
/// season.json does not hide theirs.
/// </summary>
internal sealed record SeasonFrame(LocalDate? FirstWeek, int? Weeks, LocalDate? AsOf, SeasonSettings? Settings)
{
    /// <summary>The contract that the files are read by; null where season.json says none that is known, and nothing is then held against a file for it.</summary>
    public int? Contract { get; init; }

    /// <summary>Buyers' terms are read.</summary>
    public bool HasTerms => Contract is not 1;

    public static readonly SeasonFrame Nothing = new(null, null, null, null);

    // Where first_week is not known, weeks are counted from any Monday: the records are thrown away, only faults remain.
    private static readonly LocalDate AnyMonday = new(2024, 1, 1);

    public int WeekOf(LocalDate date)
    {
        int days = Period.DaysBetween(FirstWeek ?? AnyMonday, date);
        return days >= 0 ? days / 7 : -((6 - days) / 7);
    }

    /// <summary>The Monday of a week, by the same count.</summary>
    public LocalDate Monday(int week) => (FirstWeek ?? AnyMonday).PlusDays(7 * week);

    public bool InSeason(int week) => FirstWeek is null || Weeks is null || (week >= 0 && week < Weeks);

    /// <summary>The later of the harvest, as_of and first_week: where a row's path starts. Null where as_of is not known.</summary>
    public LocalDate? StartOf(LocalDate harvested) =>
        AsOf is { } asOf && FirstWeek is { } first ? LocalDate.Max(harvested, LocalDate.Max(asOf, first)) : null;
}
