namespace Cloveshed.Web.Rooms;

/// <summary>What a room's page says. By key; the words are in Rooms/words.en.txt and words.es.txt.</summary>
public enum RoomWord
{
    // The page
    Title, NoRoom, NoRoomLead, ToPlaces, ToReach, OnThisPage,

    // Its state
    StateEmpty, StateLoading, StatePullingDown, StateHolding, StateSealed, StateOpened, StateAiring, StateRunningOut, Since, SinceAssumed, NoSteps,
    Holds,

    // Before a door is opened
    EntryHead, EntryDeadly, EntryNever, RuleLocal, RuleOxygen, RuleCo2, RuleOrder, RuleAlone, RuleLocked,

    // Alarms and limits
    AlarmsHead, AlarmsNone, AlarmsUnaired, AlarmsEmpty, AlarmSince, AlarmCosts, AlarmCelsius, AlarmPercent, UnwatchedFor, NeverRead, AlarmDeadly, AlarmCold, AlarmWarm,
    AlarmDry, AlarmDamp, AlarmO2Low, AlarmO2High, AlarmCo2Low, AlarmCo2High, AlarmUnwatched, DoDeadly, DoCold, DoWarm, DoDry, DoDamp, DoO2Low, DoO2High,
    DoCo2Low, DoCo2High, DoUnwatched, LimitsHead, LimitsHint, QuantityHead, LeastHead, MostHead, O2People, Co2People, QuietHead, LimitLeast, LimitMost,

    // Readings
    ReadingsHead, ReadingsNone, SpanLabel, SpanTwo, SpanUsual, SpanSixty, SpanAll, TempHead, RhHead, O2Head, Co2Head, ReadTable, ReadTableLast,
    ReadSummary, ReadSummaryOne, At, Who, Instrument, SourceHead, SourceHand, SourceFile, SourceDevice, LastReadings, LastReadingOne,

    // Write down a reading
    ReadHead, ReadLead, ReadOutside, WhoHint, ReadKeep, ReadingKept, ReadingCorrected, CorrectHead, CorrectLead, Correct, FileHead, FileLead, FileField,
    FileWho, FileInstrument, FileSend, FileDevice, FileKept, FileAgain, FaultNoFile, FaultNoFileRemedy, FaultMore,

    // Write down a step
    StepHead, StepLead, StepField, StepsFit, StepsOther, StepLoading, StepPullDown, StepPulledDown, StepSealed, StepSealBroken, StepAiring,
    StepTurnedOver, StepEmptied, StepTests, StepNote, Answers, DoorHead, DoorLead, GasOxygen, GasFlammable, GasCarbonDioxide, TestValue, Attendant,
    Locked, Anyway, StepKeep, StepKept, TestsKept, FaultNumber, FaultNumberRemedy, FaultRange, FaultRangeRemedy, FaultMoment, FaultMomentRemedy, FaultAhead, FaultAheadRemedy,
    FaultEmpty, FaultEmptyRemedy, FaultStep, FaultStepRemedy, FaultNoTest, FaultNoTestRemedy, FaultMisstep, FaultMisstepRemedy,

    // History
    HistoryHead, HistoryNone, HistoryHint, FromFile, Misstep, TestTold, DoorTold, Yes, No, MendHead, WithdrawHead, WithdrawLabel, WithdrawWhy,
    WithdrawKeep, Withdrawn, ConcernState, ConcernNotTested, ConcernTooOld, ConcernUnsigned, ConcernOrder, ConcernOverLimit, ConcernNoAttendant,
    ConcernNotLocked,

    // What stands there
    StandsHead, StandsAsOf, StandsPlan, HeatNone, StandsNone, StandsCount, StandsCountOne, StandsTable, StandsCorrect,
    PlannedLead, PlannedNone, PlannedHint, CountedByPlan, BinsRecorded, MassRecorded, BinsPlanned, MassPlanned, ChangeHead, ComesIn, GoesOut, CapacityGiven, CapacityNoSizes, CapacityPlan, CapacityOver,
    HighByCeiling, HighByBins, HighByHeight, RuleMissing, HeatHead, HeatLead, HeatCaption, HeatPart, HeatHolding, HeatPulling, HeatBreath, HeatField,
    HeatWalls, HeatAir, HeatFans, HeatTotal, HeatTons, HeatPlanned, Condensate, SweatYes, SweatNear, SweatNo, MachineUnknown, MachineEnough, MachineShort, LeftOut, CostHead, CostLead, CostLeadOne,
    CostCaption, CostPart, CostMoney, CostPullDown, CostWeeks, CostWeeksOne, CostBins, CostPerBin, CostPerBinFull, CostPenalty, CostPenaltyAll, CostTotal, CostPlanned, CostHint,
    CostNoPullDown, CostEmpty, CostOver, GasHead, GasLead, GasDays, GasNever, GasFree, GasTable, GasDay, GasNoSize, GasNothing, BesideHead, BesideNone,
    BesideAll, BesideWhat, BesideFinding, BesideSource, BesideAlliums, BesideOdour, BesideEthylene, BesideHarmed, BesideHumid, FoundOdour, FoundHumid,
    FoundFine, FoundEthylene, FoundNoEthylene,

    // What the room is
    FiguresHead, FiguresFold, FiguresLead, FiguresKeep, FiguresKept, GroupSizes, GroupStacks, GroupHeat, GroupAir, GroupLimits, FigLength, FigWidth,
    FigHeight, FigBinLength, FigBinWidth, FigBinHeight, FigMostHigh, FigMostHeight, FigAisle, FigWallGap, FigAirAbove, FigBinKg, FigWalls, FigMachine,
    FigAir, FlowMetres, FlowFeet, FigFans, FigPullDownHours, FigLeak, FigScrubbed, FigPullDownCost, FigColdest, FigWarmest, FigDriest, FigDampest, FigLeastO2, FigMostO2,
    FigLeastCo2, FigMostCo2, FigQuiet,
}
