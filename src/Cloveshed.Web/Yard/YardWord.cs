namespace Cloveshed.Web.Yard;

/// <summary>What Yard says, by key; the words are in Yard/words.en.txt and words.es.txt.</summary>
public enum YardWord
{
    Title, Lead, NoYards,

    // Curing rows
    RowsHead, RowsLead, RowsNone, LotCol, PlaceCol, DugCol, CuredCol, BandCol, LossCol, WetCol, ForcedCol, WeatherCol, MarkCol, CuredBy, NotWithin, Later, LossBand, ForcedNone, ForcedNever,
    HoursText, Rewet, MarkCured, CuredReason, CuredKept, TrackName, TrackSummary, Skins, Neck, Left, TrackTable, TrackDay, TrackAhead, TrackNow, TrackLimit, TrackWhich, TrackShow, TypicalDay,

    // Warnings
    OverFortyFive, OverPublishedCure, LongHeat, Damp, Slow, Gaps,

    // A yard
    WeatherTold, WeatherNone, DayIs, DayFromPlace, RoofYes, RoofNo, IsHead, IsLead, MinC, MaxC, RhAtMax, RhAtMin, RoofAsk, ForcedC, Who, WhoHint, IsKeep, IsKept, Yes, No,

    // Weather
    WeatherHead, WeatherLead, At, TempC, Rh, Rain, WeatherKeep, WeatherKept, WeatherFileHead, WeatherFileLead, File, FileSend, FileKept, FileAgain,

    // Sacks
    SacksHead, SacksLead, SackMark, Lot, Weight, SackKeep, SackKept, SackFileHead, SackFileLead, SacksNone, SacksOne, SacksNoWeather, SacksDug, FitCaption, FitWhat, FitFactor, FitBand, FitFrom, Rate, Green, Clove,
    FromSacks, FromDefault, FitText, FitWorst, FitWatch, FitEndedWell, FitEndedBadly, LeftOut,

    // Numbers
    NumbersHead, NumbersLead, NumberName, NumberValue, NumberFrom, Ours,

    // What is wrong
    FaultNumber, FaultNumberRemedy, FaultEmpty, FaultEmptyRemedy, FaultMoment, FaultMomentRemedy, FaultAhead, FaultAheadRemedy, FaultFile, FaultFileRemedy,
}
