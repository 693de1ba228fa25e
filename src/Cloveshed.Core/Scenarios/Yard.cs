using Cloveshed.Core.Keep;
using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>What stands where in a replay: rows as they come in, parts that follow the plan's paths, moves, room, and what standing costs.</summary>
internal sealed class Yard
{
    private readonly ReplayShed shed;
    private readonly PlanningInstance instance;
    private readonly Scenario scenario;
    private readonly Till till;
    private readonly Troubles troubles;
    private readonly double[] asIsLeft;

    public Yard(ReplayShed shed, Scenario scenario, Till till, Troubles troubles)
    {
        (this.shed, instance, this.scenario, this.till, this.troubles) = (shed, shed.Instance, scenario, till, troubles);
        OfPath = [.. shed.Policy.Paths.Select(_ => new List<Batch>())];
        PathWhole = new double[OfPath.Length];
        asIsLeft = new double[instance.AsIs.Length];
    }

    public List<Batch> Batches { get; } = [];
    public List<Batch>[] OfPath { get; }

    /// <summary>[path] scaled mass with which it came in; 0 before.</summary>
    public double[] PathWhole { get; }

    public double RowMass(int row) => instance.Rows[row].Mass * scenario.NetFactor[instance.Rows[row].Lot];

    public bool MayLeave(Batch b, int week) => shed.Policy.Places[b.Place].Leave[week];

    /// <summary>Shares of a batch's mass in a week.</summary>
    public (double Fresh, double Crack) Sound(Batch b)
    {
        double sound = instance.SoundShare(b.Life) / instance.Rows[b.Row].SoundAtStart;
        return (scenario.Fresh[b.Row] * sound, scenario.Crack[b.Row] * sound);
    }

