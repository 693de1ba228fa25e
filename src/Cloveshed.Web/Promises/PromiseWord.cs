namespace Cloveshed.Web.Promises;

/// <summary>What promises say, by key; the words are in Promises/words.en.txt and words.es.txt.</summary>
public enum PromiseWord
{
    // The page
    Title, Lead, ToDock, NoPlan, MakePlan, PastDay, HeldTo, NotAdopted,

    // The model
    StandHead, StandWaits, StandPreparing, Answering, StopIt, Stopping, Stopped, StoppedLead, Failed, Again, Begun, SeasonChanged, PlanChanged, WasIdle, ReadyNow, Meanwhile, LookAgain,
    AnswerMeanwhile, AnswerStopping, AnswerStopped, AskAgain,

    // The question
    AskHead, AskLead, Due, ShipFrom, Customer, Lines, LineField, Product, Units, Price, LateCost, ShortCost, LargerOk, Ask, AskedFirst,
    FaultNoLines, FaultProduct, FaultUnits, FaultPrice, FaultDue, FaultFrom,

    // The answer
    AnswerHead, Yes, AtALoss, Later, Part, No, NotAnswered, AskedHead, ByDueHead, AllFromHead, AllByThen, Never, AverageHead, NextHead, PaysHead, NoneOffered, CostFigure, PaidFigure,
    NetFigure, NoPrice, AnswerSure, GivesHead, GivesLead, NobodyGives, GivesWho, GivesLess, GivesMoney, FromLine, FromMarket, FromSeed, LaterOnly, MoreGive,

    // Taking it
    TakeHead, TakeLead, TakeAsked, TakeByThen, TakeFrom, TakeName, TakeCustomer, TakeFirm, TakeWhole, TakeReason, TakeOrder, TakeNothing,

    // The strip
    StripHead, StripLead, StripSeasonMoved, WeeksHead, WeeksLead, WhichProduct, PalletUnits, Show, WeekHead, FreeHead, MarketHead, NextUnitHead, PalletHead, AskThis, WeeksCaption, NoWeeks, StripNote,
}
