using System.Globalization;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger.Facts;
using Cloveshed.Ledger.Folds;
using Cloveshed.SeasonFiles.Faults;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Ledger.Appending;

/// <summary>Whether a fact agrees with what the shed is by all facts before it.</summary>
/// <param name="HasDocument">Whether a document of that digest is stored or handed in with the batch.</param>
/// <param name="FindFact">A fact that is in the ledger or before this one in the batch.</param>
/// <param name="IsCorrected">Whether another fact about a room corrects that one already.</param>
internal sealed record FactMatter(ShedFold Fold, TextLanguage Language, Func<string, bool> HasDocument, Func<Guid, StoredFact?> FindFact, Func<Guid, bool> IsCorrected)
{
    private SeasonSettings? settings;

    /// <summary>Null when it agrees.</summary>
    public Refusal? Against(FormedFact fact, Body body)
    {
        Refusal Refuse(string rule, params ReadOnlySpan<object?> words) => RefusalTexts.Of(fact.Id, rule, Language, words);
        try
        {
            string kind = fact.Stored.Kind;
            if (FactKinds.OfRow(kind) is { } row)
                return AgainstRow(fact, row, body);
            if (fact.Corrects is { } corrected && kind != FactKinds.HoldLifted && FindFact(corrected) is null)
                return Refuse(RefusalTexts.CorrectsUnknown, corrected);
            if (FactKinds.OfRooms.Contains(kind))
                return RoomMatter.Against(this, fact, body);
            if (FactKinds.OfYard.Contains(kind))
                return YardMatter.Against(this, fact, body);
            switch (kind)
            {
                case FactKinds.SeasonOpened:
                    _ = (body.Text("text"), body.Sha256("digest"), body.Text("name"), body.Columns().Count());
                    return null;
                case FactKinds.SeasonChanged:
                    _ = body.Text("text");
                    return Fold.Season.IsOpen ? null : Refuse(RefusalTexts.SeasonNone);
                case FactKinds.RunPinned or FactKinds.RunBarred:
                    return AgainstHold(fact, body);
                case FactKinds.HoldLifted:
                    return fact.Corrects is not { } lifted ? Refuse(RefusalTexts.CorrectsMissing, fact.Stored.Kind)
                        : Fold.Hold(lifted) is null ? Refuse(RefusalTexts.HoldGone) : null;
                case FactKinds.SizerCounted or FactKinds.SizerSet or FactKinds.DrumSet:
                    return new LineMatter(Fold, Language).Against(fact, body);
                case FactKinds.PlanAsked:
                    _ = (body.Text("name"), body.Number("seconds"), body.Number("gap"), body.WholeOrNone("seed"), body.TextOrNone("language"));
                    return Fold.Season.IsOpen ? AgainstBasis(fact, body) : Refuse(RefusalTexts.SeasonNone);
                case FactKinds.PlanMade or FactKinds.PlanRefused or FactKinds.PlanStopped:
                    return AgainstEnd(fact, body);
                case FactKinds.PlanAdopted:
                    return Fold.Plan(body.Id("plan")) is null ? Refuse(RefusalTexts.PlanUnknown, body.Text("plan")) : null;
                case FactKinds.WeekOrdered:
                    return AgainstWeek(fact, body);
                case FactKinds.WeekAsked:
                    _ = (body.Number("seconds"), body.Text("digest"));
                    return AgainstPlannedWeek(fact, body) ?? AgainstBasis(fact, body);
                case FactKinds.RunDone:
                    return AgainstDone(fact, body);
                case FactKinds.WeekFound:
                    return AgainstFound(fact, body);
                default:
                    _ = body.Text("text");
                    return null;
            }
        }
        catch (BodyFault fault)
        {
            return Refuse(RefusalTexts.BodyForm, fact.Stored.Kind, fault.Message);
        }
        catch (OverflowException)
        {
            return Refuse(RefusalTexts.BodyForm, fact.Stored.Kind, "a number is too large");
        }
    }

    private Refusal? AgainstRow(FormedFact fact, RowKind kind, Body body)
    {
        Refusal Refuse(string rule, params ReadOnlySpan<object?> words) => RefusalTexts.Of(fact.Id, rule, Language, words);
        if (body.Text("file") != kind.Table.File)
            return Refuse(RefusalTexts.BodyForm, fact.Stored.Kind, $"file should be {kind.Table.File}");
        if (!Fold.Season.IsOpen)
            return Refuse(RefusalTexts.SeasonNone);
        if (kind.Step != RowStep.Dropped)
            _ = body.Cells(kind.Table);
        if (kind.Step == RowStep.Entered)
            return null;
        if (fact.Corrects is not { } corrects)
            return Refuse(RefusalTexts.CorrectsMissing, fact.Stored.Kind);
        int row = body.WholeOrNone("row") ?? throw new BodyFault("row", "a whole number");
        if (Fold.Season.Find(kind.Table.File, row) is not { } now)
            return Refuse(RefusalTexts.RowGone, kind.Table.File, row);
        // Whoever changes a row must have seen what it says: else one of two changes would be lost without a word.
        return now.Fact == corrects ? null : Refuse(RefusalTexts.RowMoved, kind.Table.File, row);
    }

