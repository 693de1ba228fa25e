using Cloveshed.Core.Drum;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Reading;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Line;

/// <summary>What holes give, as it stands on the page: text by spot, as <see cref="SizerTold"/> has it for cuts.</summary>
internal sealed record DrumTold(IReadOnlyDictionary<string, string> Said, IReadOnlyList<int> Off)
{
    private const double Hardly = 0.0005;

    public string this[string spot, int z] => Said[$"{spot}-{z}"];

    public string this[string spot] => Said[spot];

    public static DrumTold Of(DrumSight sight, ShedReading shed, Words<LineWord> words)
    {
        Reader reader = shed.Reader;
        Dictionary<string, string> said = new(StringComparer.Ordinal);
        List<int> off = [];
        for (int z = 0; z < sight.Flows.Count; z++)
        {
            Outflow flow = sight.Flows[z];
            said[$"share-{z}"] = reader.Percent(flow.Share);
            said[$"mass-{z}"] = reader.Mass(flow.Share * sight.CloveMass);
            // Of hardly a clove no share says anything.
            string Of(Outflow of, double share) => of.Share < Hardly ? "–" : reader.Percent(share);
            said[$"wrong-{z}"] = Of(flow, flow.Contamination);
            said[$"small-{z}"] = Of(flow, flow.Smaller);
            said[$"large-{z}"] = Of(flow, Math.Max(0, flow.Contamination - flow.Smaller));
            said[$"arrive-{z}"] = Of(flow, flow.Recovered);
            said[$"best-wrong-{z}"] = Of(sight.Best.Outflows[z], sight.Best.Outflows[z].Contamination);
            said[$"best-share-{z}"] = reader.Percent(sight.Best.Outflows[z].Share);
            if (!flow.Held)
            {
                off.Add(z);
            }
        }

        said["misplaced"] = reader.Percent(sight.Misplaced);
        said["best-misplaced"] = reader.Percent(sight.Best.Misplaced);
        said["best-holes"] = words.Say(LineWord.HolesAre, string.Join(", ", sight.Best.HolesMm.Select(mm => reader.Number(mm, 1))), words[sight.Best.Order == HoleOrder.LargestFirst ? LineWord.OrderLarge : LineWord.OrderSmall]);
        foreach ((int at, (double load, double misplaced)) in sight.Loads.Index())
        {
            said[$"load-{at}"] = reader.Percent(misplaced);
        }

        double kg = SizerSight.KilogramsPerUnit(shed.SeasonOpen);
        LoopAnswer? loop = sight.Loop;
        said["round"] = loop is null ? "–" : words.Say(LineWord.PerHour, reader.Mass(loop.Recirculating / kg));
        said["round-share"] = loop is null ? words[LineWord.LoopFills] : words.Say(LineWord.LoopShare, reader.Percent(loop.RecirculatingShare));
        said["crackers"] = loop is null ? "–" : words.Say(LineWord.PerHour, reader.Mass(loop.CrackerLoad / kg));
        said["uncaught"] = loop is null ? "–" : words.Say(LineWord.PerHour, reader.Mass(loop.Uncaught / kg));
        said["hurt"] = loop is null ? "–" : loop.Cloves > 0 ? reader.Percent(loop.Hurt / loop.Cloves) : "–";
        Outflow most = sight.Flows.MaxBy(flow => flow.Share)!;
        said["summary"] = words.Say(LineWord.DrumSummary, reader.Percent(sight.Misplaced), most.Name ?? words[LineWord.NoGrade], reader.Percent(most.Share, 0))
            + (off.Count > 0 ? " " + words.Say(LineWord.DrumOff, string.Join(", ", off.Select(z => sight.Flows[z].Name))) : "");
        said["wrong"] = sight.OutOfOrder is not null ? words[LineWord.HolesMustRise] : sight.Faults.Count > 0 ? words[LineWord.NotANumber] : "";
        return new(said, off);
    }

    /// <summary>Where each outflow's own widths lie, so that the picture can name them.</summary>
    public static IReadOnlyList<SizerRegion> Regions(DrumSight sight) =>
        [.. sight.Flows.Select((_, z) => new SizerRegion(z, z == 0 ? 0 : sight.Holes[z - 1], z < sight.Holes.Count ? sight.Holes[z] : null))];
}
