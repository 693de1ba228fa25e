using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Shift;
using Cloveshed.Core.Sizes;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Ledger;

/// <summary>Where facts come from: when, said by which role, at which device and place. It makes each kind of fact in its form.</summary>
/// <param name="HappenedAt">When it happened, with the offset of the place.</param>
/// <param name="By">A role or a kind of source, such as command or web; never a person's name.</param>
public sealed record FactOrigin(DateTimeOffset HappenedAt, string By, string Device = "", string Place = "")
{
    /// <summary>Now, by a clock and its time zone.</summary>
    public static FactOrigin Now(TimeProvider clock, string by, string device = "", string place = "") => new(clock.GetLocalNow(), by, device, place);

    /// <param name="id">An id made earlier, so that what is sent twice is one fact; a new one otherwise.</param>
    public NewFact Make(string kind, JsonObject body, Guid? corrects = null, Guid? id = null)
    {
        body["v"] = 1;
        return new NewFact(id ?? NewId(), kind, HappenedAt, By, Device, Place, JsonSerializer.SerializeToElement(body), corrects);
    }

    /// <summary>A row more in one of the season's files.</summary>
    /// <param name="reason">Why, in a person's words; null where nobody said.</param>
    public NewFact RowEntered(string file, IReadOnlyDictionary<string, string> cells, Guid? id = null, string? reason = null) =>
        Make(FactKinds.Entered(file), Why(new JsonObject { ["file"] = file, ["cells"] = Cells(cells) }, reason), null, id);

    /// <summary>A row now reads so, whole; a column that is left out is empty.</summary>
    /// <param name="was">The row as it was when it was looked at.</param>
    public NewFact RowChanged(SeasonRow was, IReadOnlyDictionary<string, string> cells, Guid? id = null, string? reason = null) =>
        Make(FactKinds.Changed(was.File), Why(new JsonObject { ["file"] = was.File, ["row"] = was.Row, ["cells"] = Cells(cells) }, reason), was.Fact, id);

    /// <summary>A row no longer counts.</summary>
    public NewFact RowDropped(SeasonRow was, Guid? id = null, string? reason = null) =>
        Make(FactKinds.Dropped(was.File), Why(new JsonObject { ["file"] = was.File, ["row"] = was.Row }, reason), was.Fact, id);

    /// <summary>season.json now reads so.</summary>
    public NewFact SeasonChanged(string text, Guid? id = null, string? reason = null) => Make(FactKinds.SeasonChanged, Why(new JsonObject { ["text"] = text }, reason), null, id);

    /// <param name="mass">At least this much; null: at all.</param>
    public NewFact RunPinned(LotId lot, LineId line, LocalDate week, double? mass, MassUnit unit, Guid? id = null)
    {
        JsonObject body = Hold(lot, line, week);
        body["mass"] = mass;
        body["unit"] = unit == MassUnit.Kilogram ? "kg" : "lb";
        return Make(FactKinds.RunPinned, body, null, id);
    }

    /// <summary>The plan may not run the lot on the line in the week.</summary>
    public NewFact RunBarred(LotId lot, LineId line, LocalDate week, Guid? id = null) => Make(FactKinds.RunBarred, Hold(lot, line, week), null, id);

    /// <summary>A pin or bar is no longer in force.</summary>
    public NewFact HoldLifted(RunHold hold, Guid? id = null) => Make(FactKinds.HoldLifted, [], hold.Fact, id);

    /// <param name="basis">The number of the last fact that is planned from.</param>
    /// <param name="language">en or es.</param>
    public NewFact PlanAsked(string name, double seconds, double gap, int? seed, string language, long basis, Guid? id = null) =>
        Make(FactKinds.PlanAsked, new JsonObject { ["name"] = name, ["seconds"] = seconds, ["gap"] = gap, ["seed"] = seed, ["language"] = language, ["basis"] = basis }, null, id);

    /// <summary>A plan that held in the check.</summary>
    /// <param name="document">SHA-256 of <see cref="PlanDocument.Pack"/>, handed in with the fact.</param>
    /// <param name="bound">Not a number where none was reached.</param>
    /// <param name="status">gap, time or cancelled.</param>
    public NewFact PlanMade(Guid asked, string document, double value, double bound, double gap, string status, long basis, Guid? id = null) =>
        Make(FactKinds.PlanMade, new JsonObject
        {
            ["asked"] = asked.ToString("D", CultureInfo.InvariantCulture), ["document"] = document, ["value"] = value, ["bound"] = Finite(bound),
            ["gap"] = Finite(gap), ["status"] = status, ["basis"] = basis,
        }, null, id);

