using Cloveshed.Pictures.Markup;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Flow;

/// <summary>
/// The pound flow: from what stood and was dug, over the lines, to every end on the right, each as tall as its pounds. All
/// ends are named with pounds and share, so that small ones read as well as large ones.
/// </summary>
public static class PoundFlow
{
    private const double Width = 1338;
    private const double Tall = 420;
    private const double Right = 1000;
    private const double Bar = 14;
    private const double Top = 14;

    public static Picture Draw(PoundFlowFacts facts, Reader reader)
    {
        Dictionary<string, Box> boxes = Boxes(facts, out double height);
        var plot = new Drawing(Width, height);
        var used = boxes.ToDictionary(b => b.Key, _ => (Out: 0.0, In: 0.0));
        double scale = Tall / Math.Max(1, facts.WholeTotal);
        foreach (FlowLink link in facts.Links.Where(l => l.Whole > 0).OrderBy(l => boxes[l.From].Y).ThenBy(l => boxes[l.To].Y))
        {
            Box from = boxes[link.From];
            Box to = boxes[link.To];
            double w = link.Whole * scale;
            double y1 = from.Y + used[link.From].Out;
            used[link.From] = (used[link.From].Out + w, used[link.From].In);
            double y2 = to.Y + used[link.To].In;
            used[link.To] = (used[link.To].Out, used[link.To].In + w);
            double x1 = from.X + Bar;
            double mid = x1 + (to.X - x1) * (to.X == Right ? .62 : .5);
            plot.Path($"M{N(x1)} {N(y1)}C{N(mid)} {N(y1)} {N(mid)} {N(y2)} {N(to.X)} {N(y2)}v{N(Math.Max(w, .7))}C{N(mid)} {N(y2 + w)} {N(mid)} {N(y1 + w)} {N(x1)} {N(y1 + Math.Max(w, .7))}z",
                "stream f-" + Kind(facts.Nodes.First(n => n.Id == link.To).Stage), $"{Name(facts, link.From)} → {Name(facts, link.To)}: {Amount(link.Whole, reader)}");
        }
        foreach (FlowNode node in facts.Nodes)
        {
            Box box = boxes[node.Id];
            plot.Rect(box.X, box.Y, Bar, Math.Max(box.Height, 1.5), "node f-" + Kind(node.Stage), $"{node.Name}: {Amount(node.Whole, reader)}");
            string share = reader.Percent((double)node.Whole / Math.Max(1, facts.WholeTotal), 1);
            double middle = box.Y + box.Height / 2;
            if (box.X == Right)
            {
                plot.Text(box.X + Bar + 8, middle + 4, node.Name, "flow-name");
                plot.Text(Width - 56, middle + 4, Amount(node.Whole, reader), "flow-amount", "end");
                plot.Text(Width - 2, middle + 4, share, "flow-share", "end");
            }
            else
            {
                double above = box.Y + box.Height + 15;
                plot.Text(box.X, above, node.Name, "flow-name");
                plot.Text(box.X, above + 15, $"{Amount(node.Whole, reader)} · {share}", "flow-share");
            }
        }
        return new Picture(reader.Say(Say.FlowTitle), plot, null, [Streams(facts, reader), Ends(facts, reader)], Summary(facts, reader));
    }

    public static string Closing(PoundFlowFacts facts, Reader reader) => reader.Say(
        Say.FlowClosing, Amount(facts.WholeTotal, reader), Amount(facts.Ends.Sum(n => n.Whole), reader),
        reader.Number(facts.Unexplained * reader.ShownPerSeasonUnit, 2), reader.MassUnitName);

    private static string Amount(long whole, Reader reader) => reader.Number(whole, 0) + "\u00A0" + reader.MassUnitName;

    private static string Name(PoundFlowFacts facts, string id) => facts.Nodes.First(n => n.Id == id).Name;

    private static string N(double value) => MarkupText.Number(value);

