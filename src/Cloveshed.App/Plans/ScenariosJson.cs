using System.Text.Json.Nodes;
using Cloveshed.Core.Scenarios;
using Cloveshed.Core.Seasons;
using NodaTime.Text;

namespace Cloveshed.App.Plans;

/// <summary>A study as one JSON document: money in the season's currency, masses in its unit, shares 0 to 1, weeks by their Mondays.</summary>
internal static class ScenariosJson
{
    public static JsonObject Of(ScenariosTold told)
    {
        StudyAnswer study = told.Study;
        string Week(int week) => LocalDatePattern.Iso.Format(told.Season.Settings.Monday(week));
        return new JsonObject
        {
            ["count"] = study.Count, ["seed"] = told.Seed, ["planned"] = study.Planned.Value, ["value"] = Of(study.Value), ["revenue"] = Of(study.Revenue), ["fill"] = Of(study.Fill),
            ["sizes"] = new JsonArray([.. study.Sizes.Select(size => new JsonObject { ["size"] = size.Name, ["planned"] = size.Planned, ["fill"] = Of(size.Filled), ["on_time"] = Of(size.OnTime) })]),
            ["weeks"] = new JsonArray([.. Enumerable.Range(told.Season.Settings.AsOfWeek, study.Return.P50.Length - told.Season.Settings.AsOfWeek).Select(week => new JsonObject
            {
                ["week"] = Week(week), ["planned"] = study.Planned.Cumulative[week], ["return"] = Of(study.Return, week), ["on_time"] = Of(study.OnTime, week),
            })]),
            ["first_break"] = new JsonArray([.. study.Breaks.Select(one => new JsonObject { ["size"] = one.Size, ["share"] = one.Share, ["earliest"] = Week(one.Earliest), ["middle"] = Week(one.Middle) })]),
            ["unbroken"] = study.Unbroken,
            ["troubles"] = new JsonArray([.. study.Troubles.Select(one => new JsonObject
            {
                ["kind"] = NameOf(one.Kind), ["name"] = one.Name, ["share"] = one.Share, ["earliest"] = Week(one.Earliest), ["middle"] = Week(one.Middle), ["mass"] = one.Mass,
            })]),
            ["plans"] = told.Choice is not { } choice ? null : new JsonObject
            {
                ["expected"] = Of(choice.Expected), ["on_average"] = Of(choice.OnAverage), ["worst_tenth"] = Of(choice.WorstTenth), ["tried"] = new JsonArray([.. choice.Tried.Select(Of)]),
            },
        };
    }

    private static JsonObject Of(Spread spread) => new() { ["p10"] = spread.P10, ["p50"] = spread.P50, ["p90"] = spread.P90, ["mean"] = spread.Mean, ["worst_tenth"] = spread.WorstTenth };

    private static JsonObject Of(WeekBands bands, int week) => new() { ["p10"] = bands.P10[week], ["p50"] = bands.P50[week], ["p90"] = bands.P90[week] };

    private static JsonObject Of(ChosenPlan plan) => new()
    {
        ["plan"] = plan.Name, ["value"] = Of(plan.Value), ["fill"] = plan.Fill,
        ["against_expected"] = plan.Against is not { } against ? null : new JsonObject { ["mean"] = against.Mean, ["low95"] = against.Low95, ["high95"] = against.High95, ["share_better"] = against.ShareBetter },
    };

    private static string NameOf(TroubleKind kind) => kind switch
    {
        TroubleKind.Size => "size-missing",
        TroubleKind.LotLate => "lot-late",
        TroubleKind.LotSpent => "lot-spent",
        TroubleKind.Line => "line-hours",
        TroubleKind.Place => "place-full",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
