using System.Text.Json.Nodes;
using Cloveshed.Core.Scenarios;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Charts;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Plan.Otherwise;

/// <summary>Bands over the weeks: what has come in by then, and what of a week's orders ships in time; and the same as tables.</summary>
internal static class OtherwiseChart
{
    /// <summary>What has come in, less what would have as planned: beside the sum itself the bands would be a hair wide.</summary>
    public static JsonObject Ahead(StudyAnswer study, SeasonSettings season, Words<PlanWord> words, Reader reader) =>
        Option(study, season, words, reader, (band, week) => Math.Round(band[week] - study.Planned.Cumulative[week], 0), null, null);

    public static JsonObject OnTime(StudyAnswer study, SeasonSettings season, Words<PlanWord> words, Reader reader) =>
        Option(study, season, words, reader, (band, week) => Math.Round(100 * band[week], 1), week => Math.Round(100 * Planned(study, week), 1), "%");

    public static DataTable Table(StudyAnswer study, SeasonSettings season, Words<PlanWord> words, Reader reader) => new(
        words[PlanWord.OtherwiseWeeks],
        [new(words[PlanWord.OtherwiseWeek]), .. new[] { PlanWord.OtherwiseReturn, PlanWord.OtherwiseOnTime }.SelectMany(figure => Bands(words).Select(band => new Column(words.Say(PlanWord.OtherwiseOf, words[figure], band), true)))],
        [.. Weeks(study, season).Select(week => (IReadOnlyList<Cell>)
        [
            reader.Week(week), reader.Money(study.Planned.Cumulative[week]), reader.Money(study.Return.P10[week]), reader.Money(study.Return.P50[week]), reader.Money(study.Return.P90[week]),
            reader.Percent(Planned(study, week), 0), reader.Percent(study.OnTime.P10[week], 0), reader.Percent(study.OnTime.P50[week], 0), reader.Percent(study.OnTime.P90[week], 0),
        ])]);

    public static DataTable Sizes(StudyAnswer study, Words<PlanWord> words, Reader reader) => new(
        words[PlanWord.OtherwiseSizes], [new(words[PlanWord.OtherwiseSize]), .. Bands(words).Select(band => new Column(band, true))],
        [.. study.Sizes.Select(size => (IReadOnlyList<Cell>)[size.Name, reader.Percent(size.Planned, 0), reader.Percent(size.Filled.P10, 0), reader.Percent(size.Filled.P50, 0), reader.Percent(size.Filled.P90, 0)])], Stacks: Stacking.Phone);

    public static DataTable Breaks(StudyAnswer study, Words<PlanWord> words, Reader reader) => new(
        words[PlanWord.OtherwiseBreaks], [new(words[PlanWord.OtherwiseSize]), new(words[PlanWord.OtherwiseShare], true), new(words[PlanWord.OtherwiseMiddle], true), new(words[PlanWord.OtherwiseEarliest], true)],
        [.. study.Breaks.Select(one => (IReadOnlyList<Cell>)[one.Size, reader.Percent(one.Share, 0), reader.Week(one.Middle), reader.Week(one.Earliest)])], Stacks: Stacking.Phone);

    /// <summary>What else goes otherwise, the largest first.</summary>
    public static DataTable Troubles(StudyAnswer study, int most, Words<PlanWord> words, Reader reader) => new(
        words[PlanWord.OtherwiseTroubles], [new(words[PlanWord.OtherwiseWhat]), new(words[PlanWord.OtherwiseShare], true), new(words[PlanWord.OtherwiseMiddle], true), new(words[PlanWord.OtherwiseMass], true)],
        [.. study.Troubles.Where(one => one.Kind != TroubleKind.Size && one.Mass > 0).Take(most).Select(one => (IReadOnlyList<Cell>)
            [words.Say(WordOf(one.Kind), one.Name), reader.Percent(one.Share, 0), reader.Week(one.Middle), reader.Mass(one.Mass)])], Stacks: Stacking.Phone);

    private static string[] Bands(Words<PlanWord> words) => [words[PlanWord.OtherwisePlanned], words[PlanWord.OtherwiseP10], words[PlanWord.OtherwiseP50], words[PlanWord.OtherwiseP90]];

    private static IEnumerable<int> Weeks(StudyAnswer study, SeasonSettings season) => Enumerable.Range(season.AsOfWeek, study.Return.P50.Length - season.AsOfWeek);

    private static double Planned(StudyAnswer study, int week) => study.Planned.DueIn[week] > 0 ? study.Planned.OnTimeIn[week] / study.Planned.DueIn[week] : 1;

    private static PlanWord WordOf(TroubleKind kind) => kind switch
    {
        TroubleKind.LotLate => PlanWord.OtherwiseLotLate,
        TroubleKind.LotSpent => PlanWord.OtherwiseLotSpent,
        TroubleKind.Line => PlanWord.OtherwiseLine,
        TroubleKind.Place => PlanWord.OtherwisePlace,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    private static JsonObject Option(
        StudyAnswer study, SeasonSettings season, Words<PlanWord> words, Reader reader, Func<double[], int, double> figure, Func<int, double>? planned, string? unit)
    {
        WeekBands bands = unit is null ? study.Return : study.OnTime;
        int[] weeks = [.. Weeks(study, season)];
        JsonObject Series(string name, string colour, string line, Func<int, double> at) => new()
        {
            ["type"] = "line", ["name"] = name, ["symbol"] = "none", ["color"] = colour, ["lineStyle"] = new JsonObject { ["type"] = line, ["width"] = 2.2 },
            ["data"] = new JsonArray([.. weeks.Select(week => (JsonNode)at(week))]),
        };
        JsonObject[] series =
        [
            Series(words[PlanWord.OtherwiseP10], "--warning", "dashed", week => figure(bands.P10, week)),
            Series(words[PlanWord.OtherwiseP50], "--streak", "solid", week => figure(bands.P50, week)),
            Series(words[PlanWord.OtherwiseP90], "--packing", "dashed", week => figure(bands.P90, week)),
            .. planned is null ? [] : new[] { Series(words[PlanWord.OtherwisePlanned], "--soft-ink", "dotted", planned) },
        ];
        return new()
        {
            ["shed"] = new JsonObject { ["units"] = new JsonObject { ["y"] = unit ?? "" } },
            ["xAxis"] = new JsonObject { ["type"] = "category", ["data"] = new JsonArray([.. weeks.Select(week => (JsonNode)reader.Week(week))]) },
            ["yAxis"] = new JsonObject { ["type"] = "value", ["max"] = unit is null ? null : 100 },
            ["legend"] = new JsonObject { ["top"] = 0, ["left"] = 0 },
            ["grid"] = new JsonObject { ["left"] = 8, ["right"] = 28, ["bottom"] = 8, ["containLabel"] = true },
            ["media"] = LegendRoom.Media([.. series.Select(one => one["name"]!.GetValue<string>())]),
            ["series"] = new JsonArray([.. series]),
        };
    }
}
