namespace Cloveshed.Check.Answer;

/// <summary>The answer's files as read: every sound row, in file order.</summary>
internal sealed class AnswerData
{
    public List<PathRow> Paths { get; } = [];

    public List<ShareRow> Shares { get; } = [];

    public List<RunRow> Runs { get; } = [];

    public List<SortedRow> Sorted { get; } = [];

    public List<MadeRow> Made { get; } = [];

    public List<FillRow> Fills { get; } = [];

    public List<SaleRow> Sales { get; } = [];

    public List<AsIsRow> AsIs { get; } = [];

    public List<ShortRow> Shorts { get; } = [];

    public List<KeepRow> Keeps { get; } = [];

    public List<MoveRow> Moves { get; } = [];

    public List<RoomRow> Rooms { get; } = [];

    public List<SeedRow> Seed { get; } = [];

    public SummaryFigures? Summary { get; set; }

    /// <summary>Whether every CSV file and row could be read: only then does the recomputed value mean anything.</summary>
    public bool Complete { get; set; }
}
