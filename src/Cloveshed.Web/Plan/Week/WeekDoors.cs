using Cloveshed.Core.Shift;
using Cloveshed.Ledger;
using Cloveshed.Web.Shared;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Mvc;
using Microsoft.AspNetCore.Routing;
using NodaTime.Text;

namespace Cloveshed.Web.Plan.Week;

/// <summary>What can be done to a week's order: search for the best, stop that, take an order as the one to work by.</summary>
internal static class WeekDoors
{
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/plan/week/search", Search);
        routes.MapPost("/plan/week/stop", Stop);
        routes.MapPost("/plan/week/take", Take);
    }

    /// <summary>Null where there is no such plan or week.</summary>
    public static WeekSight? Find(ShedReading shed, WeekShelf weeks, Guid plan, string? monday)
    {
        if (shed.Season is not { } season || shed.State.Plans.FirstOrDefault(one => one.Fact == plan) is not { } entry || LocalDatePattern.Iso.Parse(monday ?? "") is not { Success: true, Value: var day })
        {
            return null;
        }

        int week = season.Settings.WeekOf(day);
        return week < 0 || week >= season.Settings.Weeks ? null : weeks.Of(entry, season, shed.State.InputDigest, week);
    }

    /// <summary>The order that was taken last for this plan and week, as an address has it; null where none was.</summary>
    public static (Fact Fact, string Order)? Taken(ShedLedger ledger, ShedState state, WeekSight week)
    {
        foreach (Fact fact in ledger.ReadBack(Looked, state.Head.Seq + 1, FactKinds.WeekOrdered))
        {
            if (fact.Body.GetProperty("week").GetString() == week.Monday && fact.Body.GetProperty("plan").GetString() == week.Plan.Entry.Fact.ToString("D"))
            {
                return (fact, string.Join('.', fact.Body.GetProperty("runs").EnumerateArray().Select(run => run.GetProperty("run").GetString())));
            }
        }

        return null;
    }

    /// <summary>Orders looked back through: a season of weeks, each taken several times.</summary>
    private const int Looked = 300;

    private static IResult Search(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, WeekShelf weeks, WeekRoom room) =>
        With(context, form, shed, desk, weeks, (week, words) =>
        {
            // Asked for twice it is searched for once.
            IResult answer = room.Runs(week) ? desk.Back(context, form, new Said(false, words[PlanWord.OrderSearching]))
                : desk.Put(context, form, "plan", (origin, id) => origin.WeekAsked(week.Plan.Entry.Fact, week.Question.Settings.Monday(week.Question.Week), WeekRoom.MostSeconds, shed.State.Head.Seq, shed.State.InputDigest, id), words[PlanWord.OrderSearching]);
            room.Wake();
            return answer;
        });

    private static IResult Stop(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, WeekShelf weeks, WeekRoom room) =>
        With(context, form, shed, desk, weeks, (week, words) =>
        {
            room.Stop(week);
            return desk.Back(context, form, new Said(false, words[PlanWord.OrderStopping]));
        });

    private static IResult With(HttpContext context, IFormCollection form, ShedReading shed, FactDesk desk, WeekShelf weeks, Func<WeekSight, Words<PlanWord>, IResult> act)
    {
        Words<PlanWord> words = Words.Of<PlanWord>(shed.Viewer.Language);
        return Guid.TryParse(form["plan"], out Guid plan) && Find(shed, weeks, plan, form["week"]) is { } week
            ? act(week, words) : desk.Back(context, form, new Said(true, words[PlanWord.NoSuchPlan]));
    }

    private static IResult Take(HttpContext context, [FromForm] IFormCollection form, ShedReading shed, FactDesk desk, WeekShelf weeks) =>
        With(context, form, shed, desk, weeks, (week, words) =>
        {
            WeekTimes times = week.Timed(week.Order(form["order"]));
            return times.Breaches.Count > 0 ? desk.Back(context, form, new Said(true, words.Say(PlanWord.OrderNotTaken, times.Breaches.Count)))
                : desk.Put(context, form, "plan", (origin, id) => origin.WeekOrdered(week.Plan.Entry.Fact, week.Question, [.. times.Order.Select(run => times.Schedule.Runs.First(placed => placed.Run == run.Id))], id), words.Say(PlanWord.OrderTaken, shed.Reader.Week(week.Question.Week)));
        });
}
