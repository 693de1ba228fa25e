using System.Text;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Api;

/// <summary>What the body of each kind of fact holds, in words, for those who write programs.</summary>
internal static class FactBodies
{
    private const string Entered = "{file, line, cells}: a row of a season file as entered, cells by column", Changed = "{file, row, cells}, corrects: the fact that set the row",
        Dropped = "{file, row}, corrects: the fact that set the row";

    private static readonly Dictionary<string, string> Said = new(StringComparer.Ordinal)
    {
        [FactKinds.SeasonOpened] = "{file, text, digest, name}: begins a season; its rows follow in the same batch, which an import makes",
        [FactKinds.SeasonChanged] = "{text}: season.json as it reads now",
        [FactKinds.RunPinned] = "{lot, line, week, mass, unit}: the plan must run at least this",
        [FactKinds.RunBarred] = "{lot, line, week}: the plan may not run this",
        [FactKinds.HoldLifted] = "{}, corrects: the pin or bar",
        [FactKinds.PlanAsked] = "{name, seconds, gap, seed, language, basis}: a plan is wanted",
        [FactKinds.PlanMade] = "{asked, document, value, bound, gap, status, basis}: a plan that passed the independent check",
        [FactKinds.PlanRefused] = "{asked, document, breaches or fault}: no plan that may be used came of it",
        [FactKinds.PlanStopped] = "{asked}: stopped before there was a plan",
        [FactKinds.PlanAdopted] = "{plan}: the plan to work by",
        [FactKinds.WeekOrdered] = "{plan, week, runs: [{run, line, start, end}]}: the order in which a week of a plan is run, by the shed's clock; the last one said counts",
        [FactKinds.WeekAsked] = "{plan, week, seconds, basis, digest}: the best order of a week of a plan is wanted, by the set-ups and shifts of facts up to basis",
        [FactKinds.WeekFound] = "{asked, status, seconds, first_bound, changeover_bound, runs: [{run, line, start, end}], fault}: what was found; status is proven, time, cancelled or failed",
        [FactKinds.RunDone] = "{lot, line, day, sorted, bins, mass, unit, note}, corrects: what was said of this run before: what really ran; sorted is true of sorted-out bulbs",
        [FactKinds.AirRead] = "{place, temp_c, rh, o2, co2, source, who, instrument}: a place's air at happened_at, in °C and percent; leave out what was not read; source is device where left out",
        [FactKinds.RoomStepped] = "{place, step, who, note, door}: what was done to a room; step is loading-began, pull-down-began, pulled-down, sealed, seal-broken, airing-began, turned-over or emptied",
        [FactKinds.RoomTested] = "{place, who, door: {tests: [{gas, value, who, instrument, at}], attendant, locked_and_tagged}}: tests at a room's door; gas is oxygen, flammable or carbon-dioxide; no leave to enter",
        [FactKinds.RoomDescribed] = "{place, figures, neighbours}: what a room is, whole; figures by key, such as length_m",
        [FactKinds.RecordWithdrawn] = "{reason}, corrects: the reading, step, test or description that no longer counts",
        [FactKinds.SizerCounted] = "{lot, file, bins, bulbs, from, counts, too_heavy}: bulbs by tenths of a gram from `from` on, as a sizer counted them; corrects: a count that it takes the place of",
        [FactKinds.SizerSet] = "{lot, boxes: [{class, last, min_g}], over_g}: the cuts that the sizer is to be set to",
        [FactKinds.DrumSet] = "{lot, holes_mm, order}: the holes that the drum is to be fitted with, order smallest-first or largest-first",
        [FactKinds.WeatherTold] = "{place, source, who, rows: [{at, temp_c, rh, rain_mm, wind_ms, forced_c}]}: weather of a place by local time; what was said of a moment last counts",
        [FactKinds.YardDescribed] = "{place, min_c, max_c, rh_at_max, rh_at_min, roof, forced_c, who}: what a curing place is, whole",
        [FactKinds.SackWeighed] = "{lot, sack, weight, unit, who}: a marked sack's weight at happened_at",
        [FactKinds.LotInspected] = "{lot, place, looked, sprouted, decayed, weighed: {now, then, since, unit}, who, note}: bulbs that somebody looked at, at happened_at",
        [FactKinds.YardRecordWithdrawn] = "{reason}, corrects: the weather, description, weighing or look that no longer counts",
        [FactKinds.Note] = "{text}: anything worth keeping, at any place",
    };

    /// <summary>The words of a kind; every kind has some.</summary>
    public static string Of(string kind) =>
        Said.TryGetValue(kind, out string? words) ? words
        : kind.EndsWith(".entered", StringComparison.Ordinal) ? Entered
        : kind.EndsWith(".changed", StringComparison.Ordinal) ? Changed
        : kind.EndsWith(".dropped", StringComparison.Ordinal) ? Dropped
        : throw new InvalidOperationException($"The kind {kind} is not described.");

    public static string Table() => FactKinds.All.Aggregate(new StringBuilder(), (list, kind) => list.Append("- `").Append(kind).Append("` ").Append(Of(kind)).Append('\n')).ToString();
}
