using System.Globalization;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;

namespace Cloveshed.Web.Dock;

/// <summary>
/// POST /dock-orders/back: a load that was shipped came back. In the words of a season's files: its units are finished stock again, by
/// the week in which they were made, and the order's line has these units to be filled, or has not. A note says what happened.
/// </summary>
internal static class LoadDoor
{
    private const string Stock = "stock.csv";

    /// <summary>What becomes of the line: its units grow by what came back; they are in it still; they are in it and no longer wanted.</summary>
    public const string Again = "again", Counted = "counted", Off = "off";

    public static IResult CameBack(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, ShedLedger ledger)
    {
        Words<DockWord> words = Words.Of<DockWord>(shed.Viewer.Language);
        if (FactDesk.Id(form) is not { } id)
        {
            return TypedResults.BadRequest();
        }

        string product = form["product"].ToString(), made = form["made"].ToString().Trim(), lot = form["lot"].ToString().Trim(), due = form["due"].ToString().Trim();
        string order = form["order"].ToString(), line = form["line"].ToString(), becomes = form["becomes"].ToString();
        if (!int.TryParse(form["units"], NumberStyles.None, CultureInfo.InvariantCulture, out int units) || units == 0 || becomes is not (Again or Counted or Off))
        {
            return desk.Back(context, form, new Said(true, words[DockWord.BackWrong]));
        }

        string note = string.Create(CultureInfo.InvariantCulture, $"A load came back: {units} units of {product}, made {made}, lot {(lot.Length > 0 ? lot : "not named")}; order {order} line {line}, {becomes}. {form["reason"]}").Trim();
        // Sent again, stock and line already count it: the note, which says all of it, tells whether it is the same.
        if (ledger.Find(id) is { } known)
        {
            return desk.Put(context, form, OrderDoors.Place, (origin, same) => origin.Note(note, same), words.Say(DockWord.BackKept, shed.Reader.Number(units, 0), product));
        }

        SeasonRow? row = OrderDoors.Rows(shed, order).FirstOrDefault(one => one.Cells["line"].Trim() == line);
        if (row is null)
        {
            return desk.Back(context, form, new Said(true, words[DockWord.LineMoved]));
        }

        return desk.PutAll(context, form, OrderDoors.Place, (origin, first) =>
        {
            string? reason = OrderDoors.Reason(form);
            List<NewFact> facts = [origin.Note(note, first), StockFact(shed, origin, product, made, lot, units, FactDesk.Following(first, 1), reason)];
            int had = int.TryParse(row.Cells["units"].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out int now) ? now : 0;
            Guid next = FactDesk.Following(first, 2);
            List<(string, string)> cells = due.Length > 0 ? [("due", due)] : [];
            switch (becomes)
            {
                case Again: cells.Add(("units", Written(had + units))); break;
                case Off when had > units: cells.Add(("units", Written(had - units))); break;
                default: break;
            }

            if (becomes == Off && had <= units)
            {
                facts.Add(origin.RowDropped(row, next, reason));
            }
            else if (cells.Count > 0)
            {
                facts.Add(origin.RowChanged(row, OrderDoors.With(row, cells), next, reason));
            }

            return facts;
        }, words.Say(DockWord.BackKept, shed.Reader.Number(units, 0), product));
    }

    /// <summary>A row more, or more units on the row of the same product, week and lot: such a key may be there once.</summary>
    private static NewFact StockFact(ShedReading shed, FactOrigin origin, string product, string made, string lot, int units, Guid id, string? reason)
    {
        SeasonRow? there = (shed.State.Rows?.Of(Stock) ?? []).FirstOrDefault(row =>
            row.Cells["product"] == product && row.Cells["made"].Trim() == made && row.Cells.GetValueOrDefault("lot", "") == lot);
        if (there is not null && int.TryParse(there.Cells["units"].Trim(), NumberStyles.None, CultureInfo.InvariantCulture, out int had))
        {
            return origin.RowChanged(there, new Dictionary<string, string>(there.Cells) { ["units"] = Written(had + units) }, id, reason);
        }

        Dictionary<string, string> cells = new() { ["product"] = product, ["made"] = made, ["units"] = Written(units) };
        if (lot.Length > 0)
        {
            cells["lot"] = lot;
        }

        return origin.RowEntered(Stock, cells, id, reason);
    }

    private static string Written(int units) => units.ToString(CultureInfo.InvariantCulture);
}
