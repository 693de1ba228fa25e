using System.Runtime.CompilerServices;
using System.Text;
using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using Cloveshed.SeasonFiles;
using NodaTime;

namespace Cloveshed.Ledger;

/// <summary>A hold on the plan: a run that it must make (pinned) or must not (barred), in force until lifted.</summary>
/// <param name="Week">Its Monday.</param>
/// <param name="Mass">For a pin: at least this much, as entered; null: the line's least.</param>
/// <param name="Unit">The unit that Mass was entered in.</param>
public sealed record RunHold(Guid Fact, bool Pinned, LotId Lot, LineId Line, LocalDate Week, double? Mass, MassUnit Unit)
{
    /// <summary>Mass in a season's unit.</summary>
    public double? MassIn(MassUnit unit) =>
        Mass is not { } mass || unit == Unit ? Mass : unit == MassUnit.Kilogram ? mass * Core.Quantities.Mass.KilogramsPerPound : mass / Core.Quantities.Mass.KilogramsPerPound;
}

/// <summary>A plan that passed the independent check.</summary>
/// <param name="Fact">The fact plan.made.</param>
/// <param name="Asked">The job that it answers.</param>
/// <param name="Document">SHA-256 of the answer's files; <see cref="ShedLedger.Document"/> gives them.</param>
/// <param name="Gap">What is left to the bound, a share.</param>
/// <param name="Basis">The number of the last fact that it was planned from.</param>
/// <param name="Status">gap, time or cancelled, as in summary.json.</param>
public sealed record PlanEntry(
    Guid Fact, Guid Asked, string Name, DateTimeOffset MadeAt, string Document, double Value, double Bound, double Gap, long Basis, string Status);

/// <summary>A plan asked for and not ended yet: made, refused or stopped.</summary>
/// <param name="Gap">Where to stop, a share.</param>
/// <param name="Language">en or es: of the texts in the answer.</param>
public sealed record PlanJob(
    Guid Fact, string Name, double Seconds, double Gap, int? Seed, long Basis, string Language, DateTimeOffset AskedAt);

/// <summary>A job that ended without a plan.</summary>
/// <param name="Fact">The fact plan.refused or plan.stopped.</param>
/// <param name="Why">What plan.refused says: breaches or a fault; empty when it was stopped.</param>
/// <param name="Document">The answer that did not hold, where there was one.</param>
public sealed record PlanEnd(Guid Fact, Guid Asked, string Name, DateTimeOffset At, bool Stopped, string Why, string? Document);

