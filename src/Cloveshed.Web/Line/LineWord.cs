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
    Summary, SummaryNone, SummaryHolds, SummaryOff, SummaryPaid, SummaryRefused, SummaryBestLess, AskOff, OffPaid, OffRefused,

    // The best cuts
    BestHead, BestLead, BestCaption, NowHead, NowSince, NowNominal, ThisHead, BestCut, BestShare, BestCartons, GramUp, GramDown, BestUp, BestDown, ValueRow, BestOverNow, SettingOverNow,

    // The numbers behind the picture
    BehindCaption, WeightHead, MassShareHead, CalledHead, SeenShare, CallUnder,
}
