namespace Cloveshed.SeasonFiles.Faults;

/// <summary>What a season's files are held to: each rule has its texts in <see cref="FaultTexts"/>.</summary>
public enum FaultRule
{
    // The folder and its files
    FolderMissing, FolderEmpty, FileMissing, FileUnreadable, FileTooLarge, FileEmpty,
    // Rows as such
    NotUtf8, Separator, ColumnMissing, ColumnTwice, FieldCount, EmptyRow, QuoteInField, TextAfterQuote, QuoteNeverClosed, TooManyRows,
    // Cells by themselves
    CellEmpty, TextTooLong, Number, DecimalComma, NotFinite, Whole, Range, LimitRange, ShareRange, PercentRange, CelsiusRange,
    Date, Monday, YesNo, Word, ReservedName,
    // season.json
    Json, JsonKind, JsonKeyMissing, JsonKeyTwice, Contract, Currency, AsOfAfterSeason,
    // Cells of a row together
    MinNotBelowMax, LowAboveHigh, SharesAboveOne, LawInParts, ShipFromAfterDue,
    // Rows of one file together
    KeyTwice, SizeGap, SizeOpenEnd, GradesOverlap, LotDiffers,
    // Files together
    Unknown, YieldMissing, RowOverfull, PlaceOverfull, SealedAfterAsOf, NotSealable, HarvestedAfterSealing, MadeAfterAsOf,
    // Files of the line: weights, charts, prices, splits
    FileNotThere, NoRows, OneColumnOf, OneCellOf, PriceMissing, SplitByBoth, SplitSum,
    // Set-ups and shifts
    NotOfKind, NameOfKind, OrganicWord, TimeOfDay,
    // Readings of a place's air
    Moment, MomentAhead,
    // Buyers' terms
    NeedsContract, OnlyOneOf, ToBeforeFrom, SpansOverlap, ProgramDiffers, NoListPrice, NoFreight, BelowNothing, OrderNameTaken,
}

/// <summary>What a person is warned about.</summary>
public enum WarningRule
{
    UnknownFile, UnknownColumn, UnknownKey, OutsideSeason, LotAfterSeason, SamplesOfLeftOut, HumidityLikeShare, HoursAboveWeek, BulbLawMissing,
    ColumnOfTerms, PromotionIdle,
}
