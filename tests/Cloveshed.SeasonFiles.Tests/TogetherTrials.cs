using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.SeasonFiles.Tests;

/// <summary>Trials of season.json, and of cells, rows and files that contradict each other.</summary>
public static partial class Trials
{
    private static IEnumerable<Trial> Settings()
    {
        yield return Json("no JSON", "\"weeks\": 10,", "\"weeks\": 10", FaultRule.Json, 6, null, "\"mass_unit\": \"lb\",");
        yield return Json("a trailing comma", "\"USD\"", "\"USD\",", FaultRule.Json, 8, null, "}");
        yield return Json("weeks of NaN", "\"weeks\": 10,", "\"weeks\": NaN,", FaultRule.Json, 5, null, "\"weeks\": NaN,");
        yield return new("an array", it => it.With("season.json", "[1]"), FaultRule.Json, "season.json", 1, null, "[");
        yield return new(
            "bytes that are not UTF-8", it => it.With("season.json", [.. "{\n\"name\": \""u8, 0xF1, .. "\"}"u8]), FaultRule.NotUtf8, "season.json", 2, null, null);
        yield return Json("weeks in quotes", "\"weeks\": 10", "\"weeks\": \"10\"", FaultRule.JsonKind, 5, "weeks", "10");
        yield return Json("a name without quotes", "\"Quillon Flat 2026\"", "2026", FaultRule.JsonKind, 3, "name", "2026");
        yield return Json("an empty name", "\"Quillon Flat 2026\"", "\" \"", FaultRule.CellEmpty, 3, "name", " ");
        yield return Json("no weeks", "\"weeks\": 10,", "", FaultRule.JsonKeyMissing, null, "weeks", null);
        yield return Json("weeks null", "\"weeks\": 10,", "\"weeks\": null,", FaultRule.JsonKeyMissing, 5, "weeks", null);
        yield return Json("weeks twice", "\"weeks\": 10,", "\"weeks\": 10,\n\"weeks\": 11,", FaultRule.JsonKeyTwice, 6, "weeks", "11");
        yield return Json("1e9 weeks", "\"weeks\": 10", "\"weeks\": 1e9", FaultRule.Range, 5, "weeks", "1e9");
        yield return Json("no week", "\"weeks\": 10", "\"weeks\": 0", FaultRule.Range, 5, "weeks", "0");
        yield return Json("half a week", "\"weeks\": 10", "\"weeks\": 10.5", FaultRule.Whole, 5, "weeks", "10.5");
        yield return Json("a season that starts on a Wednesday", "2026-09-07", "2026-09-09", FaultRule.Monday, 4, "first_week", "2026-09-09");
        yield return Json("a first week that is no date", "2026-09-07", "7 September", FaultRule.Date, 4, "first_week", "7 September");
        yield return Json("another contract", "\"contract\": 1", "\"contract\": 3", FaultRule.Contract, 2, "contract", "3");
        yield return Json("half a contract", "\"contract\": 1", "\"contract\": 1.5", FaultRule.Contract, 2, "contract", "1.5");
        yield return Json("dollars by their sign", "USD", "US$", FaultRule.Currency, 7, "currency", "US$");
        yield return Json("dollars in small letters", "USD", "usd", FaultRule.Currency, 7, "currency", "usd");
        yield return Json("tons", "\"lb\"", "\"t\"", FaultRule.Word, 6, "mass_unit", "t");
        yield return Json("as of the day after the season", "\"weeks\"", "\"as_of\": \"2026-11-16\", \"weeks\"", FaultRule.AsOfAfterSeason, 5, "as_of", "2026-11-16");
        yield return Json("an end price below nothing", "\"weeks\"", "\"end_price\": -0.1, \"weeks\"", FaultRule.Range, 5, "end_price", "-0.1");
        yield return Json("a seed too large", "\"weeks\"", "\"seed\": 3000000000, \"weeks\"", FaultRule.Range, 5, "seed", "3000000000");
    }

