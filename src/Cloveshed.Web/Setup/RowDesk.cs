using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Http;

namespace Cloveshed.Web.Setup;

/// <summary>
/// Takes a row's form to the ledger. What the season's reader has against it is asked first, so that each fault stands at its
/// field; the ledger asks again, because another hand may have been quicker.
/// </summary>
public sealed class RowDesk(ShedLedger ledger, ShedReading shed, FactDesk desk, SaidOnce said, TimeProvider clock)
{
    private const string Place = "setup";

    private Words<SetupWord> Words => Shared.Words.Of<SetupWord>(shed.Viewer.Language);

    /// <summary>A row more: the form's cells, or those given.</summary>
    public IResult Enter(HttpContext context, IFormCollection form, SeasonList list, IReadOnlyDictionary<string, string>? given = null) => Guarded(context, form, id =>
    {
        IReadOnlyDictionary<string, string> cells = given ?? RowForm.Cells(form, list.Columns, null);
        return Put(context, form, list, null, cells, false, id, (origin, reason) => origin.RowEntered(list.File, cells, id, reason));
    });

    /// <summary>A row now reads so.</summary>
    public IResult Change(HttpContext context, IFormCollection form, SeasonList list, int number, Guid seen, IReadOnlyDictionary<string, string>? given = null) => Guarded(context, form, id =>
    {
        SeasonRow? was = shed.State.Rows!.Find(list.File, number);
        IReadOnlyDictionary<string, string> cells = given ?? RowForm.Cells(form, list.Columns, was?.Cells);
        SeasonRow corrected = new(list.File, number, cells, seen, 0);
        return Put(context, form, list, was ?? corrected, cells, false, id, (origin, reason) => origin.RowChanged(corrected, cells, id, reason));
    });

    /// <summary>A row no longer counts.</summary>
    public IResult Drop(HttpContext context, IFormCollection form, SeasonList list, int number, Guid seen) => Guarded(context, form, id =>
    {
        SeasonRow was = shed.State.Rows!.Find(list.File, number) ?? new(list.File, number, new Dictionary<string, string>(), seen, 0);
        return Put(context, form, list, was, was.Cells, true, id, (origin, reason) => origin.RowDropped(was with { Fact = seen }, id, reason));
    });

    /// <summary>The fact that a form made when it was sent before; null where it is new.</summary>
    public Fact? SentBefore(IFormCollection form) => FactDesk.Id(form) is { } id ? ledger.Find(id) : null;

    /// <summary>What every form of Setup is held to before anything else.</summary>
    public IResult Guarded(HttpContext context, IFormCollection form, Func<Guid, IResult> then)
    {
        if (FactDesk.Id(form) is not { } id)
        {
            return TypedResults.BadRequest();
        }

        if (shed.Viewer.AsOf is not null)
        {
            Words<ShellWord> shell = Shared.Words.Of<ShellWord>(shed.Viewer.Language);
            return desk.Back(context, form, new Said(true, shell[ShellWord.AsOfReadOnly], shell[ShellWord.AsOfReadOnlyRemedy]));
        }

        return shed.Season is null ? desk.Back(context, form, new Said(true, Shared.Words.Of<ShellWord>(shed.Viewer.Language)[ShellWord.NoSeason])) : then(id);
    }

    /// <summary>What is wrong with the reason and the day, and where the facts of the form come from.</summary>
    public (FactOrigin Origin, string Reason, List<FormFault> Faults) Why(IFormCollection form)
    {
        DateTimeOffset now = clock.GetLocalNow();
        List<FormFault> faults = [];
        string reason = form[RowForm.Reason].ToString().Trim();
        if (reason.Length is 0 or > RowForm.LongestReason)
        {
            faults.Add(new FormFault(null, Words[SetupWord.ReasonMissing]));
        }

        DateTimeOffset? happened = RowForm.Happened(form, now);
        if (happened is null)
        {
            faults.Add(new FormFault(null, Words[SetupWord.DayWrong]));
        }

        return (desk.Origin(Place) with { HappenedAt = happened ?? now }, reason, faults);
    }

    private IResult Put(
        HttpContext context, IFormCollection form, SeasonList list, SeasonRow? was, IReadOnlyDictionary<string, string> cells, bool dropping, Guid id,
        Func<FactOrigin, string, NewFact> make)
    {
        (FactOrigin origin, string reason, List<FormFault> faults) = Why(form);
        // A form that was taken before would stumble over its own row.
        bool known = ledger.Find(id) is not null;
        RowTrial? trial = known ? null : RowTrial.Of(shed.State, list, was?.Row, dropping ? null : cells, shed.Viewer.FileLanguage);
        string back = FactDesk.LocalPath(form[RowForm.List]) is var asked && asked.StartsWith(list.Path, StringComparison.Ordinal) ? asked : list.Path;
        if (faults.Count > 0 || trial is { Sound: false })
        {
            return Again(list, was, new RowDraft(cells, reason, form[RowForm.Day].ToString(), back, trial, faults, dropping, id));
        }

        if (desk.Append(make(origin, reason)) is Appended.Refused refused)
        {
            return Again(list, was, new RowDraft(cells, reason, form[RowForm.Day].ToString(), back, null, FormFault.Of(refused), dropping, id));
        }

        string key = list.KeyText(new SeasonRow(list.File, was?.Row ?? 0, dropping ? was!.Cells : cells, id, 0)), name = Words[list.Name];
        said.Say(context, new Said(false, Words.Say(dropping ? SetupWord.SaidDropped : was is null ? SetupWord.SaidEntered : SetupWord.SaidChanged, key, name)));
        return new SeeOther(form[RowForm.Next] == "new" ? $"{list.Path}/new?reason={Uri.EscapeDataString(reason)}" : was is null || dropping ? back : $"{back}#r{was.Row}");
    }

    private static IResult Again(SeasonList list, SeasonRow? was, RowDraft draft)
    {
        Dictionary<string, object> with = new() { [nameof(RowPage.Slug)] = list.Slug, [nameof(RowPage.Draft)] = draft };
        if (was is not null)
        {
            with[nameof(RowPage.Row)] = was.Row;
        }

        return ShownAgain.As<RowPage>(with);
    }
}
