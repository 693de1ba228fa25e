using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Ledger.Rooms;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Rooms;

/// <summary>What the core returns about rooms, in words.</summary>
internal static class RoomNames
{
    public static RoomWord Of(RoomState state) => state switch
    {
        RoomState.Empty => RoomWord.StateEmpty,
        RoomState.Loading => RoomWord.StateLoading,
        RoomState.PullingDown => RoomWord.StatePullingDown,
        RoomState.Holding => RoomWord.StateHolding,
        RoomState.Sealed => RoomWord.StateSealed,
        RoomState.Opened => RoomWord.StateOpened,
        RoomState.Airing => RoomWord.StateAiring,
        RoomState.RunningOut => RoomWord.StateRunningOut,
        _ => throw new ArgumentOutOfRangeException(nameof(state)),
    };

    public static RoomWord Of(RoomStep step) => step switch
    {
        RoomStep.LoadingBegan => RoomWord.StepLoading,
        RoomStep.PullDownBegan => RoomWord.StepPullDown,
        RoomStep.PulledDown => RoomWord.StepPulledDown,
        RoomStep.DoorsSealed => RoomWord.StepSealed,
        RoomStep.SealBroken => RoomWord.StepSealBroken,
        RoomStep.AiringBegan => RoomWord.StepAiring,
        RoomStep.TurnedOver => RoomWord.StepTurnedOver,
        RoomStep.Emptied => RoomWord.StepEmptied,
        _ => throw new ArgumentOutOfRangeException(nameof(step)),
    };

    public static RoomWord Of(TestedGas gas) => gas switch
    {
        TestedGas.Oxygen => RoomWord.GasOxygen,
        TestedGas.Flammable => RoomWord.GasFlammable,
        TestedGas.CarbonDioxide => RoomWord.GasCarbonDioxide,
        _ => throw new ArgumentOutOfRangeException(nameof(gas)),
    };

    public static RoomWord Of(ReadingSource source) => source switch
    {
        ReadingSource.Hand => RoomWord.SourceHand,
        ReadingSource.File => RoomWord.SourceFile,
        ReadingSource.Device => RoomWord.SourceDevice,
        _ => throw new ArgumentOutOfRangeException(nameof(source)),
    };

