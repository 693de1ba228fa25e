namespace Cloveshed.Web.Dock;

/// <summary>What Dock says, by key; the words are in Dock/words.en.txt and words.es.txt.</summary>
public enum DockWord
{
    Title, Lead, LeadPlan, LeadNoPlan,

    // Which lines
    FilterLabel, FilterCustomer, FilterProduct, FilterWeek, FilterState, FilterFind, FilterAll, FilterShow, FilterClear, NoneFound, PagesLabel,
    PageBefore, PageAfter, PageSpan, TotalOrdered, TotalUnits, TotalOnTime, UnitsOf, TotalLate, LinesOf, TotalShort, ShortMoney, ByProduct,

    // Lines
    LinesCaption, ShipWeek, ProductHead, DueHead, UnitsHead, PriceHead, StateHead, FromHead, FromUnits, FromMore, LotRun, StockOf, Stock,
    StateOnTime, StateLate, StateShort, StateUnplanned, UnitsOnTime, UnitsLate, UnitsShort, ChangedSince,

    // An order
    ToDock, NoOrder, NoOrderLead, OrderLead, ShipsWhole, OrderChanged, PlanAgain, LinesHead, LineHead, MoneyHead, LateMoney, ShortMoneyHead,
    MoneyHint, LargerToo, FillsHead, FillsLead, FillsCaption, LineTitle, ShipsHead, ShippedHead, LotHead, RunHead, RunOn, MadeHead, Untraced,
    UnplannedLead, FactsHead,

    // What a hand can do
    HandsHead, ChangeLine, Firm, Whole, LargerOk, LateCost, ShortCost, ShipFrom, Yes, No, EmptyYes, EmptyNo, Reason, Record, LineChanged, LineMoved,
    CancelLine, CancelWhy, LineCancelled, MoveDue, NewDue, NewShipFrom, DueMoved, AddLines,

    // A new order
    AddHead, AddLead, AddOrder, OrderName, LinesAsk, LineField, NoLines, OrderThere, Added,

    // A load that came back
    BackHead, BackLead, BackHelp, BackLine, BackProduct, BackMade, BackLot, BackBecomes, BackAgain, BackCounted, BackOff, BackDue, BackWrong,
    BackKept,

    // Where a price comes from
    PriceFromHead, PriceFromLead, PriceAgreed, PriceOfList, PriceCut, PriceFreight, PriceAtDock, ProgramLeast, ProgramMore, ProgramThatWeek, ProgramOrder, ProgramRows, PriceListName, DestinationName, ToPromise,

    // Finished stock
    StockHead, StockLead, StockCorrect, StockNone, ShipsUntil, TooOld, LeftHead,
}
