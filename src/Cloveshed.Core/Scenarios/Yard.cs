using Cloveshed.Core.Keep;
using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>What stands where in a replay: rows as they come in, in parts that follow the plan's paths, and what a week of standing costs and does to them.</summary>
internal sealed class Yard
{
    private readonly ReplayShed shed;
    private readonly PlanningInstance instance;
    private readonly Scenario scenario;
    private readonly Till till;

    public Yard(ReplayShed shed, Scenario scenario, Till till)
    {
        (this.shed, instance, this.scenario, this.till) = (shed, shed.Instance, scenario, till);
        OfPath = [.. shed.Policy.Paths.Select(_ => new List<Batch>())];
        PathWhole = new double[OfPath.Length];
    }

    public List<Batch> Batches { get; } = [];
    public List<Batch>[] OfPath { get; }

    /// <summary>[path] scaled mass with which it came in; 0 before.</summary>
    public double[] PathWhole { get; }

    public double RowMass(int row) => instance.Rows[row].Mass * scenario.NetFactor[instance.Rows[row].Lot];

    /// <summary>Whether nothing of a row that came in is left but the digits of a file.</summary>
    public bool IsFinished(int row)
    {
        double left = 0;
        foreach (Batch b in Batches) if (b.Row == row) left += b.Left;
        return left <= 1e-7 * RowMass(row);
    }

    public bool MayLeave(Batch b, int week) => shed.Policy.Places[b.Place].Leave[week];

    /// <summary>Whether anything of a batch can go to a line.</summary>
    public bool MayRun(Batch b, int week) => b.Left > b.Dust && !instance.Lots[b.Lot].Hold && week >= instance.Lots[b.Lot].ReadyWeek && MayLeave(b, week);

    /// <summary>Shares of a batch's mass in a week.</summary>
    public (double Fresh, double Crack) Sound(Batch b)
    {
        double sound = instance.SoundShare(b.Life) / instance.Rows[b.Row].SoundAtStart;
        return (scenario.Fresh[b.Row] * sound, scenario.Crack[b.Row] * sound);
    }

    public void Arrive(int week)
    {
        for (int r = 0; r < instance.Rows.Length; r++)
        {
            if (scenario.StartWeek[r] != week) continue;
            InstanceRow row = instance.Rows[r];
            foreach (int p in shed.PathsOfRow[r])
            {
                PathWhole[p] = RowMass(r) * shed.Policy.Paths[p].Part;
                var batch = new Batch(p, r, row.Lot, row.Place, week, PathWhole[p], row.LifeAtStart, instance.Weeks);
                // A row that stood before may be moved in its first week: its path's first place need not be its own.
                Batches.Add(batch);
                OfPath[p].Add(batch);
            }
        }
        foreach (Batch b in Batches) (b.PlaceAt[week], b.RatioAt[week], b.LifeAt[week]) = (b.Place, b.Ratio, b.Life);
    }

    /// <summary>Scaled money per scaled mass as weighed that the batch brings as it stands; null where nobody buys it.</summary>
    public double? Price(Batch b, int week)
    {
        InstanceLot lot = instance.Lots[b.Lot];
        int a = instance.AsIsOfVariety[lot.Variety];
        return a >= 0 && !lot.Hold && week >= lot.ReadyWeek ? instance.AsIs[a].Price : null;
    }

    /// <summary>What stands costs, and a week of keeping passes.</summary>
    public void StandTheWeek(int week)
    {
        // As the contract has it: whatever stands there, be it a bulb, costs the place its week.
        bool[] holds = new bool[instance.Places.Length];
        foreach (Batch b in Batches)
        {
            if (b.Left <= 0) continue;
            holds[b.Place] = true;
            till.Add(MoneyKind.Storage, week, Bins(b) * instance.Places[b.Place].BinWeekCost);
        }
        for (int p = 0; p < holds.Length; p++) if (holds[p]) till.Add(MoneyKind.Place, week, instance.Places[p].WeekCost);
        foreach (Batch b in Batches)
        {
            (double loss, double used) = PathStates.Week(instance.Tables[instance.Rows[b.Row].Table], shed.Policy.Places[b.Place], week);
            double power = scenario.LossPower[b.Lot];
            // The contract of a season's files has a least weekly loss.
            b.Ratio *= power == 1 ? 1 - loss : 1 - KeepingLaw.WithinContract(1 - Math.Pow(1 - loss, power));
            b.Life += used * scenario.LifeFactor[b.Lot];
        }
        if (week != instance.Weeks - 1) return;
        foreach (Batch b in Batches)
        {
            (b.PlaceAt[instance.Weeks], b.RatioAt[instance.Weeks], b.LifeAt[instance.Weeks]) = (b.Place, b.Ratio, b.Life);
            (double fresh, double crack) = Sound(b);
            till.Add(MoneyKind.Standing, week, b.Left * b.Ratio * (fresh + crack) * instance.EndPrice);
        }
    }

    /// <summary>Parts a batch in two that follow the same path.</summary>
    public Batch Split(Batch b, double mass)
    {
        b = b.Split(mass);
        Batches.Add(b);
        OfPath[b.Path].Add(b);
        return b;
    }

    public double Bins(Batch b) => b.Left * scenario.BinsPerMass(instance, b.Row);
}
