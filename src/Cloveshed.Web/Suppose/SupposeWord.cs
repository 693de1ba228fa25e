namespace Cloveshed.Web.Suppose;

/// <summary>What the page of supposed changes says, by key; the words are in Suppose/words.en.txt and words.es.txt.</summary>
public enum SupposeWord
{
    // The page
    Title, Lead, ToPlan, NoSuchPlan, AllPlans, PastDay, NotHeld, ToHeld, HeldTo, Working, WorthKnown, Meanwhile, NothingYet,

    // The changes
    ListHead, TakeOut, StartOver, AddHead, AddLead, Add,
    OrderHead, OrderField, OrderHint, What, CalledOff, OtherUnits, OtherDue, Units, Day,
    ComesHead, Product, PriceEach, DueBy,
    LineHead, Line, FirstWeek, LastWeek,
    PeopleHead, Week, PersonHours,
    LotHead, LotField, DugLater, KeepsLess, WeighsLess, HowMuch, HowMuchHint,
    RunHead, RunHint, MassRun, NoMore, AsTold, AsToldHint,
    RoomHead, Room, OpenIn, StaysShut,
    ToldCancel, ToldUnits, ToldDue, ToldAdd, ToldStop, ToldStopOne, ToldPeople, ToldLater, ToldKeeps, ToldLighter, ToldRan, ToldRanNoMore, ToldOpen, ToldShut,

    // What is wrong
    BadOrder, BadUnits, BadDay, BadProduct, BadPrice, BadLine, BadWeeks, BadHours, BadLot, BadMuch, BadPercent, BadMass, BadRoom, BadChange, TooMany,
    RefusedHead, NoSuchOrder, NoSuchLine, NotAhead, OrderIsWhole, NoPeopleCounted, NoSuchProduct, NoSuchLot, AlreadyDug, RoomIsShut, LifeIsOver, NotSoMuchThere, CannotRun, NotSealed,

    // The answer
    AnswerHead, Loses, Gains, Same, ValueNow, ValueThen, AtMost, AtMostNote, Sure, NotSolved,
    RunsHead, RunsLead, RunsNone, RunsMore, WeekHead, LotHeading, LineHeading, NowHead, ThenHead, ChangeHead, NewRun, GoneRun,
    LessHead, MoreHead, LessNone, MoreNone, LessBy, MoreBy, SoonerOnly,

    // Making it real
    RealHead, RealLead, RealOrder, RealPromise, RealLine, RealPeople, RealHarvest, RealLot, RealRun, RealRoom, RealPlan, RealAgain,

    // Elsewhere
    WhatIf, WhatIfLine, WhatIfLot, WhatIfOrder, WhatIfRun,
}