    /// <summary>A plan that did not hold in the check, or a planner that failed.</summary>
    /// <param name="fault">Why the planner failed; null where the check refused.</param>
    public NewFact PlanRefused(Guid asked, string? fault, IReadOnlyList<string> breaches, string? document = null, Guid? id = null) =>
        Make(FactKinds.PlanRefused, new JsonObject
        {
            ["asked"] = asked.ToString("D", CultureInfo.InvariantCulture), ["fault"] = fault, ["breaches"] = new JsonArray([.. breaches.Select(breach => (JsonNode)breach)]),
            ["document"] = document,
        }, null, id);

    /// <summary>A job was stopped before there was a plan.</summary>
    public NewFact PlanStopped(Guid asked, Guid? id = null) =>
        Make(FactKinds.PlanStopped, new JsonObject { ["asked"] = asked.ToString("D", CultureInfo.InvariantCulture) }, null, id);

    /// <summary>The plan to work by from now on.</summary>
    public NewFact PlanAdopted(PlanEntry plan, Guid? id = null) =>
        Make(FactKinds.PlanAdopted, new JsonObject { ["plan"] = plan.Fact.ToString("D", CultureInfo.InvariantCulture) }, null, id);

    /// <summary>The order in which a week of a plan is run from now on.</summary>
    /// <param name="runs">In the order in which they were placed.</param>
    public NewFact WeekOrdered(Guid plan, ShiftQuestion question, IReadOnlyList<PlacedRun> runs, Guid? id = null) =>
        Make(FactKinds.WeekOrdered, new JsonObject
        {
            ["plan"] = plan.ToString("D", CultureInfo.InvariantCulture), ["week"] = LocalDatePattern.Iso.Format(question.Settings.Monday(question.Week)),
            ["runs"] = Placed(question, runs),
        }, null, id);

    /// <summary>The best order of a week of a plan is wanted.</summary>
    /// <param name="seconds">Of the clock, at most.</param>
    /// <param name="basis">The number of the last fact by which set-ups and shifts are read.</param>
    /// <param name="digest">Of the season's files by then: a search belongs to one state of them.</param>
    public NewFact WeekAsked(Guid plan, LocalDate monday, double seconds, long basis, string digest, Guid? id = null) =>
        Make(FactKinds.WeekAsked, new JsonObject
        {
            ["plan"] = plan.ToString("D", CultureInfo.InvariantCulture), ["week"] = LocalDatePattern.Iso.Format(monday), ["seconds"] = seconds, ["basis"] = basis, ["digest"] = digest,
        }, null, id);

    /// <summary>What a search for a week's order found; it ends what was asked.</summary>
    /// <param name="status">proven, time or cancelled.</param>
    public NewFact WeekFound(Guid asked, string status, ShiftAnswer answer, ShiftQuestion question, Guid? id = null) =>
        Make(FactKinds.WeekFound, new JsonObject
        {
            ["asked"] = asked.ToString("D", CultureInfo.InvariantCulture), ["status"] = status, ["seconds"] = answer.Seconds, ["first_bound"] = Finite(answer.FirstBound),
            ["changeover_bound"] = Finite(answer.ChangeoverBound), ["runs"] = Placed(question, answer.Schedule.Runs),
        }, null, id);

    /// <summary>A search for a week's order that failed; it ends what was asked.</summary>
    public NewFact WeekNotFound(Guid asked, double seconds, string fault, Guid? id = null) =>
        Make(FactKinds.WeekFound, new JsonObject { ["asked"] = asked.ToString("D", CultureInfo.InvariantCulture), ["status"] = "failed", ["seconds"] = seconds, ["fault"] = fault }, null, id);

