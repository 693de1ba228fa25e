using Cloveshed.Core;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Ledger.Facts;
using Cloveshed.Ledger.Rooms;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.Ledger.Appending;

/// <summary>
/// Whether a fact about a place or room agrees with what is known. A step that does not fit the room's state is taken: what happened must be
/// recordable, and the state's fold shows it. Only turning a room over to people is held to its tests.
/// </summary>
internal static class RoomMatter
{
    /// <summary>°C, and percent: what an instrument in a store can read, to catch slips of a unit. None has a source.</summary>
    public const double ColdestC = -40, WarmestC = 60, MostPercent = 100;

    public static Refusal? Against(FactMatter matter, FormedFact fact, Body body)
    {
        Refusal Refuse(string rule, params ReadOnlySpan<object?> words) => RefusalTexts.Of(fact.Id, rule, matter.Language, words);
        string kind = fact.Stored.Kind;
        RoomSaid? said = kind == FactKinds.RecordWithdrawn ? null : RoomBodies.Said(kind, body);
        if (said is null)
        {
            _ = RoomBodies.Named(body, "reason");
            if (fact.Corrects is null)
                return Refuse(RefusalTexts.CorrectsMissing, kind);
        }

        if (fact.Corrects is { } corrected)
        {
            StoredFact was = matter.FindFact(corrected)!;
            if (!FactKinds.OfRooms.Contains(was.Kind) || was.Kind == FactKinds.RecordWithdrawn || (said is not null && (was.Kind != kind || RoomBodies.Said(kind, Body.Of(was.Body)).Place != said.Place)))
                return Refuse(RefusalTexts.RecordOther, kind, corrected);
            if (matter.IsCorrected(corrected))
                return Refuse(RefusalTexts.RecordMoved, corrected);
        }

        return said is null ? null : AgainstPlace(matter, fact, said) ?? said switch
        {
            AirSaid air => AgainstAir(air, fact, matter.Language),
            StepSaid { Step: RoomStep.TurnedOver } step => AgainstTurningOver(step, fact, matter.Language),
            RoomIs room => AgainstFigures(room, fact, matter.Language),
            _ => null,
        };
    }

    private static Refusal? AgainstPlace(FactMatter matter, FormedFact fact, RoomSaid said)
    {
        if (matter.Fold.Season.Finished() is not { } rows)
            return RefusalTexts.Of(fact.Id, RefusalTexts.SeasonNone, matter.Language);
        SeasonRow? place = rows.Of("places.csv").FirstOrDefault(row => row.Cells["place"] == said.Place.Text);
        if (place is null)
            return RefusalTexts.Of(fact.Id, RefusalTexts.HoldUnknown, matter.Language, matter.Language == TextLanguage.Spanish ? "el lugar" : "place", said.Place.Text);
        // Air is read anywhere; steps, tests at a door and figures are of rooms.
        return said is not AirSaid && place.Cells["kind"].Trim().Equals("open", StringComparison.OrdinalIgnoreCase)
            ? RefusalTexts.Of(fact.Id, RefusalTexts.RoomKind, matter.Language, said.Place.Text) : null;
    }

    private static Refusal? AgainstAir(AirSaid air, FormedFact fact, TextLanguage language)
    {
        if (air is { TempC: null, Rh: null, O2: null, Co2: null })
            return RefusalTexts.Of(fact.Id, RefusalTexts.AirEmpty, language);
        foreach ((string key, double? value, double least, double most) in new[] { ("temp_c", air.TempC, ColdestC, WarmestC), ("rh", air.Rh, 0, MostPercent), ("o2", air.O2, 0, MostPercent), ("co2", air.Co2, 0, MostPercent) })
            if (value is { } read && !(read >= least && read <= most))
                return RefusalTexts.Of(fact.Id, RefusalTexts.AirRange, language, key, RoomBodies.Number(read), RoomBodies.Number(least), RoomBodies.Number(most));
        return null;
    }

    /// <summary>
    /// Nothing here says that a room may be entered. It says only that without a signed test of each gas, within its limit, the room does not
    /// count as turned over.
    /// </summary>
    private static Refusal? AgainstTurningOver(StepSaid step, FormedFact fact, TextLanguage language)
    {
        Refusal Missing(string what) => RefusalTexts.Of(fact.Id, RefusalTexts.StepUntested, language, what);
        if (step.Door is not { } door)
            return Missing("door.tests");
        foreach (TestedGas gas in Enum.GetValues<TestedGas>())
        {
            if (door.Tests.Where(test => test.Gas == gas).MaxBy(test => test.At) is not { } test)
                return Missing(Name(gas, language));
            if (test.Who.Length == 0 || test.Instrument.Length == 0)
                return Missing(Name(gas, language) + (test.Who.Length == 0 ? " (who)" : " (instrument)"));
            if (RoomEntry.Limit(gas, test.Value) is { } limit)
                return RefusalTexts.Of(fact.Id, RefusalTexts.StepOverLimit, language, Name(gas, language), RoomBodies.Number(test.Value), RoomBodies.Number(limit));
        }

        return door.Attendant.Length == 0 ? Missing("attendant") : !door.LockedAndTagged ? Missing("locked_and_tagged") : null;
    }

    private static string Name(TestedGas gas, TextLanguage language) => (gas, language == TextLanguage.Spanish) switch
    {
        (TestedGas.Oxygen, false) => "Oxygen",
        (TestedGas.Oxygen, true) => "El oxígeno",
        (TestedGas.Flammable, false) => "Flammable gas",
        (TestedGas.Flammable, true) => "El gas inflamable",
        (_, false) => "Carbon dioxide",
        (_, true) => "El dióxido de carbono",
    };

    private static Refusal? AgainstFigures(RoomIs room, FormedFact fact, TextLanguage language)
    {
        foreach (RoomFigureForm form in RoomFigures.Forms)
            if (room.Figures[form.Figure] is { } value && !(value >= form.Least && value <= form.Most))
                return RefusalTexts.Of(fact.Id, RefusalTexts.RoomFigure, language, form.Key, RoomBodies.Number(value), RoomBodies.Number(form.Least), RoomBodies.Number(form.Most));
        return null;
    }
}
