using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>Moves of a week between places: those of the plan as far as there is room, and those that a full place asks for.</summary>
internal sealed class YardMoves(ReplayShed shed, Scenario scenario, Yard yard, KeepWorths worths, AsItStands sales, Till till, Troubles troubles)
{
    private readonly PlanningInstance instance = shed.Instance;

    public void Week(int week)
    {
        double[] bins = new double[instance.Places.Length];
        foreach (Batch b in yard.Batches) bins[b.Place] += yard.Bins(b);
        for (int k = yard.Batches.Count - 1; k >= 0; k--) Planned(yard.Batches[k], week, bins);
        for (int p = 0; p < bins.Length; p++) Relieve(p, week, bins);
    }

    private bool MayMove(Batch b, int week)
    {
        InstanceRow row = instance.Rows[b.Row];
        bool cameIn = row.FirstMove > row.Start || b.Start > row.Start;
        return week >= (cameIn ? b.Start + 1 : b.Start) && yard.MayLeave(b, week);
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
                if (instance.Places[p].Kind == Seasons.PlaceKind.Open || !shed.Policy.Places[p].Enter[week] || bins[p] + yard.Bins(b) > instance.Places[p].Capacity) continue;
                double more = worths.Of(b, week, p) - worths.Of(b, week, b.Place) - scenario.BinsPerMass(instance, b.Row) * instance.Places[p].MoveInCost;
                if (more > gain) (gain, to) = (more, p);
            }
            if (to < 0) return;
        }
        else if (instance.Places[to].Kind != Seasons.PlaceKind.Open && bins[to] >= instance.Places[to].Capacity * (1 + 1e-7) && bins[b.Place] <= instance.Places[b.Place].Capacity)
        {
            // Nothing more goes in: what leaves it later this week has been counted already.
            bool leavers = yard.Batches.Any(o => o.Place == to && o.Left > 0 && o.Path != b.Path && shed.Policy.Paths[o.Path].PlaceAt[week] != to && MayMove(o, week));
            if (!leavers) return;
        }
        Move(b, to, week, bins);
    }

    /// <summary>Moves all that is left; what left this week stays behind as a batch of its own.</summary>
    private Batch Move(Batch b, int to, int week, double[] bins)
    {
        if (b.LeftIn(week))
        {
            b = yard.Split(b, b.Left);
        }
        bins[b.Place] -= yard.Bins(b);
        bins[to] += yard.Bins(b);
        till.Add(MoneyKind.Moves, week, yard.Bins(b) * instance.Places[to].MoveInCost);
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
        Batch[] here = [.. yard.Batches.Where(b => b.Place == place && b.Left > b.Dust).OrderBy(b => worths.Of(b, week))];
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
                    b = yard.Split(b, mass);
                }
                if (moved) till.Add(MoneyKind.Moves, week, -yard.Bins(b) * instance.Places[place].MoveInCost);
                over -= yard.Bins(b);
                if (to == before)
                {
                    bins[place] -= yard.Bins(b);
                    bins[to] += yard.Bins(b);
                    (b.Place, b.PlaceAt[week]) = (to, to);
                }
                else
                {
                    if (moved) (bins[place], bins[before], b.Place, b.PlaceAt[week]) = (bins[place] - yard.Bins(b), bins[before] + yard.Bins(b), before, before);
                    Move(b, to, week, bins);
                }
                continue;
            }
            if (!yard.MayLeave(b, week) || moved && b.LeftIn(week)) continue;
            double gone = sales.Sell(b, mass, week);
            if (gone < mass - b.Dust) gone += b.Take(mass - gone, week, -1, true);
            bins[place] -= gone * per;
            over -= gone * per;
            troubles.Add(TroubleKind.Place, instance.Places[place].Id.Text, week, gone * b.Ratio);
        }
    }
}
