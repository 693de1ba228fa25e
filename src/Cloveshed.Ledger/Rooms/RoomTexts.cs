using Cloveshed.Core.Keep.Rooms;

namespace Cloveshed.Ledger.Rooms;

/// <summary>Stored names of what facts about rooms hold. Names are for good.</summary>
public static class RoomTexts
{
    private static readonly (RoomStep Step, string Text)[] Steps =
    [
        (RoomStep.LoadingBegan, "loading-began"), (RoomStep.PullDownBegan, "pull-down-began"), (RoomStep.PulledDown, "pulled-down"), (RoomStep.DoorsSealed, "sealed"),
        (RoomStep.SealBroken, "seal-broken"), (RoomStep.AiringBegan, "airing-began"), (RoomStep.TurnedOver, "turned-over"), (RoomStep.Emptied, "emptied"),
    ];

    private static readonly (TestedGas Gas, string Text)[] Gases = [(TestedGas.Oxygen, "oxygen"), (TestedGas.Flammable, "flammable"), (TestedGas.CarbonDioxide, "carbon-dioxide")];

    private static readonly (ReadingSource Source, string Text)[] Sources = [(ReadingSource.Hand, "hand"), (ReadingSource.File, "file"), (ReadingSource.Device, "device")];

    private static readonly (Neighbour Neighbour, string Text)[] Neighbours =
    [
        (Neighbour.Alliums, "alliums"), (Neighbour.TakesOdour, "takes-odour"), (Neighbour.GivesEthylene, "gives-ethylene"), (Neighbour.HarmedByEthylene, "harmed-by-ethylene"),
        (Neighbour.KeptHumid, "kept-humid"),
    ];

    public static string Of(RoomStep step) => Steps.First(pair => pair.Step == step).Text;

    public static string Of(TestedGas gas) => Gases.First(pair => pair.Gas == gas).Text;

    public static string Of(ReadingSource source) => Sources.First(pair => pair.Source == source).Text;

    public static string Of(Neighbour neighbour) => Neighbours.First(pair => pair.Neighbour == neighbour).Text;

    /// <summary>Null for a text that is no step.</summary>
    public static RoomStep? Step(string text) => Steps.Where(pair => pair.Text == text).Select(pair => (RoomStep?)pair.Step).FirstOrDefault();

    public static TestedGas? Gas(string text) => Gases.Where(pair => pair.Text == text).Select(pair => (TestedGas?)pair.Gas).FirstOrDefault();

    public static ReadingSource? Source(string text) => Sources.Where(pair => pair.Text == text).Select(pair => (ReadingSource?)pair.Source).FirstOrDefault();

    public static Neighbour? NeighbourOf(string text) => Neighbours.Where(pair => pair.Text == text).Select(pair => (Neighbour?)pair.Neighbour).FirstOrDefault();

    internal static string AllSteps => string.Join(", ", Steps.Select(pair => pair.Text));

    internal static string AllGases => string.Join(", ", Gases.Select(pair => pair.Text));

    internal static string AllSources => string.Join(", ", Sources.Select(pair => pair.Text));

    internal static string AllNeighbours => string.Join(", ", Neighbours.Select(pair => pair.Text));
}
