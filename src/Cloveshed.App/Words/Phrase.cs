namespace Cloveshed.App.Words;

/// <summary>Everything that the program says, by key; the words are in the file of each language.</summary>
public enum Phrase
{
    // The program and its options
    ProgramDoes, LanguageOption, VerboseOption, HelpOption, VersionOption, MassOption, JsonSummary, JsonCheck, JsonNumbers,

    // Help
    HelpUsage, HelpArguments, HelpCommands, HelpOptions, HelpExample, HelpCommandWord, HelpOptionsWord, HelpFoot,

    // Used wrongly
    SeeHelp, UnknownOption, UnknownCommand, TooMany, DidYouMean, ArgumentMissing, OptionMissing, ValueMissing, FolderEmpty, NotAmong,
    NotANumber, NumberFrom, NumberAbove, WholeFrom, FileNameEmpty,

    // Something failed
    FilesFailed, Unexpected,

    // plan
    PlanDoes, PlanFolder, PlanOut, PlanSeconds, PlanGap, PlanSeed, WarningLine, RefusedOnce, RefusedFaults, MoreFaults,
    OutIsFile, OutIsSeason, OutIsRoot, OutNotWritable, Stopping, StoppedEarly, ProgressValue, ProgressBound, ProgressGap,
    StageBegun, StageAllRoomWeeks, StageRoomWeeksFound, StageRoomWeeksImproved, StageGivenRoomWeeks, StageRunsDecided,
    NotToBeUsed, FailedKept,

    // The summary
    NoBound, ProvenBest, CheckHeld, MoneyHead, RevenueHead, CostsHead, OrdersHead, OrdersNone, OrdersOnTime, OrdersLate, OrdersShort,
    OrdersDearest, OrderShortLine, SeedHead, SeedLine, RoomsHead, RoomLine, RoomOpens, FirstHead, FirstNone, FirstLine,
    FilesHead, FilesReport, FilesAll,

    // check-plan
    CheckDoes, CheckFolder, CheckOut, BreachLine, CheckHolds, CheckBrokenOnce, CheckBroken,

    // shift, check-shift
    ShiftDoes, ShiftFolder, ShiftPlan, ShiftWeek, ShiftOut, ShiftSeconds, ShiftSeed, ShiftWeekBad, ShiftNoPlan, ShiftOtherPlan, ShiftNoRuns, ShiftHead, ShiftLine, ShiftRun, ShiftCleanOut,
    ShiftCosts, ShiftGreedy, ShiftGaps, ShiftProven, ShiftLateNone, ShiftLateRow, ShiftOver, ShiftNotHolding, ShiftFiles, CheckShiftDoes, CheckShiftFolder, CheckShiftHolds, CheckShiftBroken, CheckShiftWeek,

    // demo
    DemoDoes, DemoNoServe, DemoPort, DemoFolder, DemoChanged, DemoKept, DemoPlanned, DemoNotTaken, DemoOtherSeason, DemoPlanName,

    // serve
    ServeDoes, ServeDb, ServeUrls, ServeNotAnAddress, ServeNotHere, ServePortInUse, ServeHere, ServeHowToStop, ServeStopping,

    // seed-need
    SeedDoes, SeedBed, SeedLines, SeedSpacing, SeedClove, SeedGermination, SeedLoss, SeedAcres, SeedRates, SeedTotal,

    // sizes, cuts, holes
    WeightsFile, ChartOption, BandSeed, LawByDefault, OddShape, OddFar, MoreOdd, SizesDoes, SizesHead, SizesHeadOne, SizesRow, SizesUnder, SizesOver,
    CutsDoes, CutsPrices, CutsTolerance, CutsOutlets, CutsInspected, CutsRisk, CutsNone, CutsRow, CutsUpTo, CutsRefused, CutsSkipped, CutsOver, CutsValue, CutsNominalOff,
    HolesDoes, ClovesFile, HolesSplit, HolesStep, HolesLoad, HolesByLaw, HolesNotHeld, HolesHead, HolesNone, HolesRow, HolesUngraded, HolesCaution,

    // import, export, ledger, backup, restore
    LedgerOption, JsonLedger, ImportDoes, ImportFolder, ImportTaken, ImportAlready, ImportRefusedOnce, ImportRefused, ExportDoes, ExportFolder, ExportDone,
    ExportNone, ExportStray, LedgerDoes, LedgerVerifyDoes, LedgerRebuildDoes, LedgerShowDoes, LedgerKind, LedgerLot, KindUnknown, FlawLine, VerifyHolds, VerifyBroken,
    RebuildSame, RebuildMended, RebuildBroken, ShowHashBroken, BackupDoes, BackupFile, BackupDone, RestoreDoes, RestoreFile, RestoreInto, RestoreDone,

