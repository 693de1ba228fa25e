using Cloveshed.Core.Answers;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Planning;

/// <summary>A solved master with decided runs in, the answer's rows out: exact, in the season's own units.</summary>
internal sealed class AnswerBuilding
{
    private readonly PlanningInstance _instance;
    private readonly Master _master;

    internal AnswerBuilding(Master master)
    {
        _master = master;
        _instance = master.Instance;
        Paths = PlannedPaths.Of(master);
        Runs = RunRows.Of(_instance, Paths);
        (Filled, Pool) = OrderFilling.Fill(master, NewPool);
        // Only what is taken is made; the rest of what could have been packed is sorted out.
        foreach (PlannedRun run in Runs)
            if (_instance.Lines[run.Line].Mode == LineMode.Fresh) run.SortedOut -= run.Sources.Sum(s => s.MadeByProduct.Values.Sum());
    }

    internal List<PlannedPath> Paths { get; }
    internal List<PlannedRun> Runs { get; }
    internal Filled Filled { get; }
    internal SupplyPool Pool { get; }

    private SupplyPool NewPool()
    {
        foreach (PlannedRun run in Runs)
            for (int k = 0; k < run.Sources.Count; k++)
            {
                Source s = run.Sources[k];
                run.Sources[k] = new Source(s.Run, s.Lot, s.Sort, s.Supply, s.Week, s.Left + s.MadeByProduct.Values.Sum());
            }
        return new SupplyPool(_instance, Runs.SelectMany(r => r.Sources), SuggestedSources.Of(_master));
    }

    /// <summary>The rows that the value is made of; reasons, shorts and worths are added by the caller.</summary>
    internal PlanAnswer Rows(Func<PlannedRun, string> reason, IReadOnlyList<ShortRow> shorts, IReadOnlyList<WorthRow> worths) => new(
        null!, PathRows(), ShareRows(),
        [.. Runs.Select(r => new RunRow(r.Id, r.Week, _instance.Lines[r.Line].Id, _instance.Lines[r.Line].Mode, r.Path is null, _instance.Lots[r.Lot].Id,
            r.Path?.Id, r.Path is null ? null : PlaceAt(r.Path, r.Week), Unscaled(r.MassIn), Unscaled(r.StartMass), r.Hours, r.OvertimeHours, reason(r)))],
        SortedRows(), MadeRows(), FillRows(), SaleRows(), AsIsRows(), shorts, KeepRows(), MoveRows(), RoomRows(), SeedRows(), worths);

    internal bool BreaksALeastRun() => LeastRuns.Broken(_instance, Paths, Runs).Count > 0;

    /// <summary>Scaled money that the plan pays for pins that it misses; not in its value.</summary>
    internal double Missed() => RunWishes.MissedPin * _instance.Pins.Sum(p =>
        Math.Max(0, p.Mass - Runs.Where(r => r.Path is not null && r.Lot == p.Lot && r.Line == p.Line && r.Week == p.Week).Sum(r => r.MassIn)));

    internal double ValueOf(Season season) => Valuation.Of(season, Rows(_ => "", [], [])).Value;

    internal double Unscaled(double mass) => mass * _instance.MassScale;

    internal List<PathWeek> PathRows() =>
    [
        .. Paths.SelectMany(p =>
        {
            InstanceRow r = _instance.Rows[p.Row];
            return Enumerable.Range(r.Start, _instance.Weeks + 1 - r.Start).Select(t =>
            {
                double sound = PathStates.SoundOf(_instance, p.Row, p.Life[t]);
                return new PathWeek(p.Id, _instance.Lots[r.Lot].Id, _instance.Places[r.Place].Id, t, PlaceAt(p, t), p.MassRatio[t], r.Fresh * sound, r.Crack * sound, p.Life[t]);
            });
        }),
    ];

    internal PlaceId PlaceAt(PlannedPath path, int week) => _instance.Places[_master.SpotsHere[path.SpotAt(week)].Place].Id;

    internal List<LotShare> ShareRows()
    {
        var rows = new List<LotShare>();
        foreach (InstanceLot lot in _instance.Lots)
        {
            LotKnowledge k = lot.Known;
            rows.AddRange(_instance.Season.Sizes.Select((c, i) => new LotShare(lot.Id, ShareKind.BulbClass, c.Id.Text, k.ClassShares[i])));
            rows.Add(new LotShare(lot.Id, ShareKind.BulbClass, "under", k.Under));
            if (_instance.Season.CloveGrades.Count == 0) continue;
            rows.AddRange(_instance.Season.CloveGrades.Select((g, i) => new LotShare(lot.Id, ShareKind.CloveGrade, g.Id.Text, k.GradeShares[i])));
            rows.Add(new LotShare(lot.Id, ShareKind.CloveGrade, "ungraded", k.Ungraded));
        }
        return rows;
    }