/// <summary>
/// The shed as the facts up to a head make it: a pure fold, never changed. Read from it as long as you like while others write.
/// </summary>
/// <param name="Rows">The current season; null before one was opened.</param>
/// <param name="Holds">In force, in the order in which they were set.</param>
/// <param name="Plans">In the order in which they were made.</param>
/// <param name="Adopted">The plan to work by.</param>
/// <param name="Jobs">In the order in which they were asked.</param>
/// <param name="Ended">Jobs that gave no plan, in the order in which they ended.</param>
public sealed record ShedState(
    LedgerHead Head, SeasonRows? Rows, IReadOnlyList<RunHold> Holds, IReadOnlyList<PlanEntry> Plans, PlanEntry? Adopted,
    IReadOnlyList<PlanJob> Jobs, IReadOnlyList<PlanEnd> Ended)
{
    /// <summary>Nothing yet.</summary>
    public static ShedState Empty { get; } = new(LedgerHead.None, null, [], [], null, [], []);

    /// <summary>What sizers counted, file by file, in the order in which it was taken; a count that was corrected is here as corrected.</summary>
    public IReadOnlyList<SizerCount> SizerCounts { get; init; } = [];

    /// <summary>The last setting of the sizer for each lot.</summary>
    public IReadOnlyList<SizerSetting> SizerSettings { get; init; } = [];

    /// <summary>The last holes of the drum for each lot.</summary>
    public IReadOnlyList<DrumSetting> DrumSettings { get; init; } = [];

    /// <summary>All that the sizer counted of a lot, joined; null where it counted no bulb of it.</summary>
    public SizerTotal? SizerTotal(LotId lot)
    {
        WeightHistogram counts = new();
        int bins = 0;
        foreach (SizerCount count in SizerCounts)
        {
            if (count.Lot != lot || count.Bulbs == 0)
                continue;
            count.Into(counts);
            bins += count.BinsRun;
        }
        return bins == 0 ? null : new SizerTotal(counts, bins);
    }

    /// <summary>
    /// What the rows mean, with what sizers counted; null before a season was opened, and where a past day knew an order of a product that
    /// came later. Read when it is first asked for, and then kept.
    /// </summary>
    public Season? Season => Reading?.Season is not { } season || SizerCounts.Count == 0 ? Reading?.Season : Counted.Of(season, this);

    /// <summary>What <see cref="Season"/> says of lots was made from this: the rows, and the counts by their facts.</summary>
    public string KnowledgeDigest => SizerCounts.Count == 0 ? InputDigest : $"{InputDigest} {string.Join(',', SizerCounts.Select(count => count.Fact))}";

    /// <summary>The digest of <see cref="Files"/> as the season reader makes it; empty before a season was opened.</summary>
    public string InputDigest => Reading?.InputDigest ?? "";

    /// <summary>What was read otherwise than written, or left out.</summary>
    public IReadOnlyList<SeasonFiles.Faults.SeasonWarning> Warnings => Reading?.Warnings ?? [];

    /// <summary>Shared by the states of one season, so that it is read once and not again with each note and plan.</summary>
    internal SeasonText? Text { get; init; }

    private SeasonReading? Reading => Text?.Reading;

    /// <summary>The season's files, as <see cref="SeasonExport"/> writes them; none before a season was opened.</summary>
    public IReadOnlyDictionary<string, ReadOnlyMemory<byte>> Files() => Text?.Files ?? new Dictionary<string, ReadOnlyMemory<byte>>();
}

/// <summary>A season with its sizers' counts, joined once for each state of both.</summary>
internal static class Counted
{
    private static readonly ConditionalWeakTable<IReadOnlyList<SizerCount>, Tuple<Season, Season>> Made = [];

    public static Season Of(Season season, ShedState state)
    {
        if (Made.TryGetValue(state.SizerCounts, out Tuple<Season, Season>? made) && ReferenceEquals(made.Item1, season))
            return made.Item2;
        Season counted = season with
        {
            SizerCounts =
            [
                .. state.SizerCounts.Select(count => count.Lot).Distinct().Select(lot => (Lot: lot, Total: state.SizerTotal(lot)))
                    .Where(lot => lot.Total is not null).Select(lot => new SizerCounted(lot.Lot, lot.Total!.BinsRun, lot.Total.Counts)),
            ],
        };
        Made.AddOrUpdate(state.SizerCounts, Tuple.Create(season, counted));
        return counted;
    }
}

/// <summary>A season's rows as files and as what they mean, each made once, when first asked for.</summary>
internal sealed class SeasonText(SeasonRows rows)
{
    private readonly Lazy<IReadOnlyDictionary<string, ReadOnlyMemory<byte>>> files = new(() =>
    {
        Dictionary<string, ReadOnlyMemory<byte>> made = new() { [SeasonTable.SettingsName] = Encoding.UTF8.GetBytes(rows.Settings) };
        foreach (FileRows file in rows.Tables.Values)
            made[file.Table.File] = file.Render();
        return made;
    });

    private Lazy<SeasonReading>? reading;

    public IReadOnlyDictionary<string, ReadOnlyMemory<byte>> Files => files.Value;

    public SeasonReading Reading => LazyInitializer.EnsureInitialized(ref reading, () => new(() => SeasonReader.Parse(Files))).Value;

    /// <summary>The rows with the reader's words in a language; the reading is kept when the season is sound.</summary>
    public SeasonReading ReadIn(SeasonFiles.Faults.TextLanguage language)
    {
        SeasonReading read = SeasonReader.Parse(Files, language);
        if (language == SeasonFiles.Faults.TextLanguage.English)
            Interlocked.CompareExchange(ref reading, new(read), null);
        return read;
    }
}
