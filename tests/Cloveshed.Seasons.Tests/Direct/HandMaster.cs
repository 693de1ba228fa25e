using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.Seasons.Tests.Features;
using Cloveshed.Solver.Highs;
using NodaTime;
using static Cloveshed.Seasons.Tests.Features.Tiny;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>
/// Four weeks of a shed that has one of everything, so that each kind of column of the master can be written down by hand: a
/// yard, a cold room and a room that can be sealed; a lot in two places and an organic one; bulbs of all three classes.
/// </summary>
internal sealed class HandMaster
{
    internal const int Yard = 0, Cold = 1, Room = 2, Pack = 0, Crack = 1, SeedLine = 2, M = 1, L = 2, G1 = 3, G2 = 4;
    internal const int M30 = 0, L30 = 1, L30Organic = 2, Cloves = 3;

    internal HandMaster(RoomChoice? rooms = null, DecidedRuns? decided = null)
    {
        Season = At();
        Instance = SmallSeasons.Instance(Season);
        SpotsHere = Spots.Of(Instance, rooms ?? RoomChoice.Free(Instance));
        Charges = RunCharges.ForBound(Instance);
        Rows = new MasterRows(Instance, SpotsHere, decided);
        Writer = new MasterColumnWriter(Instance, SpotsHere, Rows, Charges);
    }

    internal Season Season { get; }
    internal PlanningInstance Instance { get; }
    internal Spot[] SpotsHere { get; }
    internal RunCharges Charges { get; }
    internal MasterRows Rows { get; }
    internal MasterColumnWriter Writer { get; }

    /// <summary>Pounds, dollars and bins that stand for one in the master.</summary>
    internal double Pounds => Instance.MassScale;
    internal double Dollars => Instance.MoneyScale;
    internal double Bins => Instance.BinScale;

    /// <summary>The one column written, its gain and bounds, and its entries by row.</summary>
    internal static Written One(Action<ColumnBatch, List<MasterColumn>> write, Func<MasterColumn, bool>? which = null)
    {
        var batch = new ColumnBatch();
        var columns = new List<MasterColumn>();
        write(batch, columns);
        int k = which is null ? 0 : columns.FindIndex(c => which(c));
        Assert.InRange(k, 0, columns.Count - 1);
        Assert.True(which is null ? columns.Count == 1 : columns.Count(c => which(c)) == 1);
        int end = k + 1 < batch.Count ? batch.Starts[k + 1] : batch.Rows.Count;
        return new Written(batch.Cost[k], batch.Lower[k], batch.Upper[k],
            [.. Enumerable.Range(batch.Starts[k], end - batch.Starts[k]).Select(e => (batch.Rows[e], batch.Values[e])).OrderBy(e => e.Item1)]);
    }

    internal Written Path(int row, Exit exit, params Stay[] stays) =>
        One((batch, columns) => Writer.Path(batch, columns, PathStates.Column(Instance, SpotsHere, row, stays, exit)));

    internal Written Static(Func<MasterColumn, bool> which) => One(All, which);

    /// <summary>What every master has, every way to pack, and what keeps prices within limits.</summary>
    internal void All(ColumnBatch batch, List<MasterColumn> columns)
    {
        Writer.Static(batch, columns);
        foreach (PackArc arc in PackArcs.All(Instance)) Writer.Pack(batch, columns, arc);
        Writer.Loose(batch, columns);
    }

    /// <summary>Mass left and life used at a week's start by the losses and lives of the weeks before, place by place.</summary>
    internal (double Mass, double Sound) State(int row, params int[] places)
    {
        InstanceRow r = Instance.Rows[row];
        KeepTable table = Instance.Tables[r.Table];
        double mass = 1, life = r.LifeAtStart;
        for (int k = 0; k < places.Length; k++)
        {
            mass *= 1 - table.Loss[places[k]][r.Start + k];
            life += table.Life[places[k]][r.Start + k];
        }
        return (mass, Instance.SoundShare(life) / Instance.SoundShare(r.LifeAtStart));
    }

    private static Season At()
    {
        LotRow a = Lot("A", 6000) with { FreshShare = 0.8, CrackShare = 0.15, Cv = 0.6, SeedClass = SeedClass.B };
        return Shed(4, a, a with { Place = Tiny.Cold.Id, Net = 2000, Bins = 25, FreshShare = 0.7 }, Lot("B", 4000) with { Organic = true, Cv = 0.6, FreshShare = 0.75, CrackShare = 0.2 }) with
        {
            Settings = Shed(4).Settings with { EndPrice = 0.1m },
            Varieties = [.. Shed(4).Varieties.Select(v => v with { CloveCv = 0.5 })],
            Places = [Tiny.Yard with { CostPerBinWeek = 0.2m }, Tiny.Cold with { CapacityBins = 60, CostPerBinWeek = 1, CostPerWeek = 30, MoveInCost = 3 }, Tiny.Room with { CapacityBins = 40, CostPerBinWeek = 2, MoveInCost = 4, RunOutWeeks = 2 }],
            Lines =
            [
                Tiny.Pack with { RatePerHour = 100, HoursPerWeek = 20, OvertimeHours = 5, CostPerHour = 50, OvertimeCostPerHour = 80, SetupHours = 0.5, Heads = 4, MinRun = 300 },
                Tiny.Crack with { RatePerHour = 60, HoursPerWeek = 30, CostPerHour = 40, SetupHours = 0.25, Heads = 2 },
                Tiny.SeedLine with { RatePerHour = 50, HoursPerWeek = 200, SetupHours = 1 },
            ],
            People = [new(2, 60)],
            Products = [Carton("M") with { UnitCost = 1.5m, ShelfWeeks = 1 }, Carton("L") with { ShelfWeeks = 9 }, Carton("L") with { Id = new("L30 org"), Organic = true }, Tiny.Cloves("g2") with { UnitCost = 0.5m }],
            Stock = [new(new("M30"), 0, 7, null)],
            Orders =
            [
                Order("o", "M30", 40, 1) with { LateCost = 0.75m, LargerOk = true },
                Order("w", "M30", 10, 1, 18) with { Whole = true, LateCost = 0.5m },
                Order("w", "L30", 5, 2, 25) with { Number = "2", ShortCost = 3 },
            ],
            Market = [new(new("M30"), 2, 12, null, 9.9, null)],
            SeedNeeds = [new(new("plain"), 200, Monday.PlusWeeks(2), SeedClass.B, 2)],
            AsIsPrices = [new(null, 0.2m, 500)],
        };
    }
}

/// <summary>One column of a program: what a unit of it is worth, how much of it there may be, and what it takes of each row.</summary>
internal sealed record Written(double Gain, double Least, double Most, (int Row, double Value)[] Entries)
{
    /// <summary>Its gain and entries are these, in any order, to twelve digits.</summary>
    internal void Is(double gain, params (int Row, double Value)[] entries)
    {
        Assert.DoesNotContain(entries, e => e.Row < 0);
        Assert.Equal(entries.Select(e => e.Row).Order(), Entries.Select(e => e.Row));
        foreach ((int row, double value) in entries) Assert.Equal(value, Entries.Single(e => e.Row == row).Value, 1e-12 * (1 + Math.Abs(value)));
        Assert.Equal(gain, Gain, 1e-12 * (1 + Math.Abs(gain)));
    }

    internal Written UpTo(double most)
    {
        Assert.Equal(0, Least);
        Assert.Equal(most, Most, 1e-12 * (1 + (double.IsInfinity(most) ? 0 : Math.Abs(most))));
        return this;
    }
}
