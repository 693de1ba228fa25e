using System.Text.Json.Nodes;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Shared;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Web.Rooms;

/// <summary>One quantity that is read, and where its limits lie; a limit that does not hold in the room's state is null.</summary>
internal sealed record ReadQuantity(RoomWord Head, Func<RoomReading, double?> Of, string Unit, int Decimals, string Colour, double? Least, double? Most);

/// <summary>Readings over time as lines with their limits, and the same numbers as a table.</summary>
internal static class RoomCharts
{
    /// <summary>Points of a line: more than a screen has pixels for are brought together by the mean of each stretch.</summary>
    public const int MostPoints = 1500;

    /// <summary>Rows of a table; the last ones.</summary>
    public const int MostRows = 300;

    private static readonly LocalDateTimePattern Iso = LocalDateTimePattern.CreateWithInvariantCulture("uuuu-MM-dd HH:mm");

    public static ReadQuantity Temperature(RoomSight room) => new(RoomWord.TempHead, reading => reading.TempC, " °C", 1, "--streak", room.Limits.ColdestC, room.State.State is RoomState.Sealed or RoomState.Holding ? room.Limits.WarmestC : null);

    public static ReadQuantity Humidity(RoomSight room) => new(RoomWord.RhHead, reading => reading.Rh, "%", 0, "--cold", room.Limits.DriestRh, room.Limits.DampestRh);

    public static ReadQuantity Oxygen(RoomSight room) => room.State.State == RoomState.Sealed
        ? new(RoomWord.O2Head, reading => reading.O2, "%", 1, "--packing", room.Limits.LeastO2, room.Limits.MostO2)
        : new(RoomWord.O2Head, reading => reading.O2, "%", 1, "--packing", AtmosphereLimits.LeastO2, AtmosphereLimits.MostO2);

    public static ReadQuantity CarbonDioxide(RoomSight room) => room.State.State == RoomState.Sealed
        ? new(RoomWord.Co2Head, reading => reading.Co2, "%", 1, "--cracking", room.Limits.LeastCo2, room.Limits.MostCo2)
        : new(RoomWord.Co2Head, reading => reading.Co2, "%", 2, "--cracking", null, AtmosphereLimits.WorkdayCo2Ppm / 10_000.0);

    /// <summary>Readings of the quantity from a moment on.</summary>
    public static (LocalDateTime At, double Value, RoomReading Reading)[] Points(RoomSight room, ReadQuantity quantity, LocalDateTime from) =>
        [.. room.Readings.Where(reading => reading.At >= from && quantity.Of(reading) is not null).Select(reading => (reading.At, quantity.Of(reading)!.Value, reading))];

    public static JsonObject Option((LocalDateTime At, double Value, RoomReading Reading)[] points, ReadQuantity quantity, Words<RoomWord> words, Reader reader)
    {
        double[] shown = [.. points.Select(point => point.Value), .. new[] { quantity.Least, quantity.Most }.OfType<double>()];
        double low = shown.Min(), high = shown.Max(), step = Step(high - low);
        return new JsonObject
        {
            ["useUTC"] = true,
            ["shed"] = new JsonObject { ["decimals"] = new JsonObject { ["y"] = quantity.Decimals }, ["units"] = new JsonObject { ["y"] = quantity.Unit } },
            ["xAxis"] = new JsonObject { ["type"] = "time", ["axisLabel"] = new JsonObject { ["formatter"] = "{MM}-{dd} {HH}:{mm}", ["hideOverlap"] = true } },
            ["yAxis"] = new JsonObject { ["type"] = "value", ["min"] = Math.Round(Math.Floor(low / step - 0.2) * step, 2), ["max"] = Math.Round(Math.Ceiling(high / step + 0.2) * step, 2), ["interval"] = step },
            ["grid"] = new JsonObject { ["left"] = 8, ["right"] = 24, ["top"] = 22, ["bottom"] = 8, ["outerBoundsMode"] = "same", ["outerBoundsContain"] = "all" },
            ["series"] = new JsonArray(new JsonObject
            {
                ["type"] = "line", ["name"] = words[quantity.Head], ["symbol"] = "circle", ["symbolSize"] = points.Length > 120 ? 0 : 5, ["color"] = quantity.Colour,
                ["lineStyle"] = new JsonObject { ["width"] = 2.2 },
                ["data"] = new JsonArray([.. Thinned(points).Select(point => (JsonNode)new JsonArray(Milliseconds(point.At), Math.Round(point.Value, 3)))]),
                ["markLine"] = new JsonObject
                {
                    ["silent"] = true, ["animation"] = false, ["symbol"] = new JsonArray("none", "none"), ["lineStyle"] = new JsonObject { ["color"] = "--warning", ["type"] = "dashed", ["width"] = 1.6 },
                    ["data"] = new JsonArray([.. Limits(quantity).Select(limit => (JsonNode)new JsonObject
                    {
                        ["yAxis"] = limit.Value,
                        ["label"] = new JsonObject { ["position"] = limit.Most ? "insideEndTop" : "insideEndBottom", ["formatter"] = words.Say(limit.Most ? RoomWord.LimitMost : RoomWord.LimitLeast, reader.Number(limit.Value, 1) + quantity.Unit) },
                    })]),
                },
            }),
        };
    }

