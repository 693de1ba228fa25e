using System.Text.Json;
using Cloveshed.Core;
using Cloveshed.Core.Shift;
using Cloveshed.Ledger;
using NodaTime.Text;

namespace Cloveshed.Web.Plan.Week;

/// <summary>What a search found, into a fact and out of it again. Times and bounds are kept; costs follow from times.</summary>
internal static class WeekFinds
{
    public static NewFact Told(FactOrigin origin, Guid asked, ShiftAnswer answer, WeekSight week) =>
        origin.WeekFound(asked, answer.Status switch { ShiftStatus.Proven => "proven", ShiftStatus.TimeReached => "time", _ => "cancelled" }, answer, week.Question);

    public static WeekSearch Read(Fact found, WeekSight week)
    {
        JsonElement body = found.Body;
        double Number(string name) => body.TryGetProperty(name, out JsonElement number) && number.ValueKind == JsonValueKind.Number ? number.GetDouble() : 0;
        int Minute(JsonElement run, string name) => week.Question.MinuteOf(LocalDateTimePattern.GeneralIso.Parse(run.GetProperty(name).GetString()!).Value);
        double seconds = Number("seconds");
        string status = body.GetProperty("status").GetString()!;
        if (status == "failed")
        {
            return new WeekSearch(seconds, null, body.GetProperty("fault").GetString(), null);
        }

        ShiftSchedule schedule = new([.. body.GetProperty("runs").EnumerateArray().Select(run =>
            new PlacedRun(run.GetProperty("run").GetString()!, new LineId(run.GetProperty("line").GetString()!), Minute(run, "start"), Minute(run, "end")))]);
        ShiftCosts Costs(ShiftSchedule of) => ShiftCosts.Of(week.Question, week.Timing, of);
        return new WeekSearch(seconds, new ShiftAnswer(
            schedule, Costs(schedule), Number("first_bound"), Number("changeover_bound"), status switch { "proven" => ShiftStatus.Proven, "time" => ShiftStatus.TimeReached, _ => ShiftStatus.Cancelled },
            seconds, Costs(GreedySequence.Of(week.Question, week.Timing))), null, null);
    }
}
