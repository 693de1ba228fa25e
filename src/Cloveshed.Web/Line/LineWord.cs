namespace Cloveshed.Web.Line;

/// <summary>What Line says, by key; the words are in Line/words.en.txt and words.es.txt.</summary>
public enum LineWord
{
    Title, Lead, LeadNoPlan,

    // What is on each line
    WeekHead, WeekNone, RunsCaption, LotHead, MassHead, HoursHead, IntoSizer, IntoDrum, SortedOut,

    // Which lots
    LotsHead, FilterLabel, FilterFind, FilterShow, FilterClear, NoneFound, LotsCaption, StandsHead, MeanHead, SampledHead, CountedHead, SetHead, NotSet, OpenHead, ToSizer, 
    ToLine, ToKeep, NoLot, NoLotLead, LotNav,

    // The size curve
    SizerHead, FromLaw, FromSample, FromSizer, LawOwn, LawVariety, BySizer, ByKnown, CurveLabel, CurveKey, KeyHump, KeyBand, KeyCounted, KeyCut, HandlesHint, HandlesNoScript, CutOf, GramText,

    // Figures
    FigureSetting, FigureSettingOf, FigureBest, FigureGain, FigureCartons, FigureCartonsOf,

    // The setting
    SettingHead, SettingCaption, ClassHead, WindowFrom, WindowBetween, UseHead, UseOwn, UseMerge, UseNone, CutHead, PriceHead, ShareHead, CountHead, CartonsHead, EachHead, BelowHead, AboveHead, RiskHead,
    MoneyHead, StateHead, Holds, OffTolerance, GoesInto, LeftUnder, TakenOff, BandOf, TotalHead, UnderAll, OverAll,
    AskHead, AskMass, AskTolerance, AskOutlets, AskPounds, AskRisk, WorkOut, WorkOutHint, TakeBest, TakeNow, TakeLimits, PutInForce, PutDone, PutWrong, OutOfOrder, NotANumber,
    Summary, SummaryOne, SummaryNone, SummaryHolds, SummaryOff, SummaryPaid, SummaryRefused, SummaryBestLess, AskOff, OffPaid, OffRefused,

    // The best cuts
    BestHead, BestLead, BestCaption, NowHead, NowSince, NowNominal, ThisHead, BestCut, BestShare, BestCartons, GramUp, GramDown, BestUp, BestDown, ValueRow, BestOverNow, SettingOverNow,

    // A sample
    ToSample, WeighHead, WeighLead, SampleDay, SampleBulbs, SampleHint, SampleTake, SampleTaken, SampleBadLine, SampleRemedy, SampleNone, SampleMany, SampleRow, WidthHead, Tally, TallyWrong, DefectKeys,
    DefectMold, DefectDecay, DefectSprout, DefectShatter, DefectMechanical, DefectSkin, DefectOther, DefectsNone, DefectsFound, OddHead, OddLead, OddWhy, OddShape, OddFar,
    GradeHead, GradeNone, GradeDays, GradeAll, GradeCaption, GradeName, GradeLimitOf, GradeLimit, GradeFound, GradeWilson, GradeExact, GradeVerdictHead, GradeMore, GradeHint, LimitDefects, LimitDecay,
    VerdictMakes, VerdictLikely, VerdictUnlikely, VerdictFails, MoreThanEver,

    // The drum
    ToDrum, DrumLead, DrumNoGrades, DrumToGrades, DrumLabel, DrumKey, DrumMisplaced, DrumMisplacedOf, DrumBest, DrumRound, DrumSummary, DrumOff, NoGrade, HolesHead, HolesHint, HoleUnder, HolesAre, HolesSince, HolesNotSet,
    HolesMustRise, HolesDone, MmText, OrderHead, OrderSmall, OrderLarge, AskLoad, AskStep, AskMost, AskFeed, AskFirst, AskAgain, AskCaught, AskHurt, FlowsCaption, FlowHead, FlowShare, FlowMass, FlowWrong, FlowArrive,
    FlowBest, FlowBestShare, LoadHead, LoadLead, LoopHead, LoopLead, LoopShare, LoopFills, LoopCracker, LoopUncaught, LoopHurt, PerHour, TakeBestHoles, PutHoles, CautionLine,

    // The setting sheet
    ToSheet, SheetLead, SheetIn, SheetBoth, SheetFor, SheetDay, SheetSizer, SheetSizerNot, SheetDrum, SheetDrumNot, SheetBox, SheetFrom, SheetTo, SheetTop, SheetHole, SheetOver, SheetUnder, SheetCheck,
    SheetCheckLine, SheetRing, SheetDone, SheetLineName, SheetMass, SheetBasisFresh, SheetBasisCrack, SheetBasisOther, SheetBasisAll, SheetSetIt,

    // The sizer's counts
    ToCount, CountInHead, CountLead, CountBins, CountFile, CountSend, CountSending, CountReading, CountJob, CountStop, CountStopped, CountTaken, CountFaulty, CountNotTaken, CountNoFile, CountBadBins, CountGone, CountDropped,
    CountWhereField, CountWhereLine, CountWhereFile, CountNoHeader, CountNoWeight, CountTwoUnits, CountNotANumber, CountOutOfBounds, CountNotWhole, CountCells, CountNoBulbs,
    SeenHead, SeenNone, SeenWhen, SeenBins, SeenDrop, AgainstHead, AgainstLead, AgainstExpected, AgainstIn, AgainstYes, AgainstMore, AgainstLess,

    // The numbers behind the picture
    BehindCaption, WeightHead, MassShareHead, CalledHead, SeenShare, CallUnder,
}
