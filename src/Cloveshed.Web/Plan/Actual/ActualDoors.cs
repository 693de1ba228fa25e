using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using NodaTime.Text;

namespace Cloveshed.Web.Plan.Actual;

/// <summary>What can be told of what ran.</summary>
internal static class ActualDoors
{
    public static void Map(IEndpointRouteBuilder routes) => routes.MapPost("/plan/actual/done", Tell);

    private static IResult Tell(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        Words<PlanWord> words = Words.Of<PlanWord>(shed.Viewer.Language);
        if (shed.Season is null || LocalDatePattern.Iso.Parse(form["day"].ToString()) is not { Success: true, Value: var day })
        {
            return desk.Back(context, form, new Said(true, words[PlanWord.ActualBadDay]));
        }

        string weighed = form["mass"].ToString().Trim(), dumped = form["bins"].ToString().Trim();
        if (Number(weighed) is not { } mass || (dumped.Length > 0 && Number(dumped) is null))
        {
            return desk.Back(context, form, new Said(true, words.Say(PlanWord.ActualBadNumber, Number(weighed) is null ? weighed : dumped)));
        }

        (LotId lot, LineId line) = (new(form["lot"].ToString().Trim()), new(form["line"].ToString()));
        Guid? corrects = Guid.TryParse(form["corrects"], out Guid before) ? before : null;
        return desk.Put(context, form, "plan", (origin, id) => origin.RunDone(lot, line, day, form["sorted"] == "yes", Number(dumped) ?? 0, mass, shed.Unit, null, id, corrects), words.Say(PlanWord.ActualDone, lot, line, shed.Reader.Day(day)));
    }

    private static double? Number(string written) =>
        double.TryParse(written, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) ? number : null;
}
