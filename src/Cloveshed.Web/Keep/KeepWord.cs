namespace Cloveshed.Web.Keep;

/// <summary>What Keep says, by key; the words are in Keep/words.en.txt and words.es.txt.</summary>
public enum KeepWord
{
    Title, Lead, LeadPlan, LeadStanding, LeadSeen, LeadSeenOne,

    // Which lots
    FilterLabel, FilterPlace, FilterVariety, FilterFind, FilterAll, FilterShow, FilterClear, Found, NoneFound, PagesLabel, PageSpan, PageAll, StandsNow,
    MarginHead, NoLot, NoLotLead, ToKeep,

    // Places
    PlacesHead, PlaceHead, AirNow, AirOpen, AirShut, BinsNow, BinsIn, BinsHead, BinsOf, BinsName, BinsLead, BinsTitle, ShutTitle, StaysShut,
    PlaceSummary, Capacity, FullNow, FullestHead, Fullest, NeverUsed, RoomState, IsSealed, WillSeal, WillOpen, StaysShutSentence, EmptyBy, NotSealed,
    NeverSealed, ToRoom, ToRoomOf, ToReach, ToRelease, NowCaption, WeekAsk, WeekCaption,

    // A lot
    FromField, StateEstimated, StateDug, StateWeighed, Organic, NotCured, Inhibitor, OnHold, SeedClass, ReadyOn, ChangedSince, PlanAgain,
    FigureStands, FigureBins, FigureBinsOne, FigureLast, FigureLastOf, FigureWorth, FigureWorthOf, FigureWorthNone, FigureMean, FigureBand, StandsHead, SinceHead,
    BetweenHead, GradeHead, CrackHead, WasteHead, LifeHead, SharesBands, SizesHead, SizesFrom, SizesSummary, SizesCaption, ClassHead, WindowHead, Window, WindowOver,
    WindowUnder, UnderName, ShareHead, LowHead, HighHead, GradesCaption, GradeName, Ungraded, GradesFrom, ByGiven, BySizer, BySamples, ByVariety, ByAllLots, ByDefault,

    // In the plan
    PlannedHead, NotPlanned, PathsCaption, PartHead, MassAtStart, StaysHead, StaysIn, GoesHead, GoesRun, GoesSold, GoesDiscarded, GoesStays,
    LifeAtEnd, RunsCaption, SortedOut, OrdersHead, OrdersNone, OrdersLead, OrdersFold, ShipsHead, UnitsHead,

    // What a hand can do
    SpoiledHead, SpoiledLead, SpoiledPlace, SpoiledMass, SpoiledHow, SpoiledOut, SpoiledIn, SpoiledBins, SpoiledLook, SpoiledWrong, SpoiledCaption,
    What, Now, Then, Change, RowNet, RowFresh, RowCrack, RowWaste, RowWorth, SpoiledGone, SpoiledWrites, SpoiledRuns, SpoiledRecord, SpoiledKept, Reason,
    CorrectHead, CorrectLead, CorrectRow, CellNet, CellBins, CellFresh, CellCrack, Correct, Corrected, HoldRow, HoldAsk, HoldNo, HoldYes, ReadyAsk,
    Held, RowsMoved,

    MoveHead, MoveLead, MoveFrom, MoveTo, MoveAt, MoveWhy, MoveRecord, MoveKept, MoveWrong, MoveRoom,

    // Its facts
    FactsHead, FactsLead, FactsAll,
}
