using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Shift;

/// <summary>What stands between two runs of a line.</summary>
/// <param name="Minutes">Of the line's working time, rounded up.</param>
/// <param name="Cost">In money, with the line's own cost for these minutes.</param>
/// <param name="CleanOut">Organic garlic comes after conventional.</param>
/// <param name="TravelMinutes">Of the next run's bins, which come up while the line is set up.</param>
/// <param name="Steps">The rows that it is of.</param>
public sealed record SetUp(int Minutes, double Cost, bool CleanOut, int TravelMinutes, IReadOnlyList<SetupRow> Steps)
{
    /// <summary>The next run begins so many working minutes after the one before: nothing is dumped before the set-up is done and bins are there.</summary>
    public int Gap => Math.Max(Minutes, TravelMinutes);
}

/// <summary>
/// Set-up by pair. Of each kind that changes (variety, organic, cuts) the row that says most counts: one of the line before one of any line,
/// then one that names what was run, then one that names what comes. What no row is for takes no time. A season without setups.csv
/// takes the line's own set-up between any two runs.
/// </summary>
public sealed class SetupTable(ShiftQuestion question)
{
    private static readonly SetupKind[] Changes = [SetupKind.Variety, SetupKind.Organic, SetupKind.Cuts];

    /// <summary>Between two runs of a line.</summary>
    public SetUp Between(ShiftRun before, ShiftRun next)
    {
        ShiftLine line = question.LineOf(next.Line);
        bool cleanOut = !before.Organic && next.Organic;
        int travel = Travel(next);
        if (question.Setups.Count == 0)
            return new SetUp(Whole(line.SetupMinutes), line.SetupMinutes / 60 * line.CostPerHour, cleanOut, travel, []);
        SetupRow[] steps =
        [
            .. Changes.Select(kind => Saying(kind, before) is var from && Saying(kind, next) is var to && from != to ? Row(kind, next.Line, from, to) : null)
                .OfType<SetupRow>(),
        ];
        int minutes = Whole(steps.Sum(step => step.Minutes));
        return new SetUp(minutes, (minutes / 60.0 * line.CostPerHour) + (double)steps.Sum(step => step.Cost), cleanOut, travel, steps);
    }

    /// <summary>Before a line's first run of the week: it stands set up and clean, so that only the bins' travel counts.</summary>
    public SetUp First(ShiftRun run) => new(0, 0, false, Travel(run), []);

    /// <summary>Cleaning of a line at the start of each of its days; null where it runs no food or no row is for it.</summary>
    public SetupRow? Cleaning(ShiftLine line) => line.IsFood ? Row(SetupKind.Cleaning, line.Id, null, null) : null;

    /// <summary>Minutes from the farthest of a run's places; 0 where no row is for them.</summary>
    public int Travel(ShiftRun run) => Whole(run.Places.Select(place => Row(SetupKind.Travel, run.Line, place.Text, null)?.Minutes ?? 0).DefaultIfEmpty(0).Max());

    /// <summary>The row that says most.</summary>
    private SetupRow? Row(SetupKind kind, LineId line, string? from, string? to) => question.Setups
        .Where(row => row.Kind == kind && (row.Line is null || row.Line == line) && (row.From is null || row.From == from) && (row.To is null || row.To == to))
        .MaxBy(row => (row.Line is null ? 0 : 4) + (row.From is null ? 0 : 2) + (row.To is null ? 0 : 1));

    private static string Saying(SetupKind kind, ShiftRun run) => kind switch
    {
        SetupKind.Variety => run.Variety?.Text ?? "",
        SetupKind.Organic => SetupRow.OrganicWord(run.Organic),
        SetupKind.Cuts => run.CutSet,
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No change of a line."),
    };

    private static int Whole(double minutes) => (int)Math.Ceiling(minutes - 1e-9);
}
