namespace Cloveshed.Web.Looks;

/// <summary>What is said of looks at lots and of their clocks, by key; the words are in Looks/words.en.txt and words.es.txt.</summary>
public enum LookWord
{
    // The clocks of a lot
    ClocksHead, ClocksLead, RunByCaption, RunByLabel, BandLabel, SoundLabel, SoundOf, ClockCol, LawCol, SpeedCol, BelievedCol, FromCol, WeightClock, SproutClock, DecayClock,
    WeightLeft, LifeUsed, Speed, FromLooks, FromLaw, HistoryLine, LookedLine, LookedLineOne, PastLine, ToSpoiled, ToPlan, NobodyLooked, InjuredLine, InhibitorLine, PlanLine, PlaceCol, AirCol, LifeCol, LossCol, RunByCol, BuysCol, WorthCol, MoveCol,
    PaysCol, HereMark, Days, MovesCaption, MovesLead, MovesPlanned, MovesUnplanned, NoWorth, SeedCol, SeedLine, BeyondSight, AirOpen, AirShut, LookNow,

    // Looks
    LooksHead, LooksNone, DayCol, CountCol, SproutedCol, DecayedCol, WeighedCol, WhoCol, WeighedText, TakeBack, TakeBackWhy, TakenBack,

    // Looking
    Title, Lead, Which, Looked, Sprouted, Decayed, More, Less, Weighing, WeighedNow, WeighedThen, WeighedSince, WeighingHint, NotToday, Day, Who, WhoHint, Note, Keep, Kept, ToLot,
    FaultCount, FaultCountRemedy, FaultMany, FaultManyRemedy, FaultWeights, FaultWeightsRemedy, FaultDay, FaultDayRemedy, FaultWho, FaultWhoRemedy,

    // On Today
    DueHead, DueLead, DueNever, DueLast,

    // Peeled cloves
    PeeledHead, PeeledLead, PeeledTemp, PeeledBetween, PeeledInAir, PeeledInAtmosphere, PeeledCaution,
}
