using Cloveshed.Core;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using Cloveshed.Web.Plan.Jobs;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Web.Plan;

/// <summary>What can be done at Plan: ask for a plan and stop it, adopt one, hold a run, bar one, and lift a hold.</summary>
internal static class PlanDoors
{
    private const string Place = "plan";

    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/plan/jobs", Ask);
        routes.MapPost("/plan/jobs/{id:guid}/stop", Stop);
        routes.MapGet("/plan/jobs/{id:guid}/progress", JobStream.Follow);
        routes.MapPost("/plan/adopt", Adopt);
        routes.MapPost("/plan/holds/pin", Pin);
        routes.MapPost("/plan/holds/bar", Bar);
        routes.MapPost("/plan/holds/move", Move);
        routes.MapPost("/plan/holds/lift", Lift);
    }

    private static IResult Ask(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, PlanRoom room)
    {
        Words<PlanWord> words = Words.Of<PlanWord>(shed.Viewer.Language);
        if (PlanAsk.Of(form) is not { } ask)
        {
            return TypedResults.BadRequest();
        }

        if (desk.OnlyToLookAt(context, form) is { } refusal)
        {
            return refusal;
        }

        if (ask.Read(words, out IReadOnlyList<FormFault> faults) is not { } meant)
        {
            return Again(ask, faults);
        }

        // Sent a second time it names the basis that it had the first time, for it is the same fact.
        long basis = shed.State.Jobs.FirstOrDefault(job => job.Fact == ask.Id)?.Basis ?? shed.State.Plans.FirstOrDefault(plan => plan.Asked == ask.Id)?.Basis ?? shed.State.Head.Seq;
        NewFact fact = desk.Origin(Place).PlanAsked(ask.Name, meant.Seconds, meant.Gap, null, shed.Viewer.LanguageTag, basis, ask.Id);
        if (desk.Append(fact) is Appended.Refused refused)
        {
            return Again(ask, FormFault.Of(refused));
        }

        room.Wake();
        return new SeeOther($"/plan/jobs/{ask.Id}");
    }

    private static IResult Again(PlanAsk ask, IReadOnlyList<FormFault> faults) =>
        ShownAgain.As<AgainPage>(new Dictionary<string, object> { [nameof(AgainPage.Asked)] = ask, [nameof(AgainPage.Faults)] = faults });

    private static IResult Stop(Guid id, HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, PlanRoom room)
    {
        Words<PlanWord> words = Words.Of<PlanWord>(shed.Viewer.Language);
        if (shed.State.Jobs.All(job => job.Fact != id))
        {
            return desk.Back(context, form, new Said(true, words[PlanWord.JobEndedAlready]));
        }

        room.Stop(id);
        return desk.Back(context, form, new Said(false, words[PlanWord.JobStopping]));
    }

    private static IResult Adopt(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        Words<PlanWord> words = Words.Of<PlanWord>(shed.Viewer.Language);
        return Guid.TryParse(form["plan"], out Guid plan) && shed.State.Plans.FirstOrDefault(made => made.Fact == plan) is { } entry
            ? desk.Put(context, form, Place, (origin, id) => origin.PlanAdopted(entry, id), words.Say(PlanWord.Adopted, entry.Name))
            : desk.Back(context, form, new Said(true, words[PlanWord.NoSuchPlan]));
    }

    private static IResult Pin(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        Words<PlanWord> words = Words.Of<PlanWord>(shed.Viewer.Language);
        if (Mass(form) is not { } mass)
        {
            return desk.Back(context, form, new Said(true, words.Say(PlanWord.PinBadMass, form["mass"].ToString().Trim())));
        }

        return Hold(context, form, shed, desk, (origin, id, lot, line, week) => origin.RunPinned(lot, line, week, mass > 0 ? mass : null, shed.Unit, id), PlanWord.Pinned);
    }

    /// <summary>0 where nothing was written; null where it is no number.</summary>
    private static double? Mass(IFormCollection form)
    {
        string written = form["mass"].ToString().Trim();
        return written.Length == 0 ? 0
            : double.TryParse(written, System.Globalization.NumberStyles.AllowDecimalPoint, System.Globalization.CultureInfo.InvariantCulture, out double mass) && double.IsFinite(mass) ? mass : null;
    }

    /// <summary>
    /// Holds a run in another week, as one batch: what held it where it was is lifted, it is held where it goes, and, where asked, barred where it was.
    /// </summary>
    private static IResult Move(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk)
    {
        Words<PlanWord> words = Words.Of<PlanWord>(shed.Viewer.Language);
        if (Mass(form) is not { } mass)
        {
            return desk.Back(context, form, new Said(true, words.Say(PlanWord.PinBadMass, form["mass"].ToString().Trim())));
        }

        if (shed.Season is null || LocalDatePattern.Iso.Parse(form["week"].ToString()) is not { Success: true, Value: var week } || LocalDatePattern.Iso.Parse(form["from"].ToString()) is not { Success: true, Value: var from } || week == from)
        {
            return desk.Back(context, form, new Said(true, words[PlanWord.HoldBadWeek]));
        }

        (LotId lot, LineId line) = (new(form["lot"].ToString()), new(form["line"].ToString()));
        RunHold[] was = [.. shed.State.Holds.Where(hold => hold.Lot == lot && hold.Line == line && (hold.Week == from || hold.Week == week))];
        return desk.PutAll(context, form, Place, (origin, id) =>
        {
            List<NewFact> facts = [origin.RunPinned(lot, line, week, mass > 0 ? mass : null, shed.Unit, id)];
            if (form["bar"] == "yes")
            {
                facts.Add(origin.RunBarred(lot, line, from, FactDesk.Following(id, facts.Count)));
            }

            foreach (RunHold hold in was)
            {
                facts.Add(origin.Make(FactKinds.HoldLifted, [], hold.Fact, FactDesk.Following(id, facts.Count)));
            }

            return facts;
        }, words.Say(PlanWord.Moved, lot, line, shed.Reader.Day(from), shed.Reader.Day(week)));
    }

    private static IResult Bar(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk) =>
        Hold(context, form, shed, desk, (origin, id, lot, line, week) => origin.RunBarred(lot, line, week, id), PlanWord.Barred);

    private static IResult Hold(HttpContext context, IFormCollection form, ShedReading shed, FactDesk desk, Func<FactOrigin, Guid, LotId, LineId, LocalDate, NewFact> make, PlanWord done)
    {
        Words<PlanWord> words = Words.Of<PlanWord>(shed.Viewer.Language);
        (string lot, string line) = (form["lot"].ToString(), form["line"].ToString());
        return LocalDatePattern.Iso.Parse(form["week"].ToString()) is { Success: true, Value: var week } && shed.Season is not null
            ? desk.Put(context, form, Place, (origin, id) => make(origin, id, new LotId(lot), new LineId(line), week), words.Say(done, lot, line, shed.Reader.Day(week)))
            : desk.Back(context, form, new Said(true, words[PlanWord.HoldBadWeek]));
    }

    private static IResult Lift(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk) =>
        // Whether the hold is still in force is the ledger's to say: sent a second time it answers as it did the first time.
        desk.Put(context, form, Place, (origin, id) => origin.Make(FactKinds.HoldLifted, [], Guid.TryParse(form["hold"], out Guid hold) ? hold : null, id),
            Words.Of<PlanWord>(shed.Viewer.Language)[PlanWord.Lifted]);
}