    private static IEnumerable<Trial> Together()
    {
        yield return new("unknown lot", it => it.Append("samples.csv", "L9,2026-08-01,50,,\n"), FaultRule.Unknown, "samples.csv", 5, "lot", "L9");
        yield return new("a lot with a space more", it => it.Append("samples.csv", "L1 ,2026-08-01,50,,\n"), FaultRule.Unknown, "samples.csv", 5, "lot", "L1 ");
        yield return new("unknown place of a lot", it => it.Replace("lots.csv", "L2,Yard", "L2,Yarn"), FaultRule.Unknown, "lots.csv", 4, "place", "Yarn");
        yield return new("unknown variety of a lot", it => it.Replace("lots.csv", "Yard,Late Sorrel", "Yard,Late"), FaultRule.Unknown, "lots.csv", 4, "variety", "Late");
        yield return new("unknown place of a week", it => it.With("place-weeks.csv", "place,week\nLoft,2026-09-07\n"), FaultRule.Unknown, "place-weeks.csv", 2, "place", "Loft");
        yield return new("unknown line of a week", it => it.Append("line-weeks.csv", "Pack 9,2026-09-07,40,\n"), FaultRule.Unknown, "line-weeks.csv", 3, "line", "Pack 9");
        yield return new("unknown class of a product", it => it.Replace("products.csv", "bulb,medium", "bulb,big"), FaultRule.Unknown, "products.csv", 2, "from", "big");
        yield return new("unknown grade of a product", it => it.Replace("products.csv", "clove,big", "clove,medium"), FaultRule.Unknown, "products.csv", 4, "from", "medium");
        yield return new("a clove product without grades", it => it.Without("clove-grades.csv"), FaultRule.Unknown, "products.csv", 4, "from", "big");
        yield return new("unknown product of an order", it => it.Replace("orders.csv", "Foods,M30", "Foods,M40"), FaultRule.Unknown, "orders.csv", 2, "product", "M40");
        yield return new("unknown product on the market", it => it.Replace("market.csv", "M30", "M40"), FaultRule.Unknown, "market.csv", 2, "product", "M40");
        yield return new("unknown product in stock", it => it.Replace("stock.csv", "M30", "M40"), FaultRule.Unknown, "stock.csv", 2, "product", "M40");
        yield return new("unknown variety of seed", it => it.Replace("seed-needs.csv", "Early Sorrel", "Early"), FaultRule.Unknown, "seed-needs.csv", 2, "variety", "Early");
        yield return new("unknown variety sold as is", it => it.Replace("sell-as-is.csv", "Late Sorrel", "Late"), FaultRule.Unknown, "sell-as-is.csv", 3, "variety", "Late");
        yield return new("unknown line of a set-up", it => it.Append("setups.csv", "cuts,Pack 9,,,5,,\n"), FaultRule.Unknown, "setups.csv", 7, "line", "Pack 9");
        yield return new("unknown line of a shift", it => it.Append("shifts.csv", "work,Day,Pack 9,,,06:00,14:00,\n"), FaultRule.Unknown, "shifts.csv", 8, "line", "Pack 9");
        yield return new("unknown variety of a set-up", it => it.Append("setups.csv", "variety,,,Sorrel,5,,\n"), FaultRule.NameOfKind, "setups.csv", 7, "to", "Sorrel");
        yield return new("unknown place of a way", it => it.Append("setups.csv", "travel,,Loft,,5,,\n"), FaultRule.NameOfKind, "setups.csv", 7, "from", "Loft");
        yield return new("a way to a place", it => it.Append("setups.csv", "travel,,Cold 1,Yard,5,,\n"), FaultRule.NotOfKind, "setups.csv", 7, "to", "Yard");
        yield return new("cleaning after something", it => it.Append("setups.csv", "cleaning,,Late Sorrel,,5,,\n"), FaultRule.NotOfKind, "setups.csv", 7, "from", "Late Sorrel");
        yield return new("organic by another word", it => it.Append("setups.csv", "organic,,yes,,5,,\n"), FaultRule.OrganicWord, "setups.csv", 7, "from", "yes");
        yield return new("people in a break", it => it.Append("shifts.csv", "break,Tea,,,,16:00,16:10,5\n"), FaultRule.NotOfKind, "shifts.csv", 8, "heads", "5");
        yield return new("a dock of a line", it => it.Append("shifts.csv", "dock,Trucks,Pack 1,,,07:00,16:10,\n"), FaultRule.NotOfKind, "shifts.csv", 8, "line", "Pack 1");
        foreach ((string start, string end, string column, string value) in new[]
            { ("6", "14:00", "start", "6"), ("6:5", "14:00", "start", "6:5"), ("24:00", "14:00", "start", "24:00"), ("06:00", "24:01", "end", "24:01"), ("06:00", "14.30", "end", "14.30"), ("06:00", "-1:30", "end", "-1:30"), ("06:60", "14:00", "start", "06:60") })
            yield return new($"no time of day: {value}", it => it.Append("shifts.csv", $"work,Late,,,sunday,{start},{end},\n"), FaultRule.TimeOfDay, "shifts.csv", 8, column, value);
        yield return new("a day by another name", it => it.Append("shifts.csv", "work,Late,,,Mon,06:00,14:00,\n"), FaultRule.Word, "shifts.csv", 8, "day", "Mon");
        yield return Twice("setups.csv", "organic,,conventional,organic,5,,", 7, "kind, line, from, to", "organic, , conventional, organic");
        yield return Twice("shifts.csv", "break,Second meal,,,,12:00,12:20,", 8, "kind, line, week, day, start", "break, , , , 12:00");
        yield return new("unknown room", it => it.Append("rooms.csv", "Room 9,2026-08-01\n"), FaultRule.Unknown, "rooms.csv", 2, "place", "Room 9");
        yield return new("a mode without yield", it => it.Replace("yields.csv", "crack,0.8\n", ""), FaultRule.YieldMissing, "lines.csv", 3, "mode", "crack");

        yield return Twice("sizes.csv", "medium,M2,64,70", 5, "class", "medium", it => it.Replace("sizes.csv", "L,64,\n", "L,64,80\n").Append("sizes.csv", "medium,M2,80,\n"));
        yield return Twice("clove-grades.csv", "big,5,6", 4, "grade", "big");
        yield return Twice("varieties.csv", "Early Sorrel,-7.2,2.9,0.08,,,,,,", 4, "variety", "Early Sorrel");
        yield return Twice("places.csv", "Yard,open,500,,,,,,,,", 5, "place", "Yard");
        yield return Twice("place-weeks.csv", "Yard,2026-09-07", 3, "place, week", "Yard, 2026-09-07", it => it.With("place-weeks.csv", "place,week\nYard,2026-09-07\nYard, 2026-09-07\n"));
        yield return Twice("lots.csv", FirstLot, 5, "lot, place", "L1, Yard");
        yield return Twice("yields.csv", "Crack,0.7", 5, "mode", "crack");
        yield return Twice("lines.csv", "Pack 1,fresh,1,1,,,,,,", 4, "line", "Pack 1");
        yield return Twice("line-weeks.csv", "Pack 1,2026-10-12,5,", 3, "line, week", "Pack 1, 2026-10-12");
        yield return Twice("people.csv", "2026-09-07,1", 3, "week", "2026-09-07");
        yield return Twice("products.csv", "M30,bulb,large,10,,,", 5, "product", "M30");
        yield return Twice("stock.csv", "M30,2026-08-31,5,L0", 3, "product, made, lot", "M30, 2026-08-31, L0");
        yield return Twice("rooms.csv", "Room 1,2026-08-02", 3, "place", "Room 1", it => it.Append("rooms.csv", "Room 1,2026-08-01\nRoom 1,2026-08-02\n"));
        yield return Twice("orders.csv", FirstOrder, 4, "order, line", "O1, 1");
        yield return Twice("orders.csv", FirstOrder.Replace("O1,1", "O1,01", StringComparison.Ordinal), 4, "order, line", "O1, 1");
        yield return Twice("market.csv", "M30,2026-09-14,1,,1,", 3, "product, week", "M30, 2026-09-14");
        yield return Twice("seed-needs.csv", "Early Sorrel,1,2026-10-05,b,1", 3, "variety, by, seed_class", "Early Sorrel, 2026-10-05, B");
        yield return Twice("sell-as-is.csv", ",0.3,", 4, "variety", "");

        yield return new("gap between size classes", it => it.Replace("sizes.csv", "L,64,", "L,65,"), FaultRule.SizeGap, "sizes.csv", 4, "min_mm", "65");
        yield return new("overlap of size classes", it => it.Replace("sizes.csv", "L,64,", "L,63.5,"), FaultRule.SizeGap, "sizes.csv", 4, "min_mm", "63.5");
        yield return new("a middle class without end", it => it.Replace("sizes.csv", "51,64", "51,"), FaultRule.SizeOpenEnd, "sizes.csv", 3, "max_mm", "");
        yield return new("a class that ends where it starts", it => it.Append("sizes.csv", "huge,H,90,90\n").Replace("sizes.csv", "L,64,", "L,64,90"), FaultRule.MinNotBelowMax, "sizes.csv", 5, "max_mm", "90");
        yield return new("a grade that ends before it starts", it => it.Replace("clove-grades.csv", "10,18", "10,9"), FaultRule.MinNotBelowMax, "clove-grades.csv", 3, "max_mm", "9");
        yield return new("overlap of grades", it => it.Replace("clove-grades.csv", "10,18", "10,18.5"), FaultRule.GradesOverlap, "clove-grades.csv", 3, "min_mm", "10");
        yield return new("a clove law in parts", it => it.Replace("varieties.csv", "2.7,0.1", "2.7,"), FaultRule.LawInParts, "varieties.csv", 2, "clove_s", "");
        yield return new("overlap with an open grade", it => it.Append("clove-grades.csv", "huge,30,\n"), FaultRule.GradesOverlap, "clove-grades.csv", 4, "min_mm", "30");
        yield return new("a bulb law in parts", it => it.Replace("varieties.csv", "-7.1,2.9", "-7.1,"), FaultRule.LawInParts, "varieties.csv", 3, "mass_b", "");
        yield return new("ship_from after due", it => it.Replace("orders.csv", "M30,,2026-09-24", "M30,2026-09-25,2026-09-24"), FaultRule.ShipFromAfterDue, "orders.csv", 2, "ship_from", "2026-09-25");
        yield return new("p10 above p50", it => it.Replace("market.csv", "10,40.5,90", "41,40.5,90"), FaultRule.LowAboveHigh, "market.csv", 2, "p10", "41");
        yield return new("p90 below p50", it => it.Replace("market.csv", "10,40.5,90", "10,40.5,40"), FaultRule.LowAboveHigh, "market.csv", 2, "p90", "40");

        foreach ((string old, string by, string column, string value) in new[]
            {
                ("Early Sorrel,F1,2026-07-22", "Late Sorrel,F1,2026-07-22", "variety", "Late Sorrel"),
                ("F1,2026-07-22", "F3,2026-07-22", "field", "F3"),
                ("36000,weighed", "36000,dug", "state", "dug"),
                ("36000,weighed,,,no", "36000,weighed,,,yes", "organic", "yes"),
                ("36000,weighed,,,no,yes", "36000,weighed,,,no,", "cured", ""),
                ("36000,weighed,,,no,yes,no", "36000,weighed,,,no,yes,yes", "inhibitor", "yes"),
                ("0.82,0.1,B", "0.82,0.1,", "seed_class", ""),
                ("0.82,0.1,B,52", "0.82,0.1,B,53", "mean_g", "53"),
                ("0.82,0.1,B,52,0.25", "0.82,0.1,B,52,0.2", "cv", "0.2"),
                ("0.82,0.1,B,52,0.25,,", "0.82,0.1,B,52,0.25,2026-09-09,", "ready", "2026-09-09"),
                ("0.82,0.1,B,52,0.25,,", "0.82,0.1,B,52,0.25,,yes", "hold", "yes"),
            })
            yield return new($"rows of a lot differ in {column}", it => it.Replace("lots.csv", old, by), FaultRule.LotDiffers, "lots.csv", 3, column, value);

        yield return new("a row with more bins than its place holds", it => it.Replace("places.csv", "open,500", "open,99"), FaultRule.RowOverfull, "lots.csv", 4, "bins", "100");
        yield return new("a row at the start with more bins than its place holds", it => it.Replace("places.csv", "cold,200", "cold,39"), FaultRule.RowOverfull, "lots.csv", 3, "bins", "40");
        yield return new(
            "more bins at the start than the place holds",
            it => it.Replace("places.csv", "open,500", "open,159").Replace("lots.csv", "2026-09-21", "2026-09-13").Replace("lots.csv", "2026-10-05,no", "2026-10-05,"),
            FaultRule.PlaceOverfull, "lots.csv", 4, "bins", "100");
        yield return new("a room sealed after as_of", it => it.Append("rooms.csv", "Room 1,2026-09-08\n"), FaultRule.SealedAfterAsOf, "rooms.csv", 2, "sealed", "2026-09-08");
        yield return new("a sealed place that can't be", it => it.Append("rooms.csv", "Cold 1,2026-08-01\n"), FaultRule.NotSealable, "rooms.csv", 2, "place", "Cold 1");
        yield return new(
            "a lot harvested after its room was sealed",
            it => it.Append("rooms.csv", "Room 1,2026-07-19\n").Replace("lots.csv", "L1,Cold 1", "L1,Room 1"), FaultRule.HarvestedAfterSealing, "lots.csv", 3, "harvested", "2026-07-22");
        yield return new("stock of a later week", it => it.Replace("stock.csv", "2026-08-31", "2026-09-14"), FaultRule.MadeAfterAsOf, "stock.csv", 2, "made", "2026-09-14");
    }

    private static Trial Json(string name, string old, string by, FaultRule rule, int? line, string? column, string? value) =>
        new($"season.json: {name}", it => it.Replace("season.json", old, by), rule, "season.json", line, column, value);

    private static Trial Twice(string file, string row, int line, string column, string value, Func<SmallSeason, SmallSeason>? spoil = null) =>
        new($"{file}: key of {row} twice", spoil ?? (it => it.Append(file, row + "\n")), FaultRule.KeyTwice, file, line, column, value);
}