    /// <summary>What is wrong.</summary>
    public static RoomWord Of(RoomAlarmKind kind) => kind switch
    {
        RoomAlarmKind.DeadlyAir => RoomWord.AlarmDeadly,
        RoomAlarmKind.TooCold => RoomWord.AlarmCold,
        RoomAlarmKind.TooWarm => RoomWord.AlarmWarm,
        RoomAlarmKind.TooDry => RoomWord.AlarmDry,
        RoomAlarmKind.TooDamp => RoomWord.AlarmDamp,
        RoomAlarmKind.OxygenTooLow => RoomWord.AlarmO2Low,
        RoomAlarmKind.OxygenTooHigh => RoomWord.AlarmO2High,
        RoomAlarmKind.CarbonDioxideTooLow => RoomWord.AlarmCo2Low,
        RoomAlarmKind.CarbonDioxideTooHigh => RoomWord.AlarmCo2High,
        RoomAlarmKind.Unwatched => RoomWord.AlarmUnwatched,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    /// <summary>What to do about it.</summary>
    public static RoomWord Remedy(RoomAlarmKind kind) => kind switch
    {
        RoomAlarmKind.DeadlyAir => RoomWord.DoDeadly,
        RoomAlarmKind.TooCold => RoomWord.DoCold,
        RoomAlarmKind.TooWarm => RoomWord.DoWarm,
        RoomAlarmKind.TooDry => RoomWord.DoDry,
        RoomAlarmKind.TooDamp => RoomWord.DoDamp,
        RoomAlarmKind.OxygenTooLow => RoomWord.DoO2Low,
        RoomAlarmKind.OxygenTooHigh => RoomWord.DoO2High,
        RoomAlarmKind.CarbonDioxideTooLow => RoomWord.DoCo2Low,
        RoomAlarmKind.CarbonDioxideTooHigh => RoomWord.DoCo2High,
        RoomAlarmKind.Unwatched => RoomWord.DoUnwatched,
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };

    public static RoomWord Of(Neighbour neighbour) => neighbour switch
    {
        Neighbour.Alliums => RoomWord.BesideAlliums,
        Neighbour.TakesOdour => RoomWord.BesideOdour,
        Neighbour.GivesEthylene => RoomWord.BesideEthylene,
        Neighbour.HarmedByEthylene => RoomWord.BesideHarmed,
        Neighbour.KeptHumid => RoomWord.BesideHumid,
        _ => throw new ArgumentOutOfRangeException(nameof(neighbour)),
    };

    public static RoomWord Of(NeighbourFinding finding) => finding switch
    {
        NeighbourFinding.OdourSpoilsIt => RoomWord.FoundOdour,
        NeighbourFinding.HumiditySpoilsGarlic => RoomWord.FoundHumid,
        NeighbourFinding.Acceptable => RoomWord.FoundFine,
        NeighbourFinding.EthyleneDoesNotMatter => RoomWord.FoundEthylene,
        NeighbourFinding.GarlicMakesNoEthylene => RoomWord.FoundNoEthylene,
        _ => throw new ArgumentOutOfRangeException(nameof(finding)),
    };

    public static RoomWord Of(EntryRule rule) => rule switch
    {
        EntryRule.LocalCodeFirst => RoomWord.RuleLocal,
        EntryRule.OxygenLimits => RoomWord.RuleOxygen,
        EntryRule.CarbonDioxideLimits => RoomWord.RuleCo2,
        EntryRule.TestOrder => RoomWord.RuleOrder,
        EntryRule.NobodyAlone => RoomWord.RuleAlone,
        EntryRule.LockedAndTagged => RoomWord.RuleLocked,
        _ => throw new ArgumentOutOfRangeException(nameof(rule)),
    };

    public static RoomWord Of(HeightLimit limit) => limit switch
    {
        HeightLimit.Ceiling => RoomWord.HighByCeiling,
        HeightLimit.BinsHigh => RoomWord.HighByBins,
        HeightLimit.StackHeight => RoomWord.HighByHeight,
        _ => throw new ArgumentOutOfRangeException(nameof(limit)),
    };

    /// <summary>What speaks against opening or entering, in words.</summary>
    public static string Told(EntryFinding finding, Words<RoomWord> words, Reader reader)
    {
        string gas = finding.Gas is { } tested ? words[Of(tested)] : "";
        return finding.Concern switch
        {
            EntryConcern.RoomState => words[RoomWord.ConcernState],
            EntryConcern.NotTested => words.Say(RoomWord.ConcernNotTested, gas),
            EntryConcern.TestTooOld => words.Say(RoomWord.ConcernTooOld, gas, reader.Number(finding.Value!.Value, 0), reader.Number(finding.Limit!.Value, 0)),
            EntryConcern.TestUnsigned => words.Say(RoomWord.ConcernUnsigned, gas),
            EntryConcern.TestOrder => words.Say(RoomWord.ConcernOrder, gas),
            EntryConcern.OverLimit => words.Say(RoomWord.ConcernOverLimit, gas, reader.Number(finding.Value!.Value, 2), reader.Number(finding.Limit!.Value, 1)),
            EntryConcern.NoAttendant => words[RoomWord.ConcernNoAttendant],
            EntryConcern.NotLockedOut => words[RoomWord.ConcernNotLocked],
            _ => throw new ArgumentOutOfRangeException(nameof(finding)),
        };
    }

    /// <summary>The value that was read and the limit that it passed.</summary>
    public static string Figures(RoomAlarm alarm, Words<RoomWord> words, Reader reader) => alarm.Kind switch
    {
        RoomAlarmKind.Unwatched => double.IsFinite(alarm.Value) ? words.Say(RoomWord.UnwatchedFor, reader.Number(alarm.Value, 0), reader.Number(alarm.Limit, 0)) : words[RoomWord.NeverRead],
        RoomAlarmKind.TooCold or RoomAlarmKind.TooWarm => words.Say(RoomWord.AlarmCelsius, reader.Number(alarm.Value, 1), reader.Number(alarm.Limit, 1)),
        _ => words.Say(RoomWord.AlarmPercent, reader.Number(alarm.Value, alarm.Kind is RoomAlarmKind.TooDry or RoomAlarmKind.TooDamp ? 0 : 2), reader.Number(alarm.Limit, 1)),
    };

    public static RoomWord Of(RoomFigure figure) => figure switch
    {
        RoomFigure.LengthM => RoomWord.FigLength,
        RoomFigure.WidthM => RoomWord.FigWidth,
        RoomFigure.HeightM => RoomWord.FigHeight,
        RoomFigure.BinLengthM => RoomWord.FigBinLength,
        RoomFigure.BinWidthM => RoomWord.FigBinWidth,
        RoomFigure.BinHeightM => RoomWord.FigBinHeight,
        RoomFigure.MostHigh => RoomWord.FigMostHigh,
        RoomFigure.MostHeightM => RoomWord.FigMostHeight,
        RoomFigure.AisleM => RoomWord.FigAisle,
        RoomFigure.WallGapM => RoomWord.FigWallGap,
        RoomFigure.AirAboveM => RoomWord.FigAirAbove,
        RoomFigure.BinKg => RoomWord.FigBinKg,
        RoomFigure.WallsWPerC => RoomWord.FigWalls,
        RoomFigure.MachineKw => RoomWord.FigMachine,
        RoomFigure.AirM3PerHour => RoomWord.FigAir,
        RoomFigure.FansW => RoomWord.FigFans,
        RoomFigure.PullDownHours => RoomWord.FigPullDownHours,
        RoomFigure.LeakPerDay => RoomWord.FigLeak,
        RoomFigure.ScrubbedTo => RoomWord.FigScrubbed,
        RoomFigure.PullDownCost => RoomWord.FigPullDownCost,
        RoomFigure.ColdestC => RoomWord.FigColdest,
        RoomFigure.WarmestC => RoomWord.FigWarmest,
        RoomFigure.DriestRh => RoomWord.FigDriest,
        RoomFigure.DampestRh => RoomWord.FigDampest,
        RoomFigure.LeastO2 => RoomWord.FigLeastO2,
        RoomFigure.MostO2 => RoomWord.FigMostO2,
        RoomFigure.LeastCo2 => RoomWord.FigLeastCo2,
        RoomFigure.MostCo2 => RoomWord.FigMostCo2,
        RoomFigure.QuietHours => RoomWord.FigQuiet,
        _ => throw new ArgumentOutOfRangeException(nameof(figure)),
    };
}
