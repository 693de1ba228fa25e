using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Yard;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Web.Looks;

/// <summary>POST /keep-looks/…: somebody looked at a lot, or takes a look back.</summary>
internal static class LookDoors
{
    private const string Place = "keep";

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/keep-looks/look", Look);
        routes.MapPost("/keep-looks/take-back", TakeBack);
    }

    private static IResult Look(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, TimeProvider clock)
    {
        Words<LookWord> words = Words.Of<LookWord>(shed.Viewer.Language);
        if (FactDesk.Id(form) is not { } id)
        {
            return TypedResults.BadRequest();
        }

        if (desk.OnlyToLookAt(context, form) is { } past)
        {
            return past;
        }

        LotId lot = new(form["lot"].ToString());
        List<FormFault> faults = [];
        int Count(string field, LookWord name)
        {
            string text = form[field].ToString().Trim();
            if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int count))
            {
                return count;
            }

            faults.Add(new FormFault(field, words.Say(LookWord.FaultCount, words[name], text), words[LookWord.FaultCountRemedy]));
            return 0;
        }

        int looked = Count("looked", LookWord.Looked), sprouted = Count("sprouted", LookWord.Sprouted), decayed = Count("decayed", LookWord.Decayed);
        if (faults.Count == 0 && sprouted + decayed > looked)
        {
            faults.Add(new FormFault("sprouted", words.Say(LookWord.FaultMany, sprouted, decayed, looked), words[LookWord.FaultManyRemedy]));
        }

        string who = form["who"].ToString().Trim();
        if (who.Length == 0)
        {
            faults.Add(new FormFault("who", words[LookWord.FaultWho], words[LookWord.FaultWhoRemedy]));
        }

        WeighedAgain? weighed = Weighed(form, shed, words, faults);
        DateTimeOffset at = At(form, shed, clock, lot, words, faults);
        if (faults.Count > 0)
        {
            return Again(form, lot, faults, id);
        }

        LookSaid said = new(lot, new PlaceId(form["place"].ToString()), looked, sprouted, decayed, weighed, who, form["note"].ToString().Trim());
        return desk.Append(YardBodies.Made(desk.Origin(Place) with { HappenedAt = at }, said, null, id)) is Appended.Refused refused
            ? Again(form, lot, FormFault.Of(refused), id) : desk.Back(context, form, new Said(false, words.Say(LookWord.Kept, lot)));
    }

    private static IResult TakeBack(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk) =>
        Guid.TryParse(form["record"], out Guid record)
            ? desk.Put(context, form, Place, (origin, id) => YardBodies.Withdrawn(origin, record, form["reason"].ToString().Trim(), id), Words.Of<LookWord>(shed.Viewer.Language)[LookWord.TakenBack])
            : TypedResults.BadRequest();

    private static WeighedAgain? Weighed(IFormCollection form, ShedReading shed, Words<LookWord> words, List<FormFault> faults)
    {
        string now = form["now"].ToString().Trim(), then = form["then"].ToString().Trim();
        if (now.Length == 0 && then.Length == 0)
        {
            return null;
        }

        if (Weight(now) is { } one && Weight(then) is { } other && LocalDatePattern.Iso.Parse(form["since"].ToString()) is { Success: true, Value: var since })
        {
            return new WeighedAgain(one, other, since, shed.Unit);
        }

        faults.Add(new FormFault("now", words[LookWord.FaultWeights], words[LookWord.FaultWeightsRemedy]));
        return null;
    }

    /// <summary>Today: this moment. An earlier day: its noon.</summary>
    private static DateTimeOffset At(IFormCollection form, ShedReading shed, TimeProvider clock, LotId lot, Words<LookWord> words, List<FormFault> faults)
    {
        DateTimeOffset now = clock.GetLocalNow();
        LocalDate today = new(now.Year, now.Month, now.Day), dug = shed.Season?.Lots.Where(row => row.Lot == lot).Select(row => (LocalDate?)row.Harvested).Min() ?? LocalDate.MinIsoValue;
        string text = form["day"].ToString().Trim();
        if (text.Length == 0)
        {
            return now;
        }

        if (LocalDatePattern.Iso.Parse(text) is not { Success: true, Value: var day } || day > today || day < dug)
        {
            faults.Add(new FormFault("day", words.Say(LookWord.FaultDay, Days.Long(dug, shed.Viewer.Language)), words[LookWord.FaultDayRemedy]));
            return now;
        }

        DateTime noon = day.AtMidnight().PlusHours(12).ToDateTimeUnspecified();
        return day == today ? now : new DateTimeOffset(noon, clock.LocalTimeZone.GetUtcOffset(noon));
    }

    private static double? Weight(string text) =>
        double.TryParse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double weight) && weight > 0 ? weight : null;

    private static IResult Again(IFormCollection form, LotId lot, IReadOnlyList<FormFault> faults, Guid id) => ShownAgain.As<LookPage>(new Dictionary<string, object>
    {
        [nameof(LookPage.Name)] = lot.Text, [nameof(LookPage.Faults)] = faults, [nameof(LookPage.Id)] = id,
        [nameof(LookPage.Sent)] = (IReadOnlyDictionary<string, string>)form.ToDictionary(field => field.Key, field => field.Value.ToString()),
    });
}