    private static string Kind(FlowStage stage) => stage switch
    {
        FlowStage.Packed or FlowStage.Fresh => "fresh",
        FlowStage.Cloves or FlowStage.Cracker or FlowStage.SortedOut => "crack",
        FlowStage.Seed or FlowStage.SeedLine => "seed",
        FlowStage.Sale => "sale",
        FlowStage.Standing or FlowStage.Source => "standing",
        FlowStage.Unexplained => "unexplained",
        _ => "loss",
    };

    // Ends stand in one column at the right with room for a name each; a stage stands at the mean height of what it feeds.
    private static Dictionary<string, Box> Boxes(PoundFlowFacts facts, out double height)
    {
        var boxes = new Dictionary<string, Box>();
        double scale = Tall / Math.Max(1, facts.WholeTotal);
        double y = Top;
        foreach (FlowNode node in facts.Ends)
        {
            double tall = Math.Abs(node.Whole) * scale;
            double room = Math.Max(tall + 7, 21);
            boxes[node.Id] = new Box(Right, y + (room - tall) / 2, tall);
            y += room;
        }
        double end = y;
        foreach ((string id, double x) in new[] { ("cracker", 700.0), ("sorted", 460), ("seedline", 460), ("fresh", 240), ("stood", 0), ("dug", 0) })
        {
            if (facts.Nodes.FirstOrDefault(n => n.Id == id) is not { } node || boxes.ContainsKey(id))
            {
                continue;
            }
            double tall = node.Whole * scale;
            (double sum, double weight) = facts.Links.Where(l => l.From == id && boxes.ContainsKey(l.To))
                .Aggregate((0.0, 0.0), (a, l) => (a.Item1 + l.Whole * (boxes[l.To].Y + boxes[l.To].Height / 2), a.Item2 + l.Whole));
            double at = Math.Max(Top, (weight > 0 ? sum / weight : Top) - tall / 2);
            foreach (Box other in boxes.Values.Where(b => b.X == x).OrderBy(b => b.Y))
            {
                // Name and pounds take 40 below each node of the same column.
                at = at < other.Y + other.Height + 44 && at + tall + 44 > other.Y ? other.Y + other.Height + 44 : at;
            }
            boxes[id] = new Box(x, at, tall);
            end = Math.Max(end, at + tall + 40);
        }
        height = end + 6;
        return boxes;
    }

    private static string Summary(PoundFlowFacts facts, Reader reader)
    {
        string ends = string.Join("; ", facts.Ends.OrderByDescending(e => e.Whole).Take(6).Select(e => $"{e.Name} {Amount(e.Whole, reader)}"));
        return reader.Say(Say.FlowSummary, Amount(facts.WholeTotal, reader), ends) + " " + Closing(facts, reader);
    }

    private static DataTable Streams(PoundFlowFacts facts, Reader reader) => new(
        reader.Say(Say.FlowStreamsCaption),
        [new(reader.Say(Say.FromHead)), new(reader.Say(Say.ToHead)), new(reader.Say(Say.MassHead, reader.MassUnitName), true)],
        [.. facts.Links.Select(l => (IReadOnlyList<Cell>)[Name(facts, l.From), Name(facts, l.To), reader.Number(l.Whole, 0)])]);

    public static DataTable Ends(PoundFlowFacts facts, Reader reader) => new(
        reader.Say(Say.FlowEndsCaption),
        [new(reader.Say(Say.EndHead)), new(reader.Say(Say.MassHead, reader.MassUnitName), true), new(reader.Say(Say.ShareHead), true)],
        [.. facts.Ends.Select(e => (IReadOnlyList<Cell>)[e.Name, reader.Number(e.Whole, 0), reader.Percent((double)e.Whole / Math.Max(1, facts.WholeTotal), 2)])],
        [reader.Say(Say.Total), reader.Number(facts.Ends.Sum(e => e.Whole), 0), reader.Percent((double)facts.Ends.Sum(e => e.Whole) / Math.Max(1, facts.WholeTotal), 2)]);

    private sealed record Box(double X, double Y, double Height);
}