    private Refusal? AgainstHold(FormedFact fact, Body body)
    {
        Refusal Refuse(string rule, params ReadOnlySpan<object?> words) => RefusalTexts.Of(fact.Id, rule, Language, words);
        if (Fold.Season.Finished() is not { } rows)
            return Refuse(RefusalTexts.SeasonNone);
        string lot = body.Text("lot"), line = body.Text("line");
        LocalDate week = body.Date("week");
        _ = body.Unit("unit");
        if (!rows.Of("lots.csv").Any(row => row.Cells["lot"] == lot))
            return Refuse(RefusalTexts.HoldUnknown, Language == TextLanguage.Spanish ? "el lote" : "lot", lot);
        if (!rows.Of("lines.csv").Any(row => row.Cells["line"] == line))
            return Refuse(RefusalTexts.HoldUnknown, Language == TextLanguage.Spanish ? "la línea" : "line", line);
        settings ??= SeasonFiles.SeasonReader.Settings(System.Text.Encoding.UTF8.GetBytes(rows.Settings));
        if (settings is null || week.DayOfWeek != IsoDayOfWeek.Monday || settings.WeekOf(week) is not (>= 0 and var index) || index >= settings.Weeks)
            return Refuse(RefusalTexts.HoldWeek, LocalDatePattern.Iso.Format(week));
        return body.NumberOrNone("mass") is < 0 and var mass ? Refuse(RefusalTexts.HoldMass, mass.ToString(CultureInfo.InvariantCulture)) : null;
    }

    private Refusal? AgainstDone(FormedFact fact, Body body)
    {
        Refusal Refuse(string rule, params ReadOnlySpan<object?> words) => RefusalTexts.Of(fact.Id, rule, Language, words);
        if (Fold.Season.Finished() is not { } rows)
            return Refuse(RefusalTexts.SeasonNone);
        (string lot, string line) = (body.Text("lot"), body.Text("line"));
        _ = (body.Date("day"), body.Unit("unit"), body.TextOrNone("note"));
        if (!rows.Of("lots.csv").Any(row => row.Cells["lot"] == lot))
            return Refuse(RefusalTexts.HoldUnknown, Language == TextLanguage.Spanish ? "el lote" : "lot", lot);
        if (!rows.Of("lines.csv").Any(row => row.Cells["line"] == line))
            return Refuse(RefusalTexts.HoldUnknown, Language == TextLanguage.Spanish ? "la línea" : "line", line);
        if (body.Number("mass") is not (>= 0 and <= 1e9))
            throw new BodyFault("mass", "a number of 0 or more");
        if (body.Number("bins") is not (>= 0 and <= 1e6))
            throw new BodyFault("bins", "a number of 0 or more");
        return fact.Corrects is { } corrected && FindFact(corrected)?.Kind != FactKinds.RunDone ? Refuse(RefusalTexts.CorrectsUnknown, corrected) : null;
    }

    private Refusal? AgainstWeek(FormedFact fact, Body body)
    {
        PlacedRuns(body);
        return AgainstPlannedWeek(fact, body);
    }

    private static void PlacedRuns(Body body)
    {
        HashSet<string> runs = new(StringComparer.Ordinal);
        foreach (Body run in body.PartsOrNone("runs"))
        {
            _ = (run.Text("line"), run.Text("start"), run.Text("end"));
            if (!runs.Add(run.Text("run")))
                throw new BodyFault("runs", "each run once");
        }

        if (runs.Count == 0)
            throw new BodyFault("runs", "a list of {run, line, start, end}");
    }

    private Refusal? AgainstPlannedWeek(FormedFact fact, Body body)
    {
        if (Fold.Plan(body.Id("plan")) is null)
            return RefusalTexts.Of(fact.Id, RefusalTexts.PlanUnknown, Language, body.Text("plan"));
        LocalDate week = body.Date("week");
        return week.DayOfWeek == IsoDayOfWeek.Monday ? null : RefusalTexts.Of(fact.Id, RefusalTexts.HoldWeek, Language, LocalDatePattern.Iso.Format(week));
    }

    private Refusal? AgainstFound(FormedFact fact, Body body)
    {
        Guid asked = body.Id("asked");
        if (FindFact(asked)?.Kind != FactKinds.WeekAsked)
            return RefusalTexts.Of(fact.Id, RefusalTexts.JobUnknown, Language, asked);
        _ = (body.Number("seconds"), body.NumberOrNone("first_bound"), body.NumberOrNone("changeover_bound"));
        switch (body.Text("status"))
        {
            case "failed":
                _ = body.Text("fault");
                return null;
            case "proven" or "time" or "cancelled":
                PlacedRuns(body);
                return null;
            default:
                throw new BodyFault("status", "proven, time, cancelled or failed");
        }
    }

    private Refusal? AgainstBasis(FormedFact fact, Body body)
    {
        long basis = body.Whole("basis");
        return basis < 0 || basis > Fold.LastSeq ? RefusalTexts.Of(fact.Id, RefusalTexts.BasisAhead, Language, basis) : null;
    }

    private Refusal? AgainstEnd(FormedFact fact, Body body)
    {
        Guid asked = body.Id("asked");
        if (Fold.Job(asked) is null)
            return RefusalTexts.Of(fact.Id, Fold.HasEnded(asked) ? RefusalTexts.JobEnded : RefusalTexts.JobUnknown, Language, asked);
        if (fact.Stored.Kind == FactKinds.PlanMade)
            _ = (body.Number("value"), body.NumberOrNone("bound"), body.NumberOrNone("gap"), body.Sha256("document"), body.TextOrNone("status"));
        if (fact.Stored.Kind == FactKinds.PlanRefused)
            _ = (body.TextOrNone("fault"), body.TextsOrNone("breaches").Count());
        string? document = body.TextOrNone("document") is null ? null : body.Sha256("document");
        if (document is not null && !HasDocument(document))
            return RefusalTexts.Of(fact.Id, RefusalTexts.DocumentMissing, Language, document);
        return fact.Stored.Kind == FactKinds.PlanMade ? AgainstBasis(fact, body) : null;
    }
}