    /// <summary>What really ran of a lot, on a line on a day.</summary>
    /// <param name="bins">Dumped; 0 for sorted-out bulbs.</param>
    /// <param name="mass">As weighed when it was dumped, in <paramref name="unit"/>; 0 in a correction: it did not run.</param>
    /// <param name="corrects">What was said of this run before; null: it was not told yet.</param>
    public NewFact RunDone(LotId lot, LineId line, LocalDate day, bool sorted, double bins, double mass, MassUnit unit, string? note, Guid? id = null, Guid? corrects = null) =>
        Make(FactKinds.RunDone, new JsonObject
        {
            ["lot"] = lot.Text, ["line"] = line.Text, ["day"] = LocalDatePattern.Iso.Format(day), ["sorted"] = sorted, ["bins"] = bins, ["mass"] = mass,
            ["unit"] = unit == MassUnit.Pound ? "lb" : "kg", ["note"] = note,
        }, corrects, id);

    private static JsonArray Placed(ShiftQuestion question, IReadOnlyList<PlacedRun> runs) => new([.. runs.Select(run => (JsonNode)new JsonObject
    {
        ["run"] = run.Run, ["line"] = run.Line.Text, ["start"] = LocalDateTimePattern.GeneralIso.Format(question.At(run.Start)), ["end"] = LocalDateTimePattern.GeneralIso.Format(question.At(run.End)),
    })]);

    /// <summary>What the sizer counted of a lot.</summary>
    /// <param name="binsRun">Bins that these bulbs came out of.</param>
    /// <param name="corrects">A count that this one takes the place of; null: it is added to the others.</param>
    public NewFact SizerCounted(LotId lot, string file, int binsRun, WeightHistogram counts, Guid? id = null, Guid? corrects = null)
    {
        int from = 0, to = WeightHistogram.Cells;
        while (from < to && counts[from] == 0)
            from++;
        while (to > from && counts[to - 1] == 0)
            to--;
        return Make(FactKinds.SizerCounted, new JsonObject
        {
            ["lot"] = lot.Text, ["file"] = file, ["bins"] = binsRun, ["bulbs"] = counts.Bulbs, ["from"] = from == to ? 0 : from,
            ["counts"] = new JsonArray([.. Enumerable.Range(from, to - from).Select(tenths => (JsonNode)counts[tenths])]), ["too_heavy"] = counts.TooHeavy,
        }, corrects, id);
    }

    /// <summary>The cuts that the sizer is to be set to for a lot.</summary>
    public NewFact SizerSet(LotId lot, IReadOnlyList<SetBox> boxes, double? overG, Guid? id = null) =>
        Make(FactKinds.SizerSet, new JsonObject
        {
            ["lot"] = lot.Text, ["over_g"] = overG,
            ["boxes"] = new JsonArray([.. boxes.Select(box => (JsonNode)new JsonObject { ["class"] = box.Class, ["last"] = box.Last, ["min_g"] = box.MinG })]),
        }, null, id);

    /// <summary>The holes that the drum is to be fitted with for a lot.</summary>
    /// <param name="holesMm">Small to large.</param>
    public NewFact DrumSet(LotId lot, IReadOnlyList<double> holesMm, bool largestFirst, Guid? id = null) =>
        Make(FactKinds.DrumSet, new JsonObject
        {
            ["lot"] = lot.Text, ["holes_mm"] = new JsonArray([.. holesMm.Select(mm => (JsonNode)mm)]), ["order"] = largestFirst ? "largest-first" : "smallest-first",
        }, null, id);

    /// <summary>Words for whoever reads the ledger.</summary>
    public NewFact Note(string text, Guid? id = null) => Make(FactKinds.Note, new JsonObject { ["text"] = text }, null, id);

    /// <summary>A UUID of version 7 by the time at which it happened.</summary>
    internal Guid NewId() => Guid.CreateVersion7(HappenedAt);

    private static JsonObject Why(JsonObject body, string? reason)
    {
        if (reason is not null)
            body["reason"] = reason;
        return body;
    }

    private static JsonObject Hold(LotId lot, LineId line, LocalDate week) =>
        new() { ["lot"] = lot.Text, ["line"] = line.Text, ["week"] = LocalDatePattern.Iso.Format(week) };

    private static JsonObject Cells(IReadOnlyDictionary<string, string> cells) => [.. cells.Select(cell => KeyValuePair.Create(cell.Key, (JsonNode?)cell.Value))];

    private static JsonNode? Finite(double number) => double.IsFinite(number) ? number : null;
}
