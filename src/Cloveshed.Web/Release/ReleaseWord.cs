namespace Cloveshed.Web.Release;

/// <summary>What the order of release and the reach plan say. By key; the words are in Release/words.en.txt and words.es.txt.</summary>
public enum ReleaseWord
{
    // What comes out next
    Title, ToKeep, Lead, LeadNoPlan, FigureDiffers, FigureOf, FigureCost, FigureCostOf, FigureLate, FigureLateOf, Which, WhichAll, WhichDiffers, None,
    PlaceInOrder, RunBy, Planned, FirstToExpire, Cost, Remark, Kept, Late, Sooner, Later, HowHead, HowText,

    // What stands before what
    ReachHead, PlacesLabel, ReachAsOf, ReachByPlan, ReachOf, OfRecorded, OfPlan, NoPlace, NoPlaceLead, ReachLead, ReachLeadNoPlan, ReachNone, ReachName, ReachSummary, FigureStands, FigureLots, FigureLotsOne,
    FigureDigs, FigureCame, FigureDigsOf, NotPlaced, LanesDescribed, LanesUsual, Reading, KeyLabel, KeyNow, KeySoon, KeyLater, KeyLast, LaneName,
    BlockTitle, NotThisSeason, TooManyLanes, LotsHead, LotsCaption, NeededHead, BinsHead, ToFirstHead, DigsHead, CameHead, LanesHead, DigHint,
    StackCaution,
}
