using Cloveshed.Core.Answers;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>What a replay did as the rows of an answer, so that it can be read, valued and checked as a plan is.</summary>
internal sealed class ReplayRows(ReplayShed shed, Scenario scenario, Yard yard)
{
    private readonly PlanningInstance instance = shed.Instance;
    private readonly List<RunRow> runs = [];
    private readonly List<MadeRow> made = [];
    private readonly List<SortedRow> sorted = [];
    private readonly List<SeedRow> seed = [];
    private readonly List<(int Row, Batch? Batch)> batchOf = [];

    public void Week(int week, IReadOnlyList<WeekRun> weekRuns, LineBook book)
    {
        foreach (IGrouping<int, WeekRun> line in weekRuns.GroupBy(r => r.Line))
        {
            (double regular, double overtime) = book.Split(line.Key);
            double part = regular + overtime > 0 ? overtime / (regular + overtime) : 0;
            foreach (WeekRun r in line)
            {
                string id = $"R{r.Number + 1:00000}";
                InstanceLot lot = instance.Lots[r.Lot];
                batchOf.Add((runs.Count, r.Batch));
                runs.Add(new RunRow(id, week, instance.Lines[r.Line].Id, instance.Lines[r.Line].Mode, r.Batch is null, lot.Id, null,
                    r.Batch is { } b ? instance.Places[b.PlaceAt[week]].Id : null, r.MassIn * instance.MassScale, r.StartMass * instance.MassScale, r.Hours * (1 - part), r.Hours * part, ""));
                made.AddRange(r.Made.Select(m => new MadeRow(id, week, instance.Products[m.Key].Id, lot.Id, m.Value * instance.MassScale / instance.Products[m.Key].NetInUnit, m.Value * instance.MassScale)));
                if (instance.Lines[r.Line].Mode == LineMode.Fresh && r.SortedOut > 0) sorted.Add(new SortedRow(id, lot.Id, week, r.SortedOut * instance.MassScale));
                seed.AddRange(r.Seed.Select(s => new SeedRow(id, week, instance.SeedNeeds[s.Key].Need.Variety, lot.Id, lot.Seed!.Value, instance.SeedNeeds[s.Key].Class, instance.SeedNeeds[s.Key].Need.By, s.Value * instance.MassScale)));
            }
        }
    }

    public PlanAnswer Answer(Demand demand, Shipping shipping)
    {
        Batch[] batches = [.. yard.Batches.Where(b => b.Whole > 0)];
        var ids = batches.Index().ToDictionary(b => b.Item, b => $"P{b.Index + 1:00000}");
        foreach ((int row, Batch? batch) in batchOf) if (batch is not null) runs[row] = runs[row] with { Path = ids[batch] };
        var summary = new PlanSummary(0, 0, 0, 0, 0, 0, PlanStatus.GapReached, 0, new Dictionary<string, double>(), new Dictionary<string, double>(), new Dictionary<string, double>(), [], [], "", "", new Dictionary<string, double>());
        var answer = new PlanAnswer(summary, [.. batches.SelectMany(b => Path(b, ids[b]))], Shares(), runs, sorted, made,
            [.. shipping.Fills.GroupBy(f => (f.Line, f.Product, f.Week)).Select(g => (g.Key.Line, g.Key.Product, g.Key.Week, Units: g.Sum(f => f.Units))).Select(f => new FillRow(instance.OrderLines[f.Line].Line.Order, instance.OrderLines[f.Line].Line.Number, f.Week, instance.Products[f.Product].Id, f.Units))],
            [.. shipping.Sales.GroupBy(s => s.Market).Select(g => (Market: g.Key, Units: g.Sum(s => s.Units))).Select(s => new SaleRow(instance.Market[s.Market].Week, instance.Products[instance.Market[s.Market].Product].Id, s.Units))],
            [.. batches.SelectMany(b => b.Exits.Where(e => e.Line < 0).GroupBy(e => (e.Discarded, e.Week)).Select(g => (g.Key.Discarded, g.Key.Week, Mass: g.Sum(e => e.Mass))).Select(e => new AsIsRow(e.Discarded, e.Week, instance.Lots[b.Lot].Id, ids[b], instance.Places[b.PlaceAt[e.Week]].Id, e.Mass * b.RatioAt[e.Week] * instance.MassScale, e.Mass * instance.MassScale)))],
            [.. instance.OrderLines.Select((l, i) => new ShortRow(l.Line.Order, l.Line.Number, scenario.OrderUnits[i] - demand.Shipped[i], "")).Where(s => s.Units > 0)],
            [.. batches.SelectMany(b => Keeps(b, ids[b]))], Moves(batches), Rooms(batches), seed, []);
        return answer;
    }

