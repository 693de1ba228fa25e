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

    // demo
    DemoDoes, DemoNoServe, DemoPort, DemoFolder, DemoChanged, DemoKept, DemoPlanned, DemoNotTaken, DemoOtherSeason, DemoPlanName,

    // serve
    ServeDoes, ServeDb, ServeUrls, ServeNotAnAddress, ServeNotHere, ServePortInUse, ServeHere, ServeHowToStop, ServeStopping,

    // seed-need
    SeedDoes, SeedBed, SeedLines, SeedSpacing, SeedClove, SeedGermination, SeedLoss, SeedAcres, SeedRates, SeedTotal,

    // import, export, ledger, backup, restore
    LedgerOption, JsonLedger, ImportDoes, ImportFolder, ImportTaken, ImportAlready, ImportRefusedOnce, ImportRefused, ExportDoes, ExportFolder, ExportDone,
    ExportNone, ExportStray, LedgerDoes, LedgerVerifyDoes, LedgerRebuildDoes, LedgerShowDoes, LedgerKind, LedgerLot, KindUnknown, FlawLine, VerifyHolds, VerifyBroken,
    RebuildSame, RebuildMended, RebuildBroken, ShowHashBroken, BackupDoes, BackupFile, BackupDone, RestoreDoes, RestoreFile, RestoreInto, RestoreDone,
}
