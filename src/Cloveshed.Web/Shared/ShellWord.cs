namespace Cloveshed.Web.Shared;

/// <summary>What stands around every page, by key; the words are in Shared/words.en.txt and words.es.txt.</summary>
public enum ShellWord
{
    // Around the page
    SkipToContent, BrandLabel, Places, Help, Manual, Caution,

    // Places
    Today, Yard, Keep, Line, Plan, Dock, Setup,

    // How it is looked at
    View, Language, Mass, MassAsSeason, Ground, GroundBySystem, GroundLight, GroundDark, ViewApply, ViewChanged,
    AsOf, AsOfDay, AsKnownNow, AsKnownThen, AsOfEmpty, AsOfNowLine, AsOfThenLine, BackToNow, AsOfReadOnly, AsOfReadOnlyRemedy, AsOfBadDay,

    // After a form
    Done, NotDone, FaultsHead,

    // No season
    NoSeason, NoSeasonLead, NoSeasonSetup, NoSeasonThen,

    // Something is wrong
    NothingHere, NothingHereLead, NotTaken, FormTooOld, Trouble, TroubleLead, TroubleNumber, LedgerTrouble, TryAgain, ToToday,

    // Tables and pictures
    MoreRows, ShowAll, ChartNeedsScript,

    // Facts
    FactNumber, FactWhen, FactWhat, FactWhy,
}