    private IEnumerable<PathWeek> Path(Batch b, string id)
    {
        InstanceRow row = instance.Rows[b.Row];
        for (int t = b.Start; t <= instance.Weeks; t++)
        {
            double sound = instance.SoundShare(b.LifeAt[t]) / row.SoundAtStart;
            yield return new PathWeek(id, instance.Lots[b.Lot].Id, instance.Places[row.Place].Id, t, instance.Places[b.PlaceAt[t]].Id, b.RatioAt[t], scenario.Fresh[b.Row] * sound, scenario.Crack[b.Row] * sound, b.LifeAt[t]);
        }
    }

    private List<LotShare> Shares()
    {
        var shares = new List<LotShare>();
        int classes = instance.Season.Sizes.Count;
        for (int l = 0; l < instance.Lots.Length; l++)
        {
            // A lot that never came is in no row, and its season written as it truly was does not know it.
            if (instance.Lots[l].Rows.All(r => scenario.StartWeek[r] >= instance.Weeks)) continue;
            LotId lot = instance.Lots[l].Id;
            double[] sorts = scenario.Sorts[l];
            for (int k = 0; k < sorts.Length; k++) shares.Add(new LotShare(lot, k < classes ? ShareKind.BulbClass : ShareKind.CloveGrade, instance.Sorts[k].Name, sorts[k]));
            shares.Add(new LotShare(lot, ShareKind.BulbClass, "under", scenario.Under[l]));
            if (sorts.Length > classes) shares.Add(new LotShare(lot, ShareKind.CloveGrade, "ungraded", Math.Max(0, 1 - sorts[classes..].Sum())));
        }
        return shares;
    }

    private static double LeftAfter(Batch b, int week) => b.Left + b.Exits.Where(e => e.Week > week).Sum(e => e.Mass);

    private double Bins(Batch b, double mass) => mass * scenario.BinsPerMass(instance, b.Row) * instance.BinScale;

    private IEnumerable<KeepRow> Keeps(Batch b, string id)
    {
        for (int t = b.Start; t < instance.Weeks && LeftAfter(b, t) is > 0 and var left; t++)
            yield return new KeepRow(t, instance.Lots[b.Lot].Id, id, instance.Places[b.PlaceAt[t]].Id, Bins(b, left), left * instance.MassScale);
    }

    private List<MoveRow> Moves(Batch[] batches) =>
    [
        .. batches.SelectMany(b => Enumerable.Range(b.Start, instance.Weeks - b.Start).Select(t => (b, t, From: t > b.Start ? b.PlaceAt[t - 1] : instance.Rows[b.Row].Place, To: b.PlaceAt[t]))
            .Where(m => m.From != m.To && LeftAfter(m.b, m.t - 1) > 0))
            .GroupBy(m => (m.t, m.b.Lot, m.From, m.To))
            .Select(g => new MoveRow(g.Key.t, instance.Lots[g.Key.Lot].Id, instance.Places[g.Key.From].Id, instance.Places[g.Key.To].Id, g.Sum(m => Bins(m.b, LeftAfter(m.b, m.t - 1)))))
            .OrderBy(m => m.Week),
    ];

    private List<RoomRow> Rooms(Batch[] batches)
    {
        var rows = new List<RoomRow>();
        for (int p = 0; p < instance.Places.Length; p++)
        {
            if (shed.Policy.Rooms.OfPlace[p] is not { Sealed: { } shut } schedule) continue;
            int at = Math.Clamp(shut, 0, instance.Weeks - 1);
            if (instance.Places[p].SealedWeek is not null || batches.Any(b => b.Start <= at && b.PlaceAt[at] == p && LeftAfter(b, at) > 0)) rows.Add(new RoomRow(instance.Places[p].Id, shut, schedule.Opened));
        }
        return rows;
    }
}
