namespace Cloveshed.Pictures.Reading;

/// <summary>Everything that a page says, by key; the words are in the text table of each language.</summary>
public enum Say
{
    // Language and dates
    LanguageTag, DayPattern, DayYearPattern, Months, ShortMonths,

    // The page
    PageTitle, SkipToContent, Contents, TableBehind, Total, Foot,

    // Words of the trade
    Lot, Variety, FieldHead, KindOpen, KindCold, KindSealed, ModeFresh, ModeCrack, ModeSeed, LaneFresh, LaneCrack, LaneSeed, SoldAsIs, Discarded, FirmWord, ForecastWord,
    FullWord, AsOf, WeekOf, EndOfWeek, AfterSeason, StandsAtEnd, NotComputed, NoLimit,

    // Column heads
    WeekHead, LineHead, WorkHead, MassHead, HoursHead, OvertimeHead, AvailableHead, OvertimeAvailableHead, FullHead, WhereHead,
    LastRunHead, LastGoodDayHead, WorthHead, DugHead, ClearedHead, LifeUsedAtLastRunHead, RunsHead, ProductHead, NetHead,
    OrderedHead, StockHead, MadeHead, ShippedHead, SoldHead, LeftHead, HeldForOrdersHead, BeyondHead, FromHead, ToHead, EndHead,
    ShareHead, KindHead, MoneyHead, FromPlaceHead, IntoHead, ReasonHead, OrderHead, CustomerHead, DueHead, FirmHead, ShortHead,
    LateHead, WeeksLateHead, WhyHead, OnTimeHead, FilledHead, OrderedMoneyHead, ShortMoneyHead, ByHead, SeedClassHead, NeedHead,
    KeptHead, MissingHead, MissingCostHead, RoomHead, AirHead, SealedHead, OpenedHead, EmptyByHead, LotsHead, BinsHead, NameHead,
    OneMoreHead, WeeksBindingHead, MostHead, MostInHead, DefaultHead, DefaultValueHead, MinusFifthHead, PlusFifthHead,

    // Head
    HeadDates, HeadValue, HeadProven, HeadProvenGivenRooms, HeadStatus, StatusGapReached, StatusTimeReached, StatusCancelled,
    FigureMoney, FigureMoneyOf, OrderLinesHead, SourcesCaption, FigureOnTime, FigureOnTimeOf, FigureLate, FigureLateOf, FigureShort, FigureShortOf, FigureSeed, FigureSeedOf, FigureSeedNone,
    FigureIn, FigureInOf,

    // Money
    MoneyTitle, MoneyLead, RevenueCaption, CostsCaption, RevenueOrders, RevenueMarket, RevenueAsIs, RevenueEnd, CostMaking,
    CostLine, CostOvertime, CostStorage, CostPlace, CostMoves, CostLate, CostShort, CostSeedShort,

    // What to do first
    FirstTitle, FirstLead, FirstCaption, FirstNone, IntoUnits, IntoSeed, SortedOf,

    // Season board
    BoardName, BoardLead, BoardLeadTop, BoardAllFold, BoardLotsCaption, BoardRunsCaption, BoardLinesCaption, BoardSummary,
    BoardSummaryLine, BoardSummaryRoom, BoardSummaryRoomClosed, LaneHours, LaneWeekTitle, TurnTitle, SortedTurnTitle, LastGoodDayTitle, RoomOpens,
    RoomOpensToEmpty, RoomWindowTitle, StayWords, LegendWindow, LegendFlag, LegendOther, LegendHours, LegendFull,

    // Keeping chart
    KeepingName, KeepingLead, KeepingRestFold, KeepingCaption, KeepingSummary, KeepingSummaryFirst, KeepingSummaryNone,
    KeepingSummaryMargin, KeepingSummaryPast, KeepingRunTitle, RunWords, LegendLife, LegendParts, LegendThin, LegendLonger,

    // Promise strip
    PromiseName, PromiseLead, PromiseBulbs, PromiseCloves, PromiseRowWords, PromiseRowShipped, NextCarton, PromiseTotalsCaption, PromiseByWeekCaption, PromiseSummary,
    PromiseSummaryDearest, PromiseWeekTitle, LegendShipped, LegendSold, LegendBeyond, LegendPrice,

    // Pound flow
    FlowTitle, FlowClosing, FlowSummary, FlowStreamsCaption, FlowEndsCaption, FlowStood, FlowDug, FlowFresh, FlowSorted,
    FlowCracker, FlowSeedLine, FlowPacked, FlowCloves, FlowSeed, FlowSeedOver, FlowAsIs, FlowStanding, FlowSkins, FlowWaste,
    FlowUngraded, FlowUncracked, FlowShrink, FlowDiscarded, FlowUnexplained,

    // Orders
    OrdersTitle, OrdersLead, OrdersNoneShort, ShortCaption, ShortsFold, LateFold, LateCaption, OrdersByProductFold, ByProductCaption,

