namespace Cloveshed.Web.Plan;

/// <summary>What Plan says, by key; the words are in Plan/words.en.txt and words.es.txt.</summary>
public enum PlanWord
{
    // The page
    Title, BoardTitle, NoSuchPlan, NoPlan, NoPlanLead, MadeAt, AdoptedWord, NotAdoptedWord, AllPlans, ToPlan, ToThisPlan, CompareWithAdopted,
    OnThisPage, PartWeek, LotsShown, ShowWorthMost, ShowAllLots, LotPages, LotRange, AsTables, LegendFold, BoardKeys, TablesTitle, TablesLead,

    // What is chosen
    SideLabel, ChooseSomething, ChosenGone, RunHead,
    WhyServes, WhyClock, WhyBinds, WhyNext, WhyNothingBinds, WhyNextSorted, WhyClockSorted, WhyNotSaid, WhyHint, RunOn, RunHours, RunOvertime, RunIn, RunFrom, RunLife, RunLastGood, RunLifePast, RunMakes,
    RunSeed, RunSortedOut, OneMore, WorthHour, WorthBin, WorthLot, ToLot, LotHead, LotMass, LotField, LotStays, LotRuns, LotRun, OfSorted,
    LotNoRuns, LotSold, LotInKeep,

    // Holds
    Pin, PinAtLeast, PinElsewhere, PinLine, PinWeek,
    MoveHead, MoveBar, MoveDo, MoveHint, MovedTo, Moved, Bar, Lift, HoldHint, HoldsHead, HoldPinned, HoldPinnedMass, HoldBarred, HoldKept, HoldLess,
    HoldMissed, HoldNotYet, HoldOutside, HoldBadWeek, PinBadMass, Pinned, Barred, Lifted,

    // The whole plan
    WholeHead, WholeValue, WholeProven, WholeOnTime, WholeShort, WholeSeed, MoneyCaption, NoBound, ProvenBest, ProvenUnder, ProvenGivenRooms,
    SearchTook,

    // The week's runs
    WeekHead, WeekNav, WeekBefore, WeekAfter, WeekNone, ShortsFile, OrdersByHand, OrderAdd, ToDock,

    // A week in order
    OrderTitle, OrderHead, OrderLead, OrderHolds, OrderBreaks, OrderLineOf, OrderLaneLabel, OrderRunLabel, OrderAfter, OrderNumber,
    OrderStart, OrderEnd, OrderSetUp, OrderMinutes, OrderCleanOut, OrderOrganic, OrderMove, OrderEarlier, OrderLater, OrderEarlierOf,
    OrderLaterOf, OrderKeys, OrderCostsHead, OrderCosts, OrderOver, OrderAllReady, OrderShort, OrderSearchHead, OrderSearch, OrderSearching,
    OrderStopping, OrderStop, OrderRunning, OrderAgain, OrderLook, OrderFailed, OrderProven, OrderGap, OrderFound, OrderShowFound, OrderTakeHead,
    OrderTake, OrderTaken, OrderNotTaken, OrderNoneTaken, OrderIsTaken, OrderOtherTaken, OrderSheets, OrderCaution, ToOrder, SheetsLead,
    SheetsNotTaken, SheetsBoth, SheetPeople, SheetCleaning, SheetTime, SheetBins, SheetBinsFrom, SheetBinsOf, SheetBinsThere, SheetOf, SheetSorted, SheetTravel, SheetInto,
    SheetCounted, SheetDumped, SheetCuts, SheetBefore, SheetFirst, SheetGoesOn, SheetFromBefore, SheetThrough, SheetStops, SheetDone,

    // What changed since
    SinceOne, SinceMany, SinceNew, SinceChanged, SinceGone, SinceLifted, OtherSeason, NounHold, NounLook, NounSeason, NounSizeClass, NounVariety,
    NounPlace, NounPlaceWeek, NounLot, NounSample, NounYield, NounLine, NounSizer, NounLineWeek, NounPeopleWeek, NounCloveGrade, NounProduct, NounStock,
    NounSealedRoom, NounOrderLine, NounMarketWeek, NounSeedNeed, NounAsIsPrice, NounListPrice, NounFreight, NounProgram, NounPromotion,