    public static DataTable Table((LocalDateTime At, double Value, RoomReading Reading)[] points, ReadQuantity quantity, string place, Words<RoomWord> words, Reader reader) => new(
        points.Length > MostRows ? words.Say(RoomWord.ReadTableLast, words[quantity.Head], place, reader.Number(MostRows, 0), reader.Number(points.Length, 0)) : words.Say(RoomWord.ReadTable, words[quantity.Head], place),
        [new(words[RoomWord.At]), new(words[quantity.Head], true), new(words[RoomWord.Who]), new(words[RoomWord.SourceHead])],
        [.. points.Reverse().Take(MostRows).Select(point => (IReadOnlyList<Cell>)[Written(point.At), reader.Number(point.Value, Math.Max(1, quantity.Decimals)) + quantity.Unit, point.Reading.Who, words[RoomNames.Of(point.Reading.Source)]])]);

    public static string Summary((LocalDateTime At, double Value, RoomReading Reading)[] points, ReadQuantity quantity, Words<RoomWord> words, Reader reader)
    {
        string Said(double value) => reader.Number(value, Math.Max(1, quantity.Decimals)) + quantity.Unit;
        int past = points.Count(point => point.Value < quantity.Least || point.Value > quantity.Most);
        return words.Say(points.Length == 1 ? RoomWord.ReadSummaryOne : RoomWord.ReadSummary, words[quantity.Head], reader.Number(points.Length, 0), Said(points[^1].Value), Written(points[^1].At), Said(points.Min(point => point.Value)), Said(points.Max(point => point.Value)), reader.Number(past, 0));
    }

    /// <summary>Day and minute as forms have them.</summary>
    public static string Written(LocalDateTime at) => Iso.Format(at);

    /// <summary>A step of the scale that a person would choose, four or so to the span.</summary>
    private static double Step(double span) => new[] { 0.1, 0.2, 0.5, 1, 2, 5, 10, 20 }.First(step => step >= span / 5 || step == 20);

    private static IEnumerable<(double Value, bool Most)> Limits(ReadQuantity quantity)
    {
        if (quantity.Least is { } least)
        {
            yield return (least, false);
        }

        if (quantity.Most is { } most)
        {
            yield return (most, true);
        }
    }

    private static IEnumerable<(LocalDateTime At, double Value)> Thinned((LocalDateTime At, double Value, RoomReading Reading)[] points)
    {
        int each = (points.Length + MostPoints - 1) / MostPoints;
        return each <= 1 ? points.Select(point => (point.At, point.Value)) : points.Chunk(each).Select(part => (part[part.Length / 2].At, part.Average(point => point.Value)));
    }

    private static double Milliseconds(LocalDateTime at) => at.InUtc().ToInstant().ToUnixTimeMilliseconds();
}
