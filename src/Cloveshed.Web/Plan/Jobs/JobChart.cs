using System.Text.Json.Nodes;
using Cloveshed.Core.Planning;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Charts;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Plan.Jobs;

/// <summary>Value and bound over the seconds of planning: they close on each other, and what is left between them is what is not known yet.</summary>
internal static class JobChart
{
    /// <summary>Rows of the table: a long search tells thousands of events, and the last of each second says as much.</summary>
    private const int MostRows = 60;

    /// <param name="seconds">What was asked for; null where it has ended.</param>
    public static JsonObject Option(JobSight? sight, double? seconds, Words<PlanWord> words) => new()
    {
        ["shed"] = new JsonObject { ["units"] = new JsonObject { ["x"] = " s" } },
        ["xAxis"] = new JsonObject { ["type"] = "value", ["min"] = 0, ["max"] = seconds is { } asked && asked > (sight?.Seconds ?? 0) ? asked : null },
        ["yAxis"] = new JsonObject { ["type"] = "value", ["scale"] = true },
        ["legend"] = new JsonObject { ["top"] = 0, ["left"] = 0 },
        ["grid"] = new JsonObject { ["left"] = 8, ["right"] = 28, ["bottom"] = 8, ["containLabel"] = true },
        ["media"] = LegendRoom.Media([words[PlanWord.JobBound], words[PlanWord.JobValue]]),
        ["series"] = new JsonArray(
            Series(words[PlanWord.JobBound], "--streak", "dashed", Points(sight, progress => progress.Bound)),
            Series(words[PlanWord.JobValue], "--packing", "solid", Points(sight, progress => progress.Value))),
    };

    public static DataTable Table(JobSight? sight, Words<PlanWord> words, Reader reader)
    {
        PlanProgress[] told = [.. sight?.Series ?? []];
        int every = Math.Max(1, told.Length / MostRows);
        return new DataTable(words[PlanWord.JobTable],
            [new(words[PlanWord.JobSeconds], true), new(words[PlanWord.JobStageHead]), new(words[PlanWord.JobValue], true), new(words[PlanWord.JobBound], true)],
            [.. told.Where((_, at) => at % every == every - 1 || at == told.Length - 1).Select(progress => (IReadOnlyList<Cell>)[
                reader.Number(progress.Seconds, 1), StageWords.Planner(progress.Stage, words), Money(progress.Value, reader), Money(progress.Bound, reader)])]);
    }

    /// <summary>What is left between value and bound, of the value.</summary>
    public static string Gap(JobSight? sight, Reader reader) =>
        sight is { Value: { } value, Bound: { } bound } ? GapWords.Share(Math.Max(0, bound - value) / Math.Max(1, Math.Abs(value)), reader) : "–";

    private static string Money(double? amount, Reader reader) => amount is { } money && double.IsFinite(money) ? reader.Money(money) : "–";

    private static IEnumerable<(double Seconds, double Money)> Points(JobSight? sight, Func<PlanProgress, double?> figure) =>
        (sight?.Series ?? []).Where(progress => figure(progress) is { } found && double.IsFinite(found)).Select(progress => (progress.Seconds, figure(progress)!.Value));

    private static JsonObject Series(string name, string colour, string line, IEnumerable<(double Seconds, double Money)> points) => new()
    {
        ["type"] = "line", ["name"] = name, ["step"] = "end", ["symbol"] = "circle", ["symbolSize"] = 5, ["color"] = colour,
        ["lineStyle"] = new JsonObject { ["type"] = line, ["width"] = 2.2 },
        ["data"] = new JsonArray([.. points.Select(point => (JsonNode)new JsonArray(Math.Round(point.Seconds, 2), Math.Round(point.Money, 2)))]),
    };
}
