using Cloveshed.App.Words;
using Cloveshed.Core.Yard;
using NodaTime;

namespace Cloveshed.App.Weather;

/// <summary>Sacks CSV: sack (may be left out when there is one), time, weight in any unit, the same throughout the file.</summary>
internal static class SacksFile
{
    /// <summary>The columns and the other names that each may go by.</summary>
    public static IReadOnlyList<string[]> Columns { get; } =
    [
        ["sack", "sack_id", "id", "name", "mark", "tag", "bag", "sample", "saco", "costal"],
        ["time", "timestamp", "datetime", "date_time", "local_time", "weighed_at", "at", "tiempo", "fecha_hora"],
        ["date", "day", "fecha"],
        ["hour", "hora"],
        ["weight", "weight_kg", "weight_g", "weight_lb", "kg", "g", "lb", "mass", "mass_kg", "mass_g", "mass_lb", "net", "net_kg", "net_g", "net_lb", "gross", "gross_kg", "gross_g", "gross_lb", "peso", "peso_kg"],
        ["tare", "tare_kg", "tare_g", "tare_lb", "tara"],
    ];

    public static IReadOnlyList<SackWeight> Read(string file, WeatherRead weather, Phrasebook phrases, out IReadOnlyList<string> unknown)
    {
        Sheet sheet = Sheet.Read(file, Columns, phrases);
        Moments moments = new(sheet, phrases);
        LocalDateTime start = weather.Rows[0].From;
        LocalDateTime end = weather.Rows[^1].From + (weather.Rows[^1].From - weather.Rows[^2].From);
        var sacks = new List<SackWeight>();
        foreach (SheetRow row in sheet.Rows)
        {
            LocalDateTime at = moments.Of(row);
            SheetCell time = (row["time"] ?? row["date"])!;
            if (moments.Offset.HasValue != weather.Offset.HasValue)
            {
                throw sheet.Refused(time, phrases[Phrase.SheetSameClock], phrases[Phrase.SheetMendTime], phrases);
            }

            if (moments.Offset is { } own && weather.Offset is { } common)
            {
                at = at.PlusSeconds(common.Seconds - own.Seconds);
            }

            if (at < start || at > end)
            {
                throw sheet.Refused(time, phrases.Say(Phrase.SheetWithinWeather, Moments.Text(start, weather.Offset), Moments.Text(end, weather.Offset)), phrases[Phrase.SheetMendSack], phrases);
            }

            SheetCell cell = sheet.Needed(row, "weight", Phrase.SheetWeightExample, phrases);
            double gross = sheet.Number(cell, 0, 1e9, phrases), tare = row["tare"] is { } empty ? sheet.Number(empty, 0, 1e9, phrases) : 0;
            if (gross - tare <= 0)
            {
                throw sheet.Refused(cell, phrases[Phrase.SheetWeightExpected], phrases[Phrase.SheetMendNumber], phrases);
            }

            SheetCell? name = row["sack"];
            if (sheet.Columns.Contains("sack") && name is null)
            {
                sheet.Needed(row, "sack", Phrase.SheetSackExample, phrases);
            }

            SackWeight sack = new(name?.Text ?? "1", at, gross - tare);
            if (sacks.Any(other => other.Sack == sack.Sack && other.At == at))
            {
                throw sheet.Refused(time, phrases.Say(Phrase.SheetOnceExpected, sack.Sack), phrases[Phrase.SheetMendSack], phrases);
            }

            sacks.Add(sack);
        }

        if (!sacks.GroupBy(sack => sack.Sack).Any(group => group.Count() > 1))
        {
            throw new SheetRefused(phrases.Say(Phrase.SheetWeighTwice, file));
        }

        unknown = sheet.Unknown;
        return sacks;
    }
}
