using System.Globalization;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;

namespace Cloveshed.Web.Keep;

/// <summary>POST /keep-rows/moved: bins of a lot went to another place, at a moment. The rows that it changes are one batch.</summary>
internal static class MoveDoor
{
    private const string File = "lots.csv", Place = "keep";

    public static void Map(IEndpointRouteBuilder routes) => routes.MapPost("/keep-rows/moved", Moved);

    private static IResult Moved(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, ShedLedger ledger, TimeProvider clock)
    {
        Words<KeepWord> words = Words.Of<KeepWord>(shed.Viewer.Language);
        string lot = form["lot"].ToString(), to = form["to"].ToString(), bins = form["bins"].ToString().Trim();
        string done = words.Say(KeepWord.MoveKept, bins, lot, to);
        // Sent again, the rows already read so: the facts that it made are the answer.
        if (FactDesk.Id(form) is { } sent && ledger.Find(sent) is not null)
        {
            return desk.Back(context, form, new Said(false, done));
        }

        SeasonRow[] rows = [.. (shed.State.Rows?.Of(File) ?? []).Where(row => row.Cells["lot"] == lot)];
        if (rows.FirstOrDefault(row => row.Cells["place"] == form["from"].ToString()) is not { } from || !Guid.TryParse(form[LotDoors.SeenField], out Guid seen) || seen != Marks(rows))
        {
            return desk.Back(context, form, new Said(true, words[KeepWord.RowsMoved]));
        }

        SeasonRow? there = rows.FirstOrDefault(row => row.Cells["place"] == to);
        DateTimeOffset? at = Moment(form["at"].ToString(), clock);
        if (at is null || !double.TryParse(bins, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double many) || MovedRows.Of(new BinsMoved(from, there, to, many)) is not { } after)
        {
            return desk.Back(context, form, new Said(true, words.Say(KeepWord.MoveWrong, from.Cells["place"], from.Cells["bins"])));
        }

        string? reason = form["reason"].ToString().Trim() is { Length: > 0 } why ? why : null;
        return desk.PutAll(context, form, Place, (origin, id) =>
        {
            FactOrigin then = origin with { HappenedAt = at.Value };
            List<NewFact> facts = [after.From is { } cells ? then.RowChanged(from, cells, id, reason) : then.RowDropped(from, id, reason)];
            if (after.There is { } taken)
            {
                facts.Add(then.RowChanged(there!, taken, FactDesk.Following(id, facts.Count), reason));
            }

            if (after.Stays is { } stays)
            {
                facts.Add(then.RowEntered(File, stays, FactDesk.Following(id, facts.Count), reason));
            }

            return facts;
        }, done);
    }

    /// <summary>Stands for how a lot's rows read: it is another as soon as one of them is changed, dropped or entered.</summary>
    public static Guid Marks(IEnumerable<SeasonRow> rows)
    {
        Span<byte> all = stackalloc byte[16], one = stackalloc byte[16];
        all.Clear();
        foreach (SeasonRow row in rows)
        {
            row.Fact.TryWriteBytes(one);
            for (int at = 0; at < all.Length; at++)
            {
                all[at] ^= one[at];
            }
        }

        return new Guid(all);
    }

    /// <summary>A moment by the shed's clock that has come; now where the field is empty.</summary>
    private static DateTimeOffset? Moment(string text, TimeProvider clock)
    {
        if (text.Length == 0)
        {
            return clock.GetLocalNow();
        }

        return FormMoment.Read(text, clock) is { } at && FormMoment.HasCome(at, clock) ? at : null;
    }
}
