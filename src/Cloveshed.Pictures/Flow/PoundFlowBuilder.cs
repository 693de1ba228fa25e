using Cloveshed.Core.Lots;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Flow;

/// <summary>Lays totals out as nodes and streams, from the sources down, rounding each split to its node's whole total.</summary>
internal sealed class PoundFlowBuilder(PoundTotals totals, Reader reader)
{
    /// <summary>Rows carry enough digits for the value to a millionth; a part in a million of a node is then only their rounding.</summary>
    private const double RowRounding = 1e-6;

    private readonly List<(string From, string To, long Whole)> links = [];
    private readonly List<(string Id, string Name, FlowStage Stage)> names = [];
    private double unexplained;

    public PoundFlowFacts Build()
    {
        Name("stood", Say.FlowStood, FlowStage.Source);
        Name("dug", Say.FlowDug, FlowStage.Source);
        Name("fresh", Say.FlowFresh, FlowStage.Fresh);
        Name("sorted", Say.FlowSorted, FlowStage.SortedOut);
        Name("cracker", Say.FlowCracker, FlowStage.Cracker);
        Name("seedline", Say.FlowSeedLine, FlowStage.SeedLine);
        for (int i = 0; i < totals.Packed.Count; i++)
        {
            names.Add(($"packed{i}", reader.Say(Say.FlowPacked, totals.Packed[i].Name), FlowStage.Packed));
        }
        for (int i = 0; i < totals.Cloves.Count; i++)
        {
            names.Add(($"cloves{i}", reader.Say(Say.FlowCloves, totals.Cloves[i].Name), FlowStage.Cloves));
        }
        Name("seed", Say.FlowSeed, FlowStage.Seed);
        Name("seedover", Say.FlowSeedOver, FlowStage.Seed);
        Name("asis", Say.FlowAsIs, FlowStage.Sale);
        Name("standing", Say.FlowStanding, FlowStage.Standing);
        Name("skins", Say.FlowSkins, FlowStage.Loss);
        Name("waste", Say.FlowWaste, FlowStage.Loss);
        Name("ungraded", Say.FlowUngraded, FlowStage.Loss);
        Name("uncracked", Say.FlowUncracked, FlowStage.Loss);
        Name("shrink", Say.FlowShrink, FlowStage.Loss);
        Name("discarded", Say.FlowDiscarded, FlowStage.Loss);
        Name("unexplained", Say.FlowUnexplained, FlowStage.Unexplained);

        string[] sources = ["stood", "dug"];
        for (int side = 0; side < 2; side++)
        {
            Split(sources[side], Whole(totals.Source[side]), totals.Source[side],
                [("fresh", totals.Fresh[side]), ("cracker", totals.Crack[side]), ("seedline", totals.Seed[side]), ("asis", totals.SoldAsIs[side]),
                    ("standing", totals.Standing[side]), ("shrink", totals.Shrink[side]), ("discarded", totals.Discarded[side])]);
        }
        Split("fresh", Into("fresh"), totals.Fresh.Sum(),
            [.. totals.Packed.Select((p, i) => ($"packed{i}", p.Mass)), ("sorted", totals.Sorted), ("skins", totals.FreshSkins), ("waste", totals.FreshWaste)]);
        Split("sorted", Into("sorted"), totals.Sorted,
            [("cracker", totals.SortedCracked), ("uncracked", totals.Sorted - totals.SortedCracked)]);
        Split("cracker", Into("cracker"), totals.Crack.Sum() + totals.SortedCracked,
            [.. totals.Cloves.Select((c, i) => ($"cloves{i}", c.Mass)), ("ungraded", totals.CloveTotal - totals.Cloves.Sum(c => c.Mass)),
                ("skins", totals.CrackSkins), ("waste", totals.CrackWaste)]);
        Split("seedline", Into("seedline"), totals.Seed.Sum(),
            [("seed", totals.SeedServed), ("seedover", totals.SeedCloves - totals.SeedServed), ("skins", totals.SeedSkins), ("waste", totals.SeedWaste)]);

        List<FlowNode> nodes = [.. names.Select(n => new FlowNode(n.Id, n.Name, n.Stage, n.Stage == FlowStage.Source ? OutOf(n.Id) : Into(n.Id))).Where(n => n.Whole != 0)];
        return new PoundFlowFacts(nodes, [.. links.Where(l => l.Whole != 0).Select(l => new FlowLink(l.From, l.To, l.Whole))], totals.Source.Sum(), unexplained);
    }

    private void Name(string id, Say say, FlowStage stage) => names.Add((id, reader.Say(say), stage));

    private long Whole(double mass) => (long)Math.Round(mass * reader.ShownPerSeasonUnit, MidpointRounding.AwayFromZero);

    private long Into(string id) => links.Where(l => l.To == id).Sum(l => l.Whole);

    private long OutOf(string id) => links.Where(l => l.From == id).Sum(l => l.Whole);

    private void Split(string from, long whole, double exact, IReadOnlyList<(string To, double Mass)> parts)
    {
        double[] masses = [.. parts.Select(p => Math.Max(0, p.Mass))];
        double left = exact - parts.Sum(p => p.Mass);
        unexplained += left;
        bool closes = Math.Abs(left) <= RowRounding * Math.Max(1, exact);
        long explained = closes ? whole : Whole(parts.Sum(p => p.Mass));
        // Weights in thousandths of a unit: a part under that has nothing to show in whole units.
        List<Weighted> weights = [.. parts.Select((p, i) => new Weighted(p.To, (long)Math.Round(masses[i] * 1000)))];
        long[] rounded = weights.All(w => w.Weight == 0) ? new long[parts.Count]
            : [.. Allocation.ByLargestRemainder(explained, weights).Select(a => a.Amount)];
        explained = rounded.Sum();
        for (int i = 0; i < parts.Count; i++)
        {
            links.Add((from, parts[i].To, rounded[i]));
        }
        links.Add((from, "unexplained", whole - explained));
    }
}
