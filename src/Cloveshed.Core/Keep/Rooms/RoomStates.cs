using NodaTime;

namespace Cloveshed.Core.Keep.Rooms;

/// <summary>What a room is doing.</summary>
public enum RoomState
{
    /// <summary>Nothing in it.</summary>
    Empty,

    /// <summary>Bins come in; ordinary air.</summary>
    Loading,

    /// <summary>Full, or full enough: being cooled down; ordinary air.</summary>
    PullingDown,

    /// <summary>Brought down to its temperature; ordinary air.</summary>
    Holding,

    /// <summary>Doors shut, locked and tagged; its air cannot be breathed.</summary>
    Sealed,

    /// <summary>The seal is broken; its air still cannot be breathed.</summary>
    Opened,

    /// <summary>Fans bring in outside air; nobody is in it.</summary>
    Airing,

    /// <summary>Tested and turned over to be emptied; by whom is in the step.</summary>
    RunningOut,
}

/// <summary>What somebody did to a room.</summary>
public enum RoomStep
{
    /// <summary>The first bins of a filling came in.</summary>
    LoadingBegan,

    /// <summary>The cooling was set to bring it down.</summary>
    PullDownBegan,

    /// <summary>It came down to its temperature.</summary>
    PulledDown,

    /// <summary>Doors were shut, locked and tagged.</summary>
    DoorsSealed,

    /// <summary>The seal was broken.</summary>
    SealBroken,

    /// <summary>Fans on.</summary>
    AiringBegan,

    /// <summary>Tests from outside were written down, and it was turned over by who answers for it.</summary>
    TurnedOver,

    /// <summary>The last bin left.</summary>
    Emptied,
}

/// <summary>A step, when, and by whom.</summary>
public sealed record RoomFact(RoomStep Step, LocalDateTime At, string Who);

/// <summary>A room after its facts: its state, since when, and the steps that did not fit with what each would have needed.</summary>
public sealed record RoomStanding(RoomState State, LocalDateTime? Since, IReadOnlyList<RoomMisstep> Missteps);

/// <summary>A step that did not fit the state that the room was in: it is kept and shown, and changes nothing.</summary>
public sealed record RoomMisstep(RoomFact Fact, RoomState In, IReadOnlyList<RoomState> FitsIn);

/// <summary>
/// A room's states as a fold of what was done to it. A room that held an atmosphere is aired and turned over before a bin leaves: there is no way
/// from sealed or opened to running out but through airing.
/// </summary>
public static class RoomStates
{
    private static readonly Dictionary<RoomStep, (RoomState[] From, RoomState To)> Fits = new()
    {
        [RoomStep.LoadingBegan] = ([RoomState.Empty, RoomState.PullingDown, RoomState.Holding], RoomState.Loading),
        [RoomStep.PullDownBegan] = ([RoomState.Loading], RoomState.PullingDown),
        [RoomStep.PulledDown] = ([RoomState.Loading, RoomState.PullingDown], RoomState.Holding),
        [RoomStep.DoorsSealed] = ([RoomState.Loading, RoomState.PullingDown, RoomState.Holding], RoomState.Sealed),
        [RoomStep.SealBroken] = ([RoomState.Sealed], RoomState.Opened),
        [RoomStep.AiringBegan] = ([RoomState.Opened], RoomState.Airing),
        [RoomStep.TurnedOver] = ([RoomState.Airing], RoomState.RunningOut),
        [RoomStep.Emptied] = ([RoomState.Loading, RoomState.PullingDown, RoomState.Holding, RoomState.RunningOut], RoomState.Empty),
    };

    /// <summary>States in which a step fits.</summary>
    public static IReadOnlyList<RoomState> FitsIn(RoomStep step) => Fits[step].From;

    /// <summary>Its air may be deadly: sealed, or not yet turned over after that.</summary>
    public static bool MayBeDeadly(RoomState state) => state is RoomState.Sealed or RoomState.Opened or RoomState.Airing;

    /// <summary>Pure; facts in the order of time.</summary>
    public static RoomStanding Of(IReadOnlyList<RoomFact> facts)
    {
        (RoomState state, LocalDateTime? since) = (RoomState.Empty, null);
        var missteps = new List<RoomMisstep>();
        foreach (RoomFact fact in facts)
        {
            (RoomState[] from, RoomState to) = Fits[fact.Step];
            if (from.Contains(state))
                (state, since) = (to, fact.At);
            else
                missteps.Add(new RoomMisstep(fact, state, from));
        }

        return new RoomStanding(state, since, missteps);
    }
}