    // How sure of each size
    SizesTitle, SizesNone, SizesLead, SizesAllHold, SizesShort, SizesCaption, SizeHead, SizeExpectedHead, SizeBandHead, SizeBand, SizeOffHead,
    SizeShippedHead, SizeLowHead, SizeLowShort, SizeLowEnough,

    // Seed
    SeedTitle, SeedAllKept, SeedMissing, SeedCaption, SeedRunsFold, SeedRunsCaption,

    // Rooms and cautions
    RoomsTitle, RoomsCaption, RoomsNone, StaysClosed, AirWords, CautionTitle, CautionNotSafe, CautionOxygen,
    CautionCarbonDioxide, CautionEntry, CautionAlone, CautionCodes, CautionStacking, CautionMachines,

    // A week in order
    WeekDayNames, WeekEachOnce, WeekOwnLine, WeekInShift, WeekNotInBreak, WeekNotInMaintenance, WeekCleaned, WeekLength, WeekOneAtATime, WeekSetUp, WeekCleanOut,
    WeekBins, WeekHeads, WeekSortedFirst, WeekCosts, WeekLate, WeekOverrun, WeekChangeover, WeekDefaultSetups, WeekDefaultShifts, WeekDefaultDock,

    // Worths
    WorthsTitle, WorthsLead, WorthsNone, WorthsCaption, WorthsFold, WorthsByWeekCaption, WorthLine, WorthPeople, WorthPlace,
    WorthSeed, WorthSeedName, WorthAllLines, WorthsNever, WorthPerHour, WorthPerBin, WorthPerMass,

    // The planner's remarks, by the names that they have in the core
    RemarkSeedFor, RemarkServesAndMore, RemarkServes, RemarkAlsoMarket, RemarkOnlyMarket, RemarkCracksSorted,
    RemarkForCloves, RemarkPastLife, RemarkLifeUntil, RemarkLifeUsed, RemarkHandsShort, RemarkLineFullWithOvertime,
    RemarkLineFull, RemarkPlaceFull, RemarkRoomOpened, RemarkLookedAt,
    RemarkNextLine, RemarkNextSold, RemarkNextKept, RemarkNextGone, RemarkAlikeLine, RemarkAlikeSold, RemarkAlikeKept, RemarkBetterLine, RemarkBetterSold, RemarkBetterKept,
    RemarkAfterSeason, RemarkNotToBeHad, RemarkShipsWhole,
    RemarkBestWeek, RemarkThenLate, RemarkLeftByWholes, RemarkMakingDear, RemarkBulbsShort, RemarkClovesShort, RemarkHoursShort,
    RemarkHandsWorth,

    // Where a run would do as well, by the hours that are free there
    AlikeAll, AlikePart, AlikeNone,

    // What it rests on
    BasisTitle, DefaultsLead, DefaultsRanked, DefaultsFold, DefaultsNone, DefaultsCaption, WarningsTitle, WarningsNone,

    // Defaults by their names in the answer, and why each is what it is
    DefaultBulbMeanG, DefaultBulbCv, DefaultCrackShare, DefaultWasteShare, DefaultClovesPerBulb, DefaultCloveCv, DefaultCloveG, DefaultCloveWidthMm,
    DefaultCloveSlope, DefaultCloveScatter, DefaultCrackKeptShare, DefaultBetweenLotSd, DefaultBetweenVarietySd, DefaultBetweenFieldSd, DefaultBetweenSeasonSd, DefaultBetweenBinSd, DefaultSpreadStrength,
    DefaultShapeStrength, DefaultNormalStrength, DefaultLawShiftSd, DefaultDefectStrength, DefaultGivenMeanSd, DefaultGivenCvStrength,
    DefaultGivenShareStrength, DefaultColdC, DefaultColdRh, DefaultYardMeanC, DefaultYardSwingC, DefaultYardRh, DefaultYardRhSwing, DefaultSealedO2,
    DefaultSealedCo2, DefaultKeeps, DefaultCured, DefaultKeepingLossBase, DefaultKeepingLossPerKpa, DefaultKeepingUncuredLossFactor,
    DefaultKeepingUncuredLossWeeks, DefaultKeepingSproutPeak, DefaultKeepingSproutColdEdgeC, DefaultKeepingSproutColdWidthC,
    DefaultKeepingSproutWarmEdgeC, DefaultKeepingSproutWarmWidthC, DefaultKeepingInhibitorShare, DefaultKeepingCo2Sprout, DefaultKeepingCo2Decay,
    DefaultKeepingLowO2, DefaultKeepingDecayAtZero, DefaultKeepingDecayQ10, DefaultKeepingDecayPerTenRh, DefaultKeepingUncuredDecayFactor,
    DefaultKeepingShortLife, DefaultKeepingLongGain, DefaultKeepingShape, AssumedOurs, AssumedFitted, AssumedMean, AssumedCloves, AssumedCloveMass,
    AssumedCloveWidth, AssumedCrackKept, AssumedGiven, AssumedCold, AssumedColdHumidity, AssumedDecay, AssumedCured, AssumedMedium, AssumedYes,
    DefaultNameHead,
}
