using Cloveshed.Ledger;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Setup;

/// <summary>Facts in words.</summary>
public static class FactTexts
{
    /// <summary>The kind as a person says it; one that has no words of its own stands for itself.</summary>
    public static string Kind(string kind, Words<SetupWord> words) => kind switch
    {
        FactKinds.SeasonOpened => words[SetupWord.KindSeasonOpened],
        FactKinds.SeasonChanged => words[SetupWord.KindSeasonChanged],
        FactKinds.RunPinned => words[SetupWord.KindRunPinned],
        FactKinds.RunBarred => words[SetupWord.KindRunBarred],
        FactKinds.HoldLifted => words[SetupWord.KindHoldLifted],
        FactKinds.PlanAsked => words[SetupWord.KindPlanAsked],
        FactKinds.PlanMade => words[SetupWord.KindPlanMade],
        FactKinds.PlanRefused => words[SetupWord.KindPlanRefused],
        FactKinds.PlanStopped => words[SetupWord.KindPlanStopped],
        FactKinds.PlanAdopted => words[SetupWord.KindPlanAdopted],
        FactKinds.WeekOrdered => words[SetupWord.KindWeekOrdered],
        FactKinds.WeekAsked => words[SetupWord.KindWeekAsked],
        FactKinds.WeekFound => words[SetupWord.KindWeekFound],
        FactKinds.RunDone => words[SetupWord.KindRunDone],
        FactKinds.AirRead => words[SetupWord.KindAirRead],
        FactKinds.RoomStepped => words[SetupWord.KindRoomStepped],
        FactKinds.RoomTested => words[SetupWord.KindRoomTested],
        FactKinds.RoomDescribed => words[SetupWord.KindRoomDescribed],
        FactKinds.RecordWithdrawn => words[SetupWord.KindRecordWithdrawn],
        FactKinds.WeatherTold => words[SetupWord.KindWeatherTold],
        FactKinds.YardDescribed => words[SetupWord.KindYardDescribed],
        FactKinds.SackWeighed => words[SetupWord.KindSackWeighed],
        FactKinds.LotInspected => words[SetupWord.KindLotInspected],
        FactKinds.YardRecordWithdrawn => words[SetupWord.KindYardRecordWithdrawn],
        FactKinds.Note => words[SetupWord.KindNote],
        _ => SeasonLists.All.Select(list => kind == FactKinds.Entered(list.File) ? words.Say(SetupWord.KindEntered, words[list.Name])
            : kind == FactKinds.Changed(list.File) ? words.Say(SetupWord.KindChanged, words[list.Name])
            : kind == FactKinds.Dropped(list.File) ? words.Say(SetupWord.KindDropped, words[list.Name]) : null).FirstOrDefault(text => text is not null) ?? kind,
    };
}
