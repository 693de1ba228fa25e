using Cloveshed.Core;
using Cloveshed.Core.Keep.Rooms;
using Cloveshed.Ledger;
using Cloveshed.Ledger.Rooms;

namespace Cloveshed.Web.Tests.Rooms;

/// <summary>Some days of the demo's rooms, invented: Cold 1 warms up, Sealed A is sealed and leaks, Sealed C is being aired.</summary>
public static class RoomDays
{
    public static PlaceId Cold1 { get; } = new("Cold 1");

    public static PlaceId SealedA { get; } = new("Sealed A");

    public static PlaceId SealedC { get; } = new("Sealed C");

    /// <summary>Half an hour before the tests' moment.</summary>
    public static DateTimeOffset Last { get; } = new(2026, 9, 2, 10, 0, 0, TimeSpan.FromHours(-4.5));

    public static void Put(ShedLedger ledger)
    {
        List<NewFact> facts = [];
        for (int hour = 0; hour <= 240; hour += 6)
        {
            DateTimeOffset at = Last.AddHours(hour - 240);
            double wave = Math.Sin(hour / 9.0);
            facts.Add(Air(at, Cold1, 0.1 + 0.2 * wave + (hour > 216 ? (hour - 216) * 0.12 : 0), 65 + 3 * wave, null, null));
            facts.Add(Air(at, SealedA, -0.5 + 0.1 * wave, 66 + wave, 1.2 + (hour > 120 ? (hour - 120) * 0.05 : 0), 9.5 - 0.01 * hour));
        }

        facts.AddRange(
        [
            Step(Last.AddDays(-30), SealedA, RoomStep.LoadingBegan), Step(Last.AddDays(-20), SealedA, RoomStep.PulledDown), Step(Last.AddDays(-18), SealedA, RoomStep.DoorsSealed),
            Step(Last.AddDays(-40), SealedC, RoomStep.LoadingBegan), Step(Last.AddDays(-36), SealedC, RoomStep.DoorsSealed), Step(Last.AddDays(-1), SealedC, RoomStep.SealBroken),
            Step(Last.AddHours(-20), SealedC, RoomStep.AiringBegan), Step(Last.AddHours(-19), SealedC, RoomStep.Emptied),
            RoomBodies.Made(At(Last.AddHours(-2)), new TestSaid(SealedC, "K7", new DoorSaid(
                [new GasSaid(TestedGas.Oxygen, 17.5, "K7", "meter 3", Last.AddHours(-2.1)), new GasSaid(TestedGas.CarbonDioxide, 1.8, "", "meter 3", Last.AddHours(-2))], "B2", true))),
        ]);
        Assert.IsType<Appended.Accepted>(ledger.Append(facts));
    }

    public static FactOrigin At(DateTimeOffset at) => new(at, "test", "test", "keep");

    public static NewFact Air(DateTimeOffset at, PlaceId place, double? t, double? rh, double? o2 = null, double? co2 = null) =>
        RoomBodies.Made(At(at), new AirSaid(place, t, rh, o2, co2, ReadingSource.Device, "probe", "probe 3"));

    private static NewFact Step(DateTimeOffset at, PlaceId place, RoomStep step) => RoomBodies.Made(At(at), new StepSaid(place, step, "K7", "", null));
}
