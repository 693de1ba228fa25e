using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using NodaTime.Text;

namespace Cloveshed.Web.Plan.Week;

/// <summary>A week of a plan as a question, with what is made of it once for all orders.</summary>
public sealed class WeekSight(PlanSight plan, ShiftQuestion question, string key)
{
    public PlanSight Plan => plan;

    public ShiftQuestion Question => question;

    /// <summary>Names the plan, the week and what setups.csv and shifts.csv say: a search belongs to one of these.</summary>
    public string Key => key;

    public static string KeyOf(Guid plan, string monday, string digest) => $"{plan} {monday} {digest}";

    public ShiftTiming Timing { get; } = new(question);

    public string Monday => LocalDatePattern.Iso.Format(question.Settings.Monday(question.Week));

    public string Path => plan.Path + "/week";

    /// <summary>Times of an order, what it costs, and what does not hold.</summary>
    public WeekTimes Timed(IReadOnlyList<ShiftRun> order)
    {
        ShiftSchedule schedule = Timing.InOrder(order);
        ShiftCosts costs = ShiftCosts.Of(question, Timing, schedule);
        return new WeekTimes(order, schedule, costs, ShiftCheck.Breaches(question, schedule, costs));
    }

    /// <summary>
    /// The runs in an order, as an address has it: numbers joined by dots, of all lines, for where people are short it matters which line is
    /// placed first. What it leaves out follows in the greedy sequence.
    /// </summary>
    public IReadOnlyList<ShiftRun> Order(string? asked)
    {
        Dictionary<string, ShiftRun> runs = question.Runs.ToDictionary(run => run.Id, StringComparer.Ordinal);
        IEnumerable<string> greedy = Text(GreedySequence.Of(question, Timing)).Split('.', StringSplitOptions.RemoveEmptyEntries);
        return [.. (asked ?? "").Split('.').Where(runs.ContainsKey).Concat(greedy).Distinct(StringComparer.Ordinal).Select(id => runs[id])];
    }

    /// <summary>The order of a schedule: by starts, sorted-out bulbs after what they come from.</summary>
    public string Text(ShiftSchedule schedule)
    {
        Dictionary<string, int> sources = question.Runs.ToDictionary(run => run.Id, run => run.NotBefore.Count, StringComparer.Ordinal);
        return string.Join('.', schedule.Runs.OrderBy(run => run.Start).ThenBy(run => sources[run.Run]).ThenBy(run => run.Run, StringComparer.Ordinal).Select(run => run.Run));
    }

    public static string Text(IEnumerable<ShiftRun> order) => string.Join('.', order.Select(run => run.Id));

    /// <summary>The order with a run one place earlier or later on its line; null where it has none.</summary>
    public static string? Moved(IReadOnlyList<ShiftRun> order, string id, int by)
    {
        List<ShiftRun> all = [.. order];
        ShiftRun run = all.First(one => one.Id == id);
        ShiftRun[] line = [.. all.Where(one => one.Line == run.Line)];
        int at = Array.IndexOf(line, run) + by;
        if (at < 0 || at >= line.Length)
        {
            return null;
        }

        (int one, int other) = (all.IndexOf(run), all.IndexOf(line[at]));
        (all[one], all[other]) = (all[other], all[one]);
        return Text(all);
    }

    /// <summary>The page with an order.</summary>
    public string Href(string? order) => Paths.Query(Path, ("week", Monday), ("order", order));

    /// <summary>The run sheets of an order.</summary>
    public string Sheets(string? order, string? tongue = null) => Paths.Query(Path + "/sheets", ("week", Monday), ("order", order), ("in", tongue));
}

/// <summary>An order with its times.</summary>
public sealed record WeekTimes(IReadOnlyList<ShiftRun> Order, ShiftSchedule Schedule, ShiftCosts Costs, IReadOnlyList<ShiftBreach> Breaches);

/// <summary>Weeks of plans as questions, made once for each state of what they are made from.</summary>
public sealed class WeekShelf(SightShelf sights)
{
    private const int Room = 8;

    private readonly Shelf<WeekSight> shelf = new(Room);

    /// <summary>The plan's season with set-ups and shifts as they are now: they are not the plan's, and may be put right after it was made.</summary>
    public WeekSight Of(PlanEntry entry, Season now, string digest, int week)
    {
        string key = WeekSight.KeyOf(entry.Fact, LocalDatePattern.Iso.Format(now.Settings.Monday(week)), digest);
        return shelf.Of(key, () =>
        {
            PlanSight plan = sights.Of(entry);
            return new WeekSight(plan, ShiftForming.Of(plan.Season with { Setups = now.Setups, Shifts = now.Shifts }, plan.Answer, week), key);
        });
    }
}