    internal List<SortedRow> SortedRows() =>
    [
        .. Runs.Where(r => _instance.Lines[r.Line].Mode == LineMode.Fresh && r.Path is not null && r.SortedOut > 0)
            .Select(r => new SortedRow(r.Id, _instance.Lots[r.Lot].Id, r.Week, Unscaled(r.SortedOut))),
    ];

    internal List<MadeRow> MadeRows() =>
    [
        .. Runs.SelectMany(r => r.Sources.SelectMany(s => s.MadeByProduct).GroupBy(m => m.Key).Select(g =>
        {
            double mass = Unscaled(g.Sum(m => m.Value));
            return new MadeRow(r.Id, r.Week, _instance.Products[g.Key].Id, _instance.Lots[r.Lot].Id, mass / _instance.Products[g.Key].NetInUnit, mass);
        })),
    ];

    internal List<FillRow> FillRows() =>
        [.. Filled.Fills.Select(f => new FillRow(_instance.OrderLines[f.Line].Line.Order, _instance.OrderLines[f.Line].Line.Number, f.Week, _instance.Products[f.Product].Id, f.Units))];

    internal List<SaleRow> SaleRows() =>
        [.. Filled.Sales.Select(s => new SaleRow(_instance.Market[s.Market].Week, _instance.Products[_instance.Market[s.Market].Product].Id, s.Units))];

    internal List<AsIsRow> AsIsRows() =>
    [
        .. Paths.SelectMany(p => p.Exits.Where(e => e.Exit.Kind is ExitKind.SoldAsIs or ExitKind.Discard && e.Mass > 0).Select(e => new AsIsRow(
            e.Exit.Kind == ExitKind.Discard, e.Exit.Week, _instance.Lots[_instance.Rows[p.Row].Lot].Id, p.Id, PlaceAt(p, e.Exit.Week),
            Unscaled(e.Mass * p.MassRatio[e.Exit.Week]), Unscaled(e.Mass)))).OrderBy(r => r.Week),
    ];

    internal List<KeepRow> KeepRows()
    {
        var rows = new List<KeepRow>();
        foreach (PlannedPath p in Paths)
        {
            InstanceRow r = _instance.Rows[p.Row];
            for (int t = r.Start; t < _instance.Weeks; t++)
            {
                double left = Unscaled(p.Left(t));
                if (left <= 0) break;
                rows.Add(new KeepRow(t, _instance.Lots[r.Lot].Id, p.Id, PlaceAt(p, t), r.Bins * left / r.Net, left));
            }
        }
        return [.. rows.OrderBy(k => k.Week)];
    }

    internal List<MoveRow> MoveRows() =>
    [
        .. Paths.SelectMany(p => p.Stays.Skip(1).Select((s, k) => (p, s.Enter, From: p.Stays[k].Spot, To: s.Spot)))
            .Where(m => m.p.Before(m.Enter) > 0)
            .GroupBy(m => (m.Enter, _instance.Lots[_instance.Rows[m.p.Row].Lot].Id, From: _instance.Places[_master.SpotsHere[m.From].Place].Id, To: _instance.Places[_master.SpotsHere[m.To].Place].Id))
            .Select(g => new MoveRow(g.Key.Enter, g.Key.Id, g.Key.From, g.Key.To,
                g.Sum(m => _instance.Rows[m.p.Row].Bins * Unscaled(m.p.Before(m.Enter)) / _instance.Rows[m.p.Row].Net)))
            .OrderBy(m => m.Week),
    ];

    internal List<RoomRow> RoomRows()
    {
        var rows = new List<RoomRow>();
        for (int p = 0; p < _instance.Places.Length; p++)
        {
            if (_master.Choice.OfPlace[p] is not { Sealed: { } sealedWeek } schedule) continue;
            bool used = Paths.Any(path => _master.SpotsHere[path.SpotAt(Math.Min(sealedWeek, _instance.Weeks - 1))].Place == p && path.Left(sealedWeek) > 0);
            if (used || _instance.Places[p].SealedWeek is not null) rows.Add(new RoomRow(_instance.Places[p].Id, sealedWeek, schedule.Opened));
        }
        return rows;
    }

    internal List<SeedRow> SeedRows() =>
    [
        .. Runs.SelectMany(r => r.SeedCloves.Where(c => c.Value > 0).Select(c =>
        {
            InstanceLot lot = _instance.Lots[r.Lot];
            SeedNeed need = _instance.SeedNeeds[c.Key].Need;
            return new SeedRow(r.Id, r.Week, need.Variety, lot.Id, lot.Seed!.Value, need.Class, need.By, Unscaled(c.Value));
        })),
    ];
}
