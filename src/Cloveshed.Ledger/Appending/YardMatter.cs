using System.Globalization;
using Cloveshed.Core;
using Cloveshed.Core.Yard;
using Cloveshed.Ledger.Facts;
using Cloveshed.Ledger.Yard;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.Ledger.Appending;

/// <summary>Whether a fact of the yard or of a look at a lot agrees with what is known. Bounds are wide: they catch slips of a unit, and none has a source.</summary>
internal static class YardMatter
{
    private const double ColdestC = -40, WarmestC = 60, HottestAirC = 80, MostPercent = 100, MostRainMm = 500, MostWindMs = 100, MostWeight = 1e6;

    private const int MostBulbs = 100_000;

    public static Refusal? Against(FactMatter matter, FormedFact fact, Body body)
    {
        Refusal Refuse(string rule, params ReadOnlySpan<object?> words) => RefusalTexts.Of(fact.Id, rule, matter.Language, words);
        string kind = fact.Stored.Kind;
        YardSaid? said = kind == FactKinds.YardRecordWithdrawn ? null : YardBodies.Said(kind, body);
        if (said is null)
        {
            _ = YardBodies.Filled(body, "reason");
            if (fact.Corrects is null)
                return Refuse(RefusalTexts.CorrectsMissing, kind);
        }

        if (fact.Corrects is { } corrected)
        {
            StoredFact was = matter.FindFact(corrected)!;
            if (!FactKinds.OfYard.Contains(was.Kind) || was.Kind == FactKinds.YardRecordWithdrawn || (said is not null && was.Kind != kind))
                return Refuse(RefusalTexts.RecordOther, kind, corrected);
            if (matter.IsCorrected(corrected))
                return Refuse(RefusalTexts.RecordMoved, corrected);
        }

        return said is null ? null : AgainstSeason(matter, fact, said) ?? AgainstNumbers(said, fact, matter.Language);
    }

    private static Refusal? AgainstSeason(FactMatter matter, FormedFact fact, YardSaid said)
    {
        if (matter.Fold.Season.Finished() is not { } rows)
            return RefusalTexts.Of(fact.Id, RefusalTexts.SeasonNone, matter.Language);
        bool spanish = matter.Language == TextLanguage.Spanish;
        PlaceId? place = said switch { WeatherSaid weather => weather.Place, YardIs yard => yard.Place, LookSaid look => look.Place, _ => null };
        if (place is { } named && !rows.Of("places.csv").Any(row => row.Cells["place"] == named.Text))
            return RefusalTexts.Of(fact.Id, RefusalTexts.HoldUnknown, matter.Language, spanish ? "el lugar" : "place", named.Text);
        LotId? lot = said switch { SackSaid sack => sack.Lot, LookSaid look => look.Lot, _ => null };
        return lot is { } asked && !rows.Of("lots.csv").Any(row => row.Cells["lot"] == asked.Text)
            ? RefusalTexts.Of(fact.Id, RefusalTexts.HoldUnknown, matter.Language, spanish ? "el lote" : "lot", asked.Text) : null;
    }

    private static Refusal? AgainstNumbers(YardSaid said, FormedFact fact, TextLanguage language)
    {
        Refusal? Outside(params ReadOnlySpan<(string Key, double? Value, double Least, double Most)> numbers)
        {
            foreach ((string key, double? value, double least, double most) in numbers)
                if (value is { } found && !(found >= least && found <= most))
                    return RefusalTexts.Of(fact.Id, RefusalTexts.YardNumber, language, key, Text(found), Text(least), Text(most));
            return null;
        }

        switch (said)
        {
            case WeatherSaid weather:
                foreach (WeatherRow row in weather.Rows)
                    if (Outside(("temp_c", row.TempC, ColdestC, WarmestC), ("rh", row.Rh, 0, MostPercent), ("rain_mm", row.RainMm, 0, MostRainMm), ("wind_ms", row.WindMs, 0, MostWindMs), ("forced_c", row.ForcedC, ColdestC, HottestAirC)) is { } refusal)
                        return refusal;
                return null;
            case YardIs { Day: var day, ForcedC: var forced }:
                return Outside(("min_c", day?.MinC, ColdestC, WarmestC), ("max_c", day?.MaxC, day?.MinC ?? ColdestC, WarmestC), ("rh_at_max", day?.RhAtMax, 0, MostPercent), ("rh_at_min", day?.RhAtMin, 0, MostPercent), ("forced_c", forced, 0, HottestAirC));
            case SackSaid sack:
                return Outside(("weight", sack.Weight, 0.001, MostWeight));
            case LookSaid look:
                if (Outside(("looked", look.Looked, look.Weighed is null ? 1 : 0, MostBulbs), ("sprouted", look.Sprouted, 0, MostBulbs), ("decayed", look.Decayed, 0, MostBulbs), ("now", look.Weighed?.Now, 0.001, MostWeight), ("then", look.Weighed?.Then, 0.001, MostWeight)) is { } outside)
                    return outside;
                return look.Sprouted + look.Decayed > look.Looked ? RefusalTexts.Of(fact.Id, RefusalTexts.LookCounts, language, look.Sprouted, look.Decayed, look.Looked) : null;
            default:
                return null;
        }
    }

    private static string Text(double number) => number.ToString("0.######", CultureInfo.InvariantCulture);
}