    public void Arrive(int week)
    {
        Array.Fill(asIsLeft, 0);
        for (int a = 0; a < asIsLeft.Length; a++) asIsLeft[a] = instance.AsIs[a].Limit;
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

    /// <summary>Sells or discards planned parts, and sells what has no plan left and is worth no keeping.</summary>
    public void AsIs(int week)
    {
        for (int p = 0; p < OfPath.Length; p++)
        {
            double planned = 0;
            foreach (PolicyExit exit in shed.Policy.Paths[p].Exits)
            {
                if (exit.Week > week) planned += exit.Part * PathWhole[p];
                if (exit.Week != week || exit.Line >= 0) continue;
                double wanted = exit.Part * PathWhole[p];
                foreach (Batch b in OfPath[p])
                {
                    if (wanted <= b.Dust || b.Left <= 0 || !MayLeave(b, week)) continue;
                    wanted -= exit.Discarded ? b.Take(Math.Min(wanted, b.Left), week, -1, true) : Sell(b, Math.Min(wanted, b.Left), week);
                }
            }
            if (week % 4 != 0 && week < instance.Weeks - 2) continue;
            double standing = OfPath[p].Sum(b => b.Left), spare = standing - planned;
            // What the plan means to keep to the end is no spare.
            double toEnd = PathWhole[p] * Math.Max(0, 1 - shed.Policy.Paths[p].Exits.Sum(e => e.Part));
            spare -= toEnd;
            if (spare <= 1e-6 * PathWhole[p]) continue;
            foreach (Batch b in OfPath[p])
            {
                if (spare <= 0 || b.Left <= 0 || !MayLeave(b, week) || Price(b, week) is not { } price || price * b.Ratio <= KeepWorth(b, week)) continue;
                spare -= Sell(b, Math.Min(spare, b.Left), week);
            }
        }
    }

    /// <summary>Scaled money per scaled mass as weighed that the batch brings as it stands; null where nobody buys it.</summary>
    private double? Price(Batch b, int week)
    {
        InstanceLot lot = instance.Lots[b.Lot];
        int a = instance.AsIsOfVariety[lot.Variety];
        return a >= 0 && !lot.Hold && week >= lot.ReadyWeek ? instance.AsIs[a].Price : null;
    }

    private double Sell(Batch b, double mass, int week)
    {
        if (Price(b, week) is not { } price) return 0;
        int a = instance.AsIsOfVariety[instance.Lots[b.Lot].Variety];
        double taken = b.Take(Math.Min(mass, asIsLeft[a] / b.Ratio * (1 + 1e-9)), week, -1, false);
        asIsLeft[a] -= taken * b.Ratio;
        till.Add(MoneyKind.AsIs, week, taken * b.Ratio * price);
        return taken;
    }

    /// <summary>
    /// What a mass at start of the batch is worth if it stays past this week: the best week to run it or sell it as it stands, by the
    /// plan's worths and the keeping law from what is seen now, less what standing costs.
    /// </summary>
    public double KeepWorth(Batch b, int week)
    {
        if (b.Kept.Week == week) return b.Kept.Worth;
        double worth = KeepWorth(b, week, -1);
        b.Kept = (week, worth);
        return worth;
    }

    private double KeepWorth(Batch b, int week, int staysIn)
    {
        InstanceRow row = instance.Rows[b.Row];
        InstanceLot lot = instance.Lots[b.Lot];
        int[] planned = shed.Policy.Paths[b.Path].PlaceAt;
        double bins = scenario.BinsPerMass(instance, b.Row), ratio = b.Ratio, life = b.Life, spent = 0, best = 0, price = Price(b, instance.Weeks) ?? 0;
        int place = staysIn >= 0 ? staysIn : b.Place;
        for (int t = week; t < instance.Weeks; t++)
        {
            if (t > week && shed.Policy.Places[place].Leave[t])
            {
                double sound = shed.SoundShare(life) / row.SoundAtStart, fresh = scenario.Fresh[b.Row] * sound, crack = scenario.Crack[b.Row] * sound;
                double now = lot.Hold ? 0 : ratio * Math.Max(price, Math.Max(
                    fresh * instance.KeptFresh * shed.RunWorth[b.Lot][t] - shed.FreshHour[t], (fresh + crack) * instance.KeptCrack * shed.CloveWorth[b.Lot][t] - shed.CrackHour[t]));
                best = Math.Max(best, now - spent);
            }
            Spot spot = shed.Policy.Places[place];
            if (staysIn < 0 && t > week && planned[t] != place && spot.Leave[t] && shed.Policy.Places[planned[t]].Enter[t])
            {
                place = planned[t];
                spent += bins * instance.Places[place].MoveInCost;
                spot = shed.Policy.Places[place];
            }
            if (!spot.Stand[t]) return best;
            spent += bins * instance.Places[place].BinWeekCost;
            (double loss, double used) = PathStates.Week(instance.Tables[row.Table], spot, t);
            (ratio, life) = (ratio * (1 - loss), life + used);
        }
        double end = ratio * shed.SoundShare(life) / row.SoundAtStart * (scenario.Fresh[b.Row] + scenario.Crack[b.Row]) * instance.EndPrice;
        return Math.Max(best, end - spent);
    }

    /// <summary>Moves as planned, as far as there is room; then what stands costs, and a week of keeping passes.</summary>
    public void StandTheWeek(int week)
    {
        double[] bins = new double[instance.Places.Length];
        foreach (Batch b in Batches) bins[b.Place] += Bins(b);
        for (int k = Batches.Count - 1; k >= 0; k--) Planned(Batches[k], week, bins);
        for (int p = 0; p < bins.Length; p++) Relieve(p, week, bins);
        // As the contract has it: whatever stands there, be it a bulb, costs the place its week.
        bool[] holds = new bool[bins.Length];
        foreach (Batch b in Batches)
        {
            if (b.Left <= 0) continue;
            holds[b.Place] = true;
            till.Add(MoneyKind.Storage, week, Bins(b) * instance.Places[b.Place].BinWeekCost);
        }
        for (int p = 0; p < bins.Length; p++) if (holds[p]) till.Add(MoneyKind.Place, week, instance.Places[p].WeekCost);
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

    private double Bins(Batch b) => b.Left * scenario.BinsPerMass(instance, b.Row);

    private bool MayMove(Batch b, int week)
    {
        InstanceRow row = instance.Rows[b.Row];
        bool cameIn = row.FirstMove > row.Start || b.Start > row.Start;
        return week >= (cameIn ? b.Start + 1 : b.Start) && MayLeave(b, week);
    }

    private void Planned(Batch b, int week, double[] bins)
    {
        int to = shed.Policy.Paths[b.Path].PlaceAt[week];
        if (b.Left <= 0 || to == b.Place || !MayMove(b, week)) return;
        if (!shed.Policy.Places[to].Enter[week])
        {
            // The planned room is shut: where it would keep better, if that pays.
            if (instance.Places[b.Place].Kind != Seasons.PlaceKind.Open) return;
            (double gain, to) = (1e-9, -1);
            for (int p = 0; p < bins.Length; p++)
            {
                if (instance.Places[p].Kind == Seasons.PlaceKind.Open || !shed.Policy.Places[p].Enter[week] || bins[p] + Bins(b) > instance.Places[p].Capacity) continue;
                double more = KeepWorth(b, week, p) - KeepWorth(b, week, b.Place) - scenario.BinsPerMass(instance, b.Row) * instance.Places[p].MoveInCost;
                if (more > gain) (gain, to) = (more, p);
            }
            if (to < 0) return;
        }
        else if (instance.Places[to].Kind != Seasons.PlaceKind.Open && bins[to] >= instance.Places[to].Capacity * (1 + 1e-7) && bins[b.Place] <= instance.Places[b.Place].Capacity)
        {
            // Nothing more goes in: what leaves it later this week has been counted already.
            bool leavers = Batches.Any(o => o.Place == to && o.Left > 0 && o.Path != b.Path && shed.Policy.Paths[o.Path].PlaceAt[week] != to && MayMove(o, week));
            if (!leavers) return;
        }
        Move(b, to, week, bins);
    }

    /// <summary>Moves all that is left; what left this week stays behind as a batch of its own.</summary>
    private Batch Move(Batch b, int to, int week, double[] bins)
    {
        if (b.LeftIn(week))
        {
            b = b.Split(b.Left);
            Batches.Add(b);
            OfPath[b.Path].Add(b);
        }
        bins[b.Place] -= Bins(b);
        bins[to] += Bins(b);
        till.Add(MoneyKind.Moves, week, Bins(b) * instance.Places[to].MoveInCost);
        (b.Place, b.PlaceAt[week]) = (to, to);
        return b;
    }

    /// <summary>Where a place holds more than it can, or may hold nothing: moves of this week are taken back, then there are other places, then the price as it stands, then nothing.</summary>
    private void Relieve(int place, int week, double[] bins)
    {
        double Capacity(int p) => shed.Policy.Places[p].Stand[week] ? instance.Places[p].Capacity : 0;
        double over = bins[place] - Capacity(place);
        if (over <= 1e-6 * Math.Max(1, instance.Places[place].Capacity)) return;
        troubles.Add(TroubleKind.Place, instance.Places[place].Id.Text, week, 0);
        // What is worth least goes first.
        Batch[] here = [.. Batches.Where(b => b.Place == place && b.Left > b.Dust).OrderBy(b => KeepWorth(b, week))];
        foreach (Batch one in here)
        {
            if (over <= 0) return;
            Batch b = one;
            double per = scenario.BinsPerMass(instance, b.Row), mass = Math.Min(b.Left, over / per);
            int before = week > b.Start ? b.PlaceAt[week - 1] : instance.Rows[b.Row].Place;
            bool moved = before != place;
            int to = moved && shed.Policy.Places[before].Stand[week] && bins[before] + mass * per <= Capacity(before) ? before : -1;
            if (to < 0 && MayMove(b, week))
                for (int p = 0; p < bins.Length; p++)
                    if (p != place && shed.Policy.Places[p].Enter[week] && bins[p] + mass * per <= Capacity(p)
                        && (to < 0 || instance.Places[p].BinWeekCost < instance.Places[to].BinWeekCost)) to = p;
            if (to >= 0)
            {
                if (mass < b.Left)
                {
                    b = b.Split(mass);
                    Batches.Add(b);
                    OfPath[b.Path].Add(b);
                }
                if (moved) till.Add(MoneyKind.Moves, week, -Bins(b) * instance.Places[place].MoveInCost);
                over -= Bins(b);
                if (to == before)
                {
                    bins[place] -= Bins(b);
                    bins[to] += Bins(b);
                    (b.Place, b.PlaceAt[week]) = (to, to);
                }
                else
                {
                    if (moved) (bins[place], bins[before], b.Place, b.PlaceAt[week]) = (bins[place] - Bins(b), bins[before] + Bins(b), before, before);
                    Move(b, to, week, bins);
                }
                continue;
            }
            if (!MayLeave(b, week) || moved && b.LeftIn(week)) continue;
            double gone = Sell(b, mass, week);
            if (gone < mass - b.Dust) gone += b.Take(mass - gone, week, -1, true);
            bins[place] -= gone * per;
            over -= gone * per;
            troubles.Add(TroubleKind.Place, instance.Places[place].Id.Text, week, gone * b.Ratio);
        }
    }
}
