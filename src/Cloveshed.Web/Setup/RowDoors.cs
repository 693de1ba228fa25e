using System.Text.Json;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Setup;

/// <summary>POST /setup/…: rows entered, changed and dropped; the season's settings; two things that happen in every season, in one step.</summary>
internal static class RowDoors
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/setup/{slug}/enter", Enter);
        routes.MapPost("/setup/{slug}/{row:int}/change", Change);
        routes.MapPost("/setup/{slug}/{row:int}/drop", Drop);
        routes.MapPost("/setup/season/change", ChangeSettings);
        routes.MapPost("/setup/line-weeks/down", LineIsDown);
        routes.MapPost("/setup/lots/late", LotIsLate);
    }

    private static IResult Enter(HttpContext context, [FromForm] IFormCollection form, string slug, RowDesk desk) =>
        SeasonLists.Named(slug) is { } list ? desk.Enter(context, form, list) : TypedResults.NotFound();

    private static IResult Change(HttpContext context, [FromForm] IFormCollection form, string slug, int row, RowDesk desk) =>
        SeasonLists.Named(slug) is not { } list ? TypedResults.NotFound()
        : Guid.TryParse(form[RowForm.Seen], out Guid seen) ? desk.Change(context, form, list, row, seen) : TypedResults.BadRequest();

    private static IResult Drop(HttpContext context, [FromForm] IFormCollection form, string slug, int row, RowDesk desk) =>
        SeasonLists.Named(slug) is not { } list ? TypedResults.NotFound()
        : Guid.TryParse(form[RowForm.Seen], out Guid seen) ? desk.Drop(context, form, list, row, seen) : TypedResults.BadRequest();

    private static IResult ChangeSettings(HttpContext context, [FromForm] IFormCollection form, RowDesk rows, FactDesk desk, ShedReading shed, SaidOnce said) => rows.Guarded(context, form, id =>
    {
        Words<SetupWord> words = Words.Of<SetupWord>(shed.Viewer.Language);
        string was = shed.State.Rows!.Settings;
        Dictionary<string, string> values = ColumnGuides.Settings.ToDictionary(guide => guide.Name, guide => form[RowForm.Field(guide)].ToString().Trim());
        string text = SettingsText.With(was, values);
        (FactOrigin origin, string reason, List<FormFault> faults) = rows.Why(form);
        bool known = rows.SentBefore(form) is not null;
        if (!known && form[RowForm.Seen] != SettingsSeen.Of(was))
        {
            faults.Add(new FormFault(null, words[SetupWord.SeasonMoved]));
        }

        RowTrial? trial = known ? null : RowTrial.OfSettings(shed.State, text, shed.Viewer.FileLanguage);
        if (faults.Count == 0 && trial is null or { Sound: true })
        {
            if (desk.Append(origin.SeasonChanged(text, id, reason)) is not Appended.Refused refused)
            {
                said.Say(context, new Said(false, words[SetupWord.SaidSeason]));
                return new SeeOther("/setup/season");
            }

            faults.AddRange(FormFault.Of(refused));
        }

        return ShownAgain.As<SettingsPage>(new Dictionary<string, object> { [nameof(SettingsPage.Draft)] = new RowDraft(values, reason, form[RowForm.Day].ToString(), "/setup/season", trial, faults, false, id) });
    });

    /// <summary>A line's hours in one week: the row is changed where there is one, else entered.</summary>
    private static IResult LineIsDown(HttpContext context, [FromForm] IFormCollection form, RowDesk desk, ShedReading shed)
    {
        SeasonList list = SeasonLists.Of("line-weeks.csv");
        string line = form["line"].ToString().Trim(), week = form["week"].ToString().Trim();
        Dictionary<string, string> cells = new() { ["line"] = line, ["week"] = week, ["hours"] = form["hours"].ToString().Trim() };
        // An open overtime would run a line that is down: without a word of it there is none.
        if (form["overtime"].ToString().Trim() is { Length: > 0 } overtime)
        {
            cells["overtime_hours"] = overtime;
        }

        if (desk.SentBefore(form) is { } known)
        {
            return known is { Corrects: { } corrected } ? desk.Change(context, form, list, known.Body.GetProperty("row").GetInt32(), corrected, cells) : desk.Enter(context, form, list, cells);
        }

        return shed.State.Rows?.Of(list.File).FirstOrDefault(row => row.Cells.GetValueOrDefault("line") == line && row.Cells.GetValueOrDefault("week", "").Trim() == week) is { } was
            ? desk.Change(context, form, list, was.Row, was.Fact, cells) : desk.Enter(context, form, list, cells);
    }

    /// <summary>A lot is dug, or ready, on another day: all of its rows in one batch.</summary>
    private static IResult LotIsLate(HttpContext context, [FromForm] IFormCollection form, RowDesk rows, FactDesk desk, ShedReading shed) => rows.Guarded(context, form, id =>
    {
        Words<SetupWord> words = Words.Of<SetupWord>(shed.Viewer.Language);
        SeasonList list = SeasonLists.Of("lots.csv");
        string lot = form["lot"].ToString().Trim(), dug = form["harvested"].ToString().Trim(), ready = form["ready"].ToString().Trim();
        List<SeasonRow> of = [.. shed.State.Rows!.Of(list.File).Where(row => row.Cells.GetValueOrDefault("lot") == lot)];
        (FactOrigin origin, string reason, List<FormFault> faults) = rows.Why(form);
        if (of.Count == 0 || (dug.Length == 0 && ready.Length == 0))
        {
            faults.Add(new FormFault(null, of.Count == 0 ? words.Say(SetupWord.LateNoLot, lot) : words[SetupWord.LateNoDay]));
        }

        if (faults.Count > 0)
        {
            return desk.Back(context, form, new Said(true, string.Join(" ", faults.Select(fault => fault.Text))));
        }

        if (rows.SentBefore(form) is { } known)
        {
            return desk.Back(context, form, SaysSo(known, lot, dug, ready) ? new Said(false, words.Say(SetupWord.SaidLate, lot)) : new Said(true, words[SetupWord.SentOther]));
        }

        Dictionary<int, IReadOnlyDictionary<string, string>?> changed = of.ToDictionary(row => row.Row, row => (IReadOnlyDictionary<string, string>?)Later(row, dug, ready));
        RowTrial trial = RowTrial.Of(shed.State, list, changed, null, shed.Viewer.FileLanguage);
        if (!trial.Sound)
        {
            IEnumerable<string> told = trial.AtFields.Values.SelectMany(at => at).Concat(trial.Elsewhere.Select(one => one.Fault)).Take(3).Select(fault => fault.ToString());
            return desk.Back(context, form, new Said(true, string.Join(" ", told)));
        }

        return desk.Append([.. of.Select((row, at) => origin.RowChanged(row, changed[row.Row]!, FactDesk.Following(id, at), reason))]) is Appended.Refused refused
            ? desk.Back(context, form, new Said(true, refused.Refusals[0].Message, refused.Refusals[0].Remedy))
            : desk.Back(context, form, new Said(false, words.Say(SetupWord.SaidLate, lot)));
    });

    /// <summary>The fact that a form made when it was sent before says what it says now.</summary>
    private static bool SaysSo(Fact known, string lot, string dug, string ready)
    {
        bool Says(string column, string text) => text.Length == 0 || (known.Body.TryGetProperty("cells", out JsonElement cells) && cells.TryGetProperty(column, out JsonElement cell) && cell.ValueEquals(text));
        return Says("lot", lot) && Says("harvested", dug) && Says("ready", ready);
    }

    private static Dictionary<string, string> Later(SeasonRow row, string dug, string ready)
    {
        Dictionary<string, string> cells = new(row.Cells, StringComparer.Ordinal);
        if (dug.Length > 0)
        {
            cells["harvested"] = dug;
        }

        if (ready.Length > 0)
        {
            cells["ready"] = ready;
        }

        return cells;
    }
}