    // Plan again
    Again, AgainTitle, AgainLead, AgainName, AgainNameGiven, AgainSeconds, AgainGap, AgainDo, AgainHint, AgainHolds, AgainNoHolds, AgainBadName,
    AgainBadSeconds, AgainBadGap,

    // A job
    JobsNow, JobWorking, JobWaiting, JobTitle, JobSeconds, JobOf, JobValue, JobBound, JobChart, JobChartLead, JobTable, JobStageHead, JobLeave,
    JobAgain, JobElsewhere,
    JobStop, JobStopHint, JobStopping, JobEndedAlready, JobMadeTitle, JobMade, JobMadeStopped, JobOpenPlan, JobStoppedTitle, JobStoppedLead,
    JobRefusedTitle, NoSuchJob, StageWaiting, StageBegun, StageAllRoomWeeks, StageRoomWeeksFound, StageRoomWeeksImproved, StageGivenRoomWeeks,
    StageRunsDecided, StageChecking, StageKeeping, StageEnded, RefusedFault, RefusedBreaches, RefusedMore, FaultNoSeason, FaultPlanner,

    // All plans, and two of them
    AllName, AllMade, AllBasis, AllHow, AllOlder, HowGap, HowTime, HowCancelled, EndedHead, EndedStopped, EndedRefused, Compare, CompareFirst,
    CompareSecond, CompareFirstOf, CompareSecondOf, CompareChoose, CompareNot, CompareLead, CompareRuns, CompareOrders, CompareRooms,
    CompareMoney, CompareChange, CompareFills, CompareRoomsCaption, CompareSealedOf, CompareOpenedOf, CompareNotSealed, CompareRunsHead,
    CompareSizes, CompareSize, CompareMovesHead, CompareMovesLead, CompareMoves, CompareWeeksLater,
    CompareOrdersHead, CompareFareOf, CompareFare, CompareNoLine, CompareRest, CompareSomeOf, CompareSame, CompareTurn, Adopt, AdoptFirst, AdoptSame,
    OtherwiseTitle, OtherwiseLead, OtherwisePlayingHead, OtherwisePlaying, OtherwiseStop, OtherwiseStopped, OtherwiseAgain, OtherwiseBegun, OtherwisePlanned, OtherwiseInVain, OtherwiseP10, OtherwiseP50, OtherwiseP90,
    OtherwiseWorst, OtherwiseBreaks, OtherwiseBreaksLead, OtherwiseNoBreak, OtherwiseShare, OtherwiseMiddle, OtherwiseEarliest, OtherwiseTroubles, OtherwiseWhat, OtherwiseMass, OtherwiseLotLate,
    OtherwiseLotSpent, OtherwiseLine, OtherwisePlace, OtherwiseSizes, OtherwiseSizesLead, OtherwiseSize, OtherwiseWeeks, OtherwiseWeek, OtherwiseReturn, OtherwiseAhead, OtherwiseReturnLead, OtherwiseOnTime,
    OtherwiseOnTimeLead, OtherwiseOf, OtherwiseAssumes,
    AdoptChangesOne, AdoptChanges, AdoptedNow, Adopted, ChangeNew, ChangeGone, ChangeOther,

    // Adopted against really run
    ActualTitle, ActualLead, ActualNoPlan, ActualNotYet, ActualPlanned, ActualRan, ActualAsPlanned, ActualAsPlannedHint, ActualWeeks,
    ActualPlannedHead, ActualRanHead, ActualDifference, ActualNotRun, ActualUnplanned, ActualPlan, ActualWeekHead, ActualWeekNone,
    ActualState, ActualTell, ActualDay, ActualDo, ActualMend, ActualOther, ActualHint, ActualIsUnplanned, ActualIsNotTold, ActualIsNotRun,
    ActualIsAsPlanned, ActualIsLess, ActualIsMore, ActualBadDay, ActualBadNumber, ActualDone,
}
