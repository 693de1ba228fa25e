namespace Cloveshed.Web.Today;

/// <summary>What Today says, by key; the words are in Today/words.en.txt and words.es.txt.</summary>
public enum TodayWord
{
    Title, Lead,

    // What it rests on
    NoPlan, NoPlanLead, NoPlanLink, SinceHead, SinceLead, SinceOrders, SinceLink, SinceFold, JobRuns, JobLink, Behind, BehindLink, Warnings,

    // The week
    WeekNav, WeekOf, WeekBefore, WeekAfter,

    // Decisions
    DecideHead, DecideLead, DecideNone, CostsAWeek, SavesAWeek, WaitsHead, WaitsLead, WaitsCaption, WaitsWhat, WaitsStake, WaitsUntil, WaitsWhy, StakeCaption, LaterShort, LaterShortLink,
    RunTitle, RunSortedTitle, RunAbout, RunInto, SortedOut, ClockTitle, ClockPastTitle, ClockAbout, ClockNever, MoveTitle, MoveAbout, AndMore,
    SealTitle, SealAbout, NotThisSeason, OpenTitle, OpenAbout, NoLimit, OrderTitle, OrderShort, OrderLate, OrderDue, OrderUnplanned, SeedTitle, SeedAbout,
    AlarmTitle, AlarmAbout, SeeRoom, PeopleFirst, NoPrice, RoomsOut, RoomsNeverRead, RoomsOutHead, RoomsUnpricedHead,
    HoldFold, SeeLot, SeePlan, SeeMoves, SeePlace, SeeOrder,

    // How money is made up
    PartsFold, PartsCaption, PartWhat, PartAmount, PartRate, PartShare, PartMoney, PartsMore, AmountBins, AmountUnits,
    LossKeeping, LossLate, LossHours, LossSeedLate, LossStanding, LossUnsold, LossShortCharge, LossSeedShort, LossWorth, HowHead, HowText,

    // The week's runs
    RunsHead, RunsNone, RunsCaption, LineHours, LineIdle, WaitHead,

    // Without a plan
    EndsHead, EndsLead, EndsAll, DueHead, DueNone, DueOrder,

    // Notes
    NotesHead, NoteText, NoteKeep, NoteKept, NoteEmpty,
}