    // scenarios
    ScenariosDoes, ScenariosPlan, ScenariosCount, ScenariosSeed, ScenariosCompare, ScenariosSeconds, ScenariosPlaying, ScenariosPlanning, ScenariosHead, ScenariosValue, ScenariosFill,
    ScenariosSize, ScenariosBreaks, ScenariosNoBreak, ScenariosBreak, ScenariosTroubles, ScenariosLotLate, ScenariosLotSpent, ScenariosLine, ScenariosPlace, ScenariosJudged, ScenariosTried,
    ScenariosAgainst, ScenariosChosen, ScenariosAssumes, ScenariosExpected, ScenariosLessGarlic, ScenariosShorterWeeks, ScenariosFasterClocks, ScenariosAllALittle, ScenariosWeighted,

    // suppose
    SupposeDoes, SupposeCancel, SupposeUnits, SupposeDue, SupposeStop, SupposeHours, SupposeNothing, SupposeNoOrder, SupposeNoLine, SupposeNotAhead, SupposeWhole, SupposeNoPeople,
    SupposeAdd, SupposeDigLater, SupposeKeepsLess, SupposeWeighsLess, SupposeRan, SupposeRanNoMore, SupposeOpen, SupposeNoProduct, SupposeNoLot, SupposeDug, SupposeShut, SupposeOver, SupposeNotThere,
    SupposeCannotRun, SupposeNotSealed, SupposeMoved,
    SupposeLoses, SupposeGains, SupposeBound, SupposeRuns, SupposeNoRuns, SupposeRun, SupposeLess, SupposeMore, SupposeToLine, SupposeSoonerLine, SupposeToMarket, SupposeToSeed,

    // promise
    PromiseDoes, PromisePlan, PromiseLineOption, PromiseLineWanted, PromiseLinesAtMost, PromiseDue, PromiseFrom, PromiseLarger, DateWanted, PromiseWorking, PromiseStopped,
    PromiseRefused, PromiseYes, PromiseAtALoss, PromiseLater, PromisePart, PromiseNo, PromiseHad, PromiseAllFrom, PromiseNever, PromiseUnit, PromiseWorth,
    PromiseCostAndPaid, PromiseCost, PromiseGivesWay, PromiseNobody, PromiseFromLine, PromiseLaterLine, PromiseFromMarket, PromiseFromSeed, PromiseSure,

    // air
    AirDoes, AirTemp, AirRh, AirPressure, AirPressures, AirWater, AirDew, AirNoDew, AirTooHumid,

    // keep
    KeepDoes, KeepO2, KeepCo2, KeepForm, KeepKeeps, KeepLife, KeepLoss, KeepBreath, KeepCautionLine, KeepTooMuchGas,
    CautionOxygenLow, CautionOxygenHigh, CautionCo2Danger, CautionCo2Short, CautionCo2Day, CautionCo2Injures, CautionLowOxygenAlone, CautionFreeze,
    CautionSprout, CautionDamp, CautionDry, CautionBeyond, CautionSeedCold, CautionSeedWarm, CautionSeedHumidity, CautionSeedAtmosphere, CautionPeeledWarm,
    CautionPeeledCold, CautionEntry, CautionLocalFirst,

    // cure
    CureDoes, CureWeather, CureSacks, CureDate, CureBeyond, CureNever, CureNotWithin, CureLoss, CureLossSoFar, CureForced, CureForcedNever, CureRewet,
    CureSacksSay, CureSackOnce, CureNoFit, CureOver45, CureOver46, CureLongHeat, CureDamp, CureSlow, CureGaps,

    // Files of measurements
    SheetUnreadable, SheetEmpty, SheetSeparator, SheetTwice, SheetFields, SheetLong, SheetCellEmpty, SheetColumnMissing, SheetCellFault,
    SheetNotUtf8, SheetQuote, SheetTwoRows, SheetUnknown, SheetShares, SheetTimeExpected, SheetTimeExample, SheetOffsetExpected, SheetOrderExpected,
    SheetSameClock, SheetWithinWeather, SheetOnceExpected, SheetWeighTwice, SheetWeightExpected, SheetTempExample, SheetHumidityExample, SheetWeightExample,
    SheetSackExample, SheetMendNumber, SheetMendTime, SheetMendOrder, SheetMendSack,
}
