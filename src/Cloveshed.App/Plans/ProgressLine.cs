using Cloveshed.App.Words;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.App.Plans;

/// <summary>
/// One line on a terminal while a plan is being made, rewritten twice a second so that a long step is seen to run. Where
/// standard error is not a terminal it says nothing.
/// </summary>
internal sealed class ProgressLine : IDisposable
{
    private const int RewriteMilliseconds = 500;
    private const string BackAndClear = "\r\u001b[K";

    private readonly World world;
    private readonly Phrasebook phrases;
    private readonly Reader reader;
    private readonly double begun;
    private readonly Timer? timer;
    private readonly Lock writing = new();
    private PlanProgress latest = new(PlanStage.Begun, 0, null, null);
    private bool ended;

    public ProgressLine(World world, SeasonSettings season, Phrasebook phrases)
    {
        (this.world, this.phrases) = (world, phrases);
        reader = new(season, new ReportOptions(phrases.Language, season.MassUnit));
        begun = world.Elapsed();
        timer = world.ErrorIsTerminal ? new(_ => Write(), null, 0, RewriteMilliseconds) : null;
    }

    /// <summary>Takes the latest state; the planner may call it from any thread.</summary>
    public void Show(PlanProgress progress)
    {
        latest = progress;
        Write();
    }

    /// <summary>Clears the line: what is said next starts at its beginning.</summary>
    public void Dispose()
    {
        timer?.Dispose();
        lock (writing)
        {
            ended = true;
            if (world.ErrorIsTerminal)
            {
                world.Error.Write(BackAndClear);
            }
        }
    }

    /// <summary>"12 s  all room weeks  value $3,012,345  bound $3,040,000  gap 0.92%", with what is known so far.</summary>
    internal static string Text(PlanProgress progress, double seconds, Reader reader, Phrasebook phrases)
    {
        List<string> parts = [$"{reader.Number(seconds, 0)} s", Stage(progress.Stage, phrases)];
        if (progress.Value is { } value && double.IsFinite(value))
        {
            parts.Add(phrases.Say(Phrase.ProgressValue, reader.Money(value)));
        }

        if (progress.Bound is { } bound && double.IsFinite(bound))
        {
            parts.Add(phrases.Say(Phrase.ProgressBound, reader.Money(bound)));
            if (progress.Value is { } known && double.IsFinite(known))
            {
                parts.Add(phrases.Say(Phrase.ProgressGap, reader.Percent(Math.Max(0, bound - known) / Math.Max(1, Math.Abs(known)), 2)));
            }
        }

        return string.Join("  ", parts.Where(part => part.Length > 0));
    }

    private void Write()
    {
        if (!world.ErrorIsTerminal)
        {
            return;
        }

        lock (writing)
        {
            if (!ended)
            {
                world.Error.Write(BackAndClear + Text(latest, world.Elapsed() - begun, reader, phrases));
            }
        }
    }

    private static string Stage(PlanStage stage, Phrasebook phrases) => stage switch
    {
        PlanStage.Begun => phrases[Phrase.StageBegun],
        PlanStage.AllRoomWeeks => phrases[Phrase.StageAllRoomWeeks],
        PlanStage.RoomWeeksFound => phrases[Phrase.StageRoomWeeksFound],
        PlanStage.RoomWeeksImproved => phrases[Phrase.StageRoomWeeksImproved],
        PlanStage.GivenRoomWeeks => phrases[Phrase.StageGivenRoomWeeks],
        PlanStage.RunsDecided => phrases[Phrase.StageRunsDecided],
        _ => throw new ArgumentOutOfRangeException(nameof(stage)),
    };
}
