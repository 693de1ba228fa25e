namespace Cloveshed.Web.Setup;

/// <summary>What Setup says, by key; the words are in Setup/words.en.txt and words.es.txt.</summary>
public enum SetupWord
{
    // The place
    Title, Lead, Way, Season, SeasonNeed, SeasonWeeks, SeasonAsOf, Weeks, AsOf,

    // The lists
    ListsHead, ListName, ListRows, ListChanged, ListNeed, LastImported, LastByHand, NoRowsShort, MatterGarlic, MatterPlaces, MatterWork, MatterGoods,
    MatterDemand, Lots, LotsNeed, Samples, SamplesNeed, Varieties, VarietiesNeed, Places, PlacesNeed, PlaceWeeks, PlaceWeeksNeed, Rooms, RoomsNeed,
    Lines, LinesNeed, LineWeeks, LineWeeksNeed, People, PeopleNeed, Yields, YieldsNeed, Sizes, SizesNeed, CloveGrades, CloveGradesNeed, Products,
    ProductsNeed, Stock, StockNeed, Orders, OrdersNeed, Market, MarketNeed, SeedNeeds, SeedNeedsNeed, SellAsIs, SellAsIsNeed, Setups, SetupsNeed, Shifts, ShiftsNeed,
    PriceLists, PriceListsNeed, Freight, FreightNeed, Programs, ProgramsNeed, Promotions, PromotionsNeed,

    // A list
    FindLabel, FindIn, FindButton, FindNone, AddRow, PastNoChange, NoRows, NothingFound, RowsAll, RowsFound, PageOf, PagesLabel, PageBefore,
    PageAfter, RowNumber, ColumnsHead, ColumnName, ColumnInFile, ColumnHolds, ColumnExpects, ColumnNeeded,

    // A row
    NewRow, Needed, Choose, EmptyCell, Expects, ExpectsMonday, ExpectsSome, FieldFault, FieldFaultLine, OtherFault, MoreFaults, SaveRow, AddAndNext,
    Leave, Reason, ReasonSlip, ReasonNews, ReasonCounted, ReasonMissing, HappenedOn, DayWrong, ChangeRefused, RowDropped, DropHead, DropRow, DropFree,
    DropUsed, DropRefused, NamedBy, UsedRows, SaidEntered, SaidChanged, SaidDropped, SaidSeason, SeasonMoved, SentOther, HistoryHead, FactWhat,
    FactHappened, FactRecorded, FactChange, FactFirst,

    // Two things that happen in every season
    QuickHead, LineDownHead, LineDownLead, LineDownLine, LineDownWeek, LineDownHours, LineDownOvertime, LineDownReason, LineDownSave, LateHead,
    LateLead, LateLot, LateOption, LateDug, LateReady, LateReason, LateSave, LateNoLot, LateNoDay, SaidLate,

    // In and out
    ImportHead, ImportShort, ImportLead, SendHead, SendLead, SendFolder, SendZip, SendPath, SendPathExample, SendLook, SendAgain, SendHelp, DemoHead,
    DemoLead, DemoLoad, DemoNotNow, FaultNothing, FaultTooLarge, FaultTooMany, FaultNotAZip, FaultLeadsOut, FaultTwice, FaultNoFolder, FaultNotHere,
    FaultCannotRead, ArrivalGone, ArrivalTakenOrGone, ArrivalFaulty, ArrivalFaultyLead, ArrivalFirst, ArrivalInstead, ArrivalSame, ArrivalTake,
    FaultsShown, FaultsByFile, AllFiles, FaultList, FaultFile, FaultLine, FaultColumn, FaultValue, FaultExpected, FaultRemedy, DifferenceHead,
    RowsNew, RowsChanged, RowsGone, RowsSame, RowIsNew, RowIsChanged, RowIsGone, RowsNotShown, WarningsHead, WarningsLead, SaidImported, SaidSame,
    ExportSeason, ExportNow, ExportPast, ExportPlan,

    // The ledger
    LedgerHead, LedgerShort, LedgerLead, FactCount, HeadHash, HeadHint, Verify, VerifyHolds, VerifyBroken, VerifyRemedy, Backup, FactsHead,
    FactsAlways, FactKind, AnyKind, FactLot, FactSeq, FactBy, FactHolds, FactCorrects, FactHash, FactsLatest, FactsOlder, NoFacts, KindSeasonOpened,
    KindSeasonChanged, KindRunPinned, KindRunBarred, KindHoldLifted, KindPlanAsked, KindPlanMade, KindPlanRefused, KindPlanStopped, KindPlanAdopted, KindWeekOrdered, KindWeekAsked, KindWeekFound, KindRunDone,
    KindAirRead, KindRoomStepped, KindRoomTested, KindRoomDescribed, KindRecordWithdrawn, KindWeatherTold, KindYardDescribed, KindSackWeighed, KindLotInspected,
    KindYardRecordWithdrawn, KindNote, KindEntered, KindChanged, KindDropped,

    // How sure the size curves are
    SureHead, SureShort, SureLead, SureHolds, SureOff, SureOwnHead, SureOwnLead, SureHalf, SureWhole, SureWholeHint, SureTooFew, SureMadeHead, SureMadeLead,
    SureMadeRow, SureTrial, SureLots, SureRawOff, SureCountsOff, SurePooledOff, SureHeld, SureOffHint, SureLearnedHead, SureVarieties, SureFields, SureSeasons, SureAlike,
    SureShape, SureShapeFitted, SureShapeDefault, SureLearnedHint, SureNextHead, SureNextLead, SureLot, SureVariety, SureField, SureWeighed, SureMean,
    SureBand, SureGrams, SureFromTo, SureTryingHead, SureTrying, SureStop, SureStopped, SureAgain, SureBegun,

    // How pages are shown
    ShownHead, ShownLead,

    // Words in cells
    CellYes, CellNo, CellShort, CellMedium, CellLong, CellOpen, CellCold, CellSealed, CellEstimated, CellDug, CellWeighed, CellMold, CellDecay,
    CellSprout, CellShatter, CellMechanical, CellSkin, CellOther, CellNone, CellFresh, CellCrack, CellSeed, CellBulb, CellClove,
}
