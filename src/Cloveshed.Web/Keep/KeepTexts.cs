using Cloveshed.Core.Keep;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Keep;

/// <summary>A place's air and a room's weeks in the reader's words.</summary>
internal static class KeepTexts
{
    /// <summary>The air of the week that the files describe; a sealed room's own where it is shut.</summary>
    public static string Air(ShedReading shed, PlaceUse use, Words<KeepWord> words)
    {
        SeasonSettings settings = shed.SeasonOpen.Settings;
        bool shut = use.SealedOn is { } day && settings.AsOfWeek > settings.WeekOf(day);
        return Air(PlaceClimate.Of(shed.SeasonOpen, use.Place, settings.AsOfWeek, shut, ClimateDefaults.Default), shut, shed.Reader, words);
    }

    public static string Air(Climate air, bool atmosphere, Reader reader, Words<KeepWord> words) => atmosphere
        ? words.Say(KeepWord.AirShut, reader.Number(air.TempC, 1), reader.Number(air.Rh, 0), reader.Number(air.O2, 1), reader.Number(air.Co2, 1))
        : words.Say(KeepWord.AirOpen, reader.Number(air.TempC, 1), reader.Number(air.Rh, 0));

    /// <summary>What a room is by rooms.csv, and what the plan makes of it.</summary>
    public static string Room(ShedReading shed, PlaceUse use, Words<KeepWord> words)
    {
        Reader reader = shed.Reader;
        SeasonSettings settings = shed.SeasonOpen.Settings;
        List<string> said = [];
        if (use.SealedOn is { } day)
        {
            said.Add(words.Say(KeepWord.IsSealed, reader.DayYear(day)));
        }

        if (use.Room is { } room)
        {
            if (use.SealedOn is null)
            {
                said.Add(words.Say(KeepWord.WillSeal, reader.DayYear(settings.Monday(room.Sealed).PlusDays(6))));
            }

            said.Add(room.Opened is { } opened ? words.Say(KeepWord.WillOpen, reader.WeekYear(opened)) : words[KeepWord.StaysShutSentence]);
            if (room.EmptyBy is { } empty)
            {
                said.Add(words.Say(KeepWord.EmptyBy, reader.DayYear(settings.Monday(empty).PlusDays(6))));
            }
        }
        else if (use.Place.Kind == PlaceKind.Sealed && use.SealedOn is null)
        {
            said.Add(words[shed.Book is null ? KeepWord.NotSealed : KeepWord.NeverSealed]);
        }

        return string.Join(" ", said);
    }

    /// <summary>Where a number of a lot is from.</summary>
    public static string By(Core.Lots.KnownBy by, Words<KeepWord> words) => words[by switch
    {
        Core.Lots.KnownBy.Given => KeepWord.ByGiven,
        Core.Lots.KnownBy.Sizer => KeepWord.BySizer,
        Core.Lots.KnownBy.Samples => KeepWord.BySamples,
        Core.Lots.KnownBy.Variety => KeepWord.ByVariety,
        Core.Lots.KnownBy.AllLots => KeepWord.ByAllLots,
        _ => KeepWord.ByDefault,
    }];
}
