namespace Cloveshed.Core.Shift;

/// <summary>
/// From an order of runs to times: one run after the other is put as early as its line, its set-up, its bins, the people and what is placed
/// already let it be. Whatever order of starts a sound schedule has, this puts no run later than it (each run, where it stood, still
/// fits beside runs that have only moved forward), so that the best schedule is among those that it makes.
/// </summary>
public sealed class ShiftTiming
{
    private readonly ShiftQuestion question;
    private readonly SetupTable setups;
    private readonly Dictionary<LineId, LineHours> hours;
    private readonly double[] limit;

    /// <summary>For many orders of one question.</summary>
    public ShiftTiming(ShiftQuestion question)
    {
        this.question = question;
        setups = new SetupTable(question);
        hours = question.Lines.ToDictionary(line => line.Id, line => LineHours.Of(question, line));
        limit = HeadLimit.Of(question);
    }

    /// <summary>A line's working time.</summary>
    public LineHours Hours(LineId line) => hours[line];

    /// <summary>The set-ups.</summary>
    public SetupTable Setups => setups;

    /// <summary>Times of all runs in this order; runs of different lines keep out of each other's way only where people are short.</summary>
    public ShiftSchedule InOrder(IEnumerable<ShiftRun> order)
    {
        double[] heads = new double[ShiftQuestion.WeekMinutes];
        Dictionary<LineId, (ShiftRun Run, int End)> last = [];
        Dictionary<string, PlacedRun> placed = [];
        foreach (ShiftRun run in order)
        {
            LineHours line = hours[run.Line];
            int worked = last.TryGetValue(run.Line, out (ShiftRun Run, int End) before) ? before.End + setups.Between(before.Run, run).Gap : setups.First(run).Gap;
            foreach (PlacedRun source in run.NotBefore.Select(id => placed.GetValueOrDefault(id)).OfType<PlacedRun>())
            {
                worked = Math.Max(worked, line.Worked(source.Start));
                worked = Math.Max(worked, EndingAfter(line, source.End) - run.Minutes);
            }

            worked = Fitting(line, run, question.LineOf(run.Line).Heads, heads, worked);
            last[run.Line] = (run, worked + run.Minutes);
            placed[run.Id] = new PlacedRun(run.Id, run.Line, line.StartAt(worked), line.EndAt(worked + run.Minutes));
            Take(line, worked, run.Minutes, question.LineOf(run.Line).Heads, heads);
        }

        return new ShiftSchedule([.. placed.Values]);
    }

    /// <summary>The same order of starts, each as early as it can be.</summary>
    public ShiftSchedule Forward(ShiftSchedule schedule)
    {
        Dictionary<string, ShiftRun> runs = question.Runs.ToDictionary(run => run.Id);
        return InOrder(schedule.Runs.OrderBy(run => run.Start).ThenBy(run => runs[run.Run].NotBefore.Count).ThenBy(run => run.Run, StringComparer.Ordinal).Select(run => runs[run.Run]));
    }

    /// <summary>Each line in its own order; of the lines' next runs the one that can begin first is placed first, sorted-out bulbs after what they come from.</summary>
    public ShiftSchedule ByLine(IReadOnlyDictionary<LineId, IReadOnlyList<ShiftRun>> lines)
    {
        Dictionary<LineId, Queue<ShiftRun>> waiting = lines.Where(pair => pair.Value.Count > 0).ToDictionary(pair => pair.Key, pair => new Queue<ShiftRun>(pair.Value));
        Dictionary<LineId, int> free = waiting.ToDictionary(pair => pair.Key, _ => 0);
        List<ShiftRun> order = [];
        HashSet<string> done = [];
        while (waiting.Count > 0)
        {
            LineId[] open = [.. waiting.Keys.Where(line => waiting[line].Peek().NotBefore.All(id => done.Contains(id) || waiting.Values.All(queue => queue.All(run => run.Id != id))))];
            LineId next = (open.Length > 0 ? open : [.. waiting.Keys]).OrderBy(line => hours[line].StartAt(free[line])).ThenBy(line => line.Text, StringComparer.Ordinal).First();
            ShiftRun run = waiting[next].Dequeue();
            order.Add(run);
            done.Add(run.Id);
            free[next] += run.Minutes;
            if (waiting[next].Count == 0)
                waiting.Remove(next);
        }

        return InOrder(order);
    }

    /// <summary>The fewest worked minutes after which a line's clock shows no less than a minute.</summary>
    private static int EndingAfter(LineHours line, int minute)
    {
        int worked = Math.Max(1, line.Worked(minute));
        return line.EndAt(worked) >= minute ? worked : worked + 1;
    }

    /// <summary>The first place from here on where people suffice in every minute of the run.</summary>
    private int Fitting(LineHours line, ShiftRun run, double needed, double[] heads, int from)
    {
        int start = from;
        for (int at = start; at < start + run.Minutes && at < line.Total; at++)
            if (heads[line.StartAt(at)] + needed > limit[line.StartAt(at)] + ShiftCheck.HeadSlack)
                start = at + 1;
        return start;
    }

    private static void Take(LineHours line, int start, int minutes, double needed, double[] heads)
    {
        for (int at = start; at < start + minutes && at < line.Total; at++)
            heads[line.StartAt(at)] += needed;
    }
}
