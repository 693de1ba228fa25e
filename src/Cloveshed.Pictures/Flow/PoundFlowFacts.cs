using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Reading;

namespace Cloveshed.Pictures.Flow;

/// <summary>What a stage of the flow is, which decides where it is drawn and how it is coloured.</summary>
public enum FlowStage { Source, Fresh, SortedOut, Cracker, SeedLine, Packed, Cloves, Seed, Sale, Standing, Loss, Unexplained }

/// <summary>A node; Whole is in whole units of the reader.</summary>
public sealed record FlowNode(string Id, string Name, FlowStage Stage, long Whole);

/// <summary>A stream from one node to another in whole units.</summary>
public sealed record FlowLink(string From, string To, long Whole);

/// <summary>
/// A season's flow in whole lb or kg of the reader: every node's streams in and out add up exactly. What the rows do not
/// explain is a stream of its own and never spread over the others; Unexplained is that amount before rounding, in the season's unit.
/// </summary>
public sealed record PoundFlowFacts(IReadOnlyList<FlowNode> Nodes, IReadOnlyList<FlowLink> Links, double Total, double Unexplained)
{
    public static PoundFlowFacts From(Season season, PlanAnswer answer, Reader reader) =>
        new PoundFlowBuilder(PoundTotals.From(season, answer), reader).Build();

    public long WholeTotal => Nodes.Where(n => n.Stage == FlowStage.Source).Sum(n => n.Whole);

    /// <summary>The ends: nodes that nothing leaves.</summary>
    public IEnumerable<FlowNode> Ends => Nodes.Where(n => Links.All(l => l.From != n.Id));
}
