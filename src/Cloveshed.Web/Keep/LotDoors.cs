using System.Globalization;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Keep;

/// <summary>
/// POST /keep-rows/…: a row of a lot corrected, garlic found spoiled, a lot held or released. What the season's reader has against
/// it is told in its words, and then nothing is written.
/// </summary>
internal static class LotDoors
{
    public const string RowField = "row", SeenField = "seen";

    private const string File = "lots.csv", Place = "keep";

    /// <summary>The cells of a row that are corrected here; the others are of the whole lot, or Setup's.</summary>
    public static IReadOnlyList<(string Column, KeepWord Name)> RowColumns { get; } =
        [("net", KeepWord.CellNet), ("bins", KeepWord.CellBins), ("fresh_share", KeepWord.CellFresh), ("crack_share", KeepWord.CellCrack)];

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/keep-rows/change", Change);
        routes.MapPost("/keep-rows/spoiled", Spoiled);
        routes.MapPost("/keep-rows/lot", Lot);
        MoveDoor.Map(routes);
    }

    /// <summary>What was said to be spoiled; null where it is no number, or none.</summary>
    public static SpoiledFound? Asked(LotRow row, LotKnowledge known, string? mass, string? how, string? emptied) =>
        Number(mass) is { } spoiled && Number(string.IsNullOrWhiteSpace(emptied) ? "0" : emptied) is { } bins ? new SpoiledFound(row, known.SharesOf(row), spoiled, how != "in", bins) : null;

    private static IResult Change(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        Words<KeepWord> words = Words.Of<KeepWord>(shed.Viewer.Language);
        if (Seen(shed, form, out IResult? gone, desk, context) is not { } row)
        {
            return gone!;
        }

        Dictionary<string, string> cells = With(row.Cells, RowColumns.Where(column => form.ContainsKey(column.Column)).Select(column => KeyValuePair.Create(column.Column, form[column.Column].ToString().Trim())));
        return desk.Put(context, form, Place, (origin, id) => origin.RowChanged(row, cells, id, Reason(form)), words.Say(KeepWord.Corrected, row.Cells["lot"], row.Cells["place"]));
    }

    private static IResult Spoiled(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, ShedLedger ledger)
    {
        Words<KeepWord> words = Words.Of<KeepWord>(shed.Viewer.Language);
        if (Seen(shed, form, out IResult? gone, desk, context) is not { } row)
        {
            return gone!;
        }

        // Sent again, the row is already less by it: the fact that it made is the answer.
        if (FactDesk.Id(form) is { } sent && ledger.Find(sent) is { } known)
        {
            return desk.Put(context, form, Place, (_, _) => new NewFact(known.Id, known.Kind, known.HappenedAt, known.By, known.Device, known.Place, known.Body, known.Corrects), words[KeepWord.SpoiledKept]);
        }

        LotRow? lot = shed.Season?.Lots.FirstOrDefault(one => one.Lot.Text == row.Cells["lot"] && one.Place.Text == row.Cells["place"]);
        if (lot is null || Asked(lot, shed.Lots.Lots[lot.Lot], form["spoiled"], form["how"], form["emptied"]) is not { } found || SpoiledRow.Of(found) is not { } after)
        {
            return desk.Back(context, form, new Said(true, words.Say(KeepWord.SpoiledWrong, lot is null ? "0" : shed.Reader.Number(lot.Net, 0))));
        }

        return desk.Put(context, form, Place, (origin, id) => after.Gone ? origin.RowDropped(row, id, Reason(form)) : origin.RowChanged(row, With(row.Cells, after.Cells), id, Reason(form)), words[KeepWord.SpoiledKept]);
    }

    /// <summary>Hold and ready are alike on all rows of a lot, so all change together.</summary>
    private static IResult Lot(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        Words<KeepWord> words = Words.Of<KeepWord>(shed.Viewer.Language);
        string lot = form["lot"].ToString();
        SeasonRow[] rows = [.. (shed.State.Rows?.Of(File) ?? []).Where(row => row.Cells["lot"] == lot)];
        string[] seen = [.. form[SeenField].OfType<string>()];
        if (rows.Length == 0 || seen.Length != rows.Length || !seen.All(id => Guid.TryParse(id, out _)))
        {
            return desk.Back(context, form, new Said(true, words[KeepWord.RowsMoved]));
        }

        KeyValuePair<string, string>[] cells = [KeyValuePair.Create("hold", form["hold"] == "yes" ? "yes" : "no"), KeyValuePair.Create("ready", form["ready"].ToString().Trim())];
        return desk.PutAll(
            context, form, Place,
            (origin, id) => [.. rows.Select((row, at) => origin.RowChanged(row with { Fact = Guid.Parse(seen[at]) }, With(row.Cells, cells), FactDesk.Following(id, at), Reason(form)))],
            words.Say(KeepWord.Held, lot));
    }

    /// <summary>The row of a form as it is now, named by the fact that the page showed: if another changed it meanwhile, the ledger says so.</summary>
    private static SeasonRow? Seen(ShedReading shed, IFormCollection form, out IResult? gone, FactDesk desk, HttpContext context)
    {
        gone = null;
        if (int.TryParse(form[RowField], CultureInfo.InvariantCulture, out int number) && Guid.TryParse(form[SeenField], out Guid seen) && shed.State.Rows?.Find(File, number) is { } row)
        {
            return row with { Fact = seen };
        }

        gone = desk.Back(context, form, new Said(true, Words.Of<KeepWord>(shed.Viewer.Language)[KeepWord.RowsMoved]));
        return null;
    }

    private static Dictionary<string, string> With(IReadOnlyDictionary<string, string> cells, IEnumerable<KeyValuePair<string, string>> changed)
    {
        Dictionary<string, string> with = new(cells, StringComparer.Ordinal);
        foreach ((string column, string text) in changed)
        {
            // A cell that was never there and is still empty stays away.
            if (text.Length > 0 || with.ContainsKey(column))
            {
                with[column] = text;
            }
        }

        return with;
    }

    private static string? Reason(IFormCollection form) => form["reason"].ToString().Trim() is { Length: > 0 } reason ? reason : null;

    private static double? Number(string? text) =>
        double.TryParse(text?.Trim(), NumberStyles.AllowDecimalPoint | NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) ? number : null;
}
