namespace Cloveshed.Core.Planning;

/// <summary>
/// What a row's mass is worth through one room at prices, by the week in which the room is sealed and the week in which it is opened: moved in from where
/// it stands, or standing there from the start, and run or sold once the room is open. The room's space costs nothing here beyond what standing costs.
/// </summary>
internal sealed class RoomWays
{
    private readonly PlanningInstance _instance;
    private readonly int _place;
    private readonly Spot[] _air;
    private readonly double[,][] _keep, _life;
    private readonly int _room, _shut;

    internal RoomWays(PlanningInstance instance, int place)
    {
        (_instance, _place) = (instance, place);
        // Every place in air, and the room once more under its atmosphere.
        bool[] all = [.. Enumerable.Repeat(true, instance.Weeks)];
        _air = [.. Enumerable.Range(0, instance.Places.Length).Select(p => new Spot(p, SpotKind.Plain, all, all, all, _ => false)), new Spot(place, SpotKind.Plain, all, all, all, _ => true)];
        (_room, _shut) = (place, instance.Places.Length);
        (_keep, _life) = PathStates.Weekly(instance, _air);
    }

    /// <summary>
    /// [opened - AsOf] the best worth of a row per mass at start where the room is sealed in a week; opened = Weeks: it stays shut to the end. Minus infinity where
    /// there is no way. Moving in pays, standing pays what a bin's week costs; from home it pays the home's prices.
    /// </summary>
    internal double[] Worth(int row, ExitHull[] hulls, double[] homeStood, bool[] homeStands, int sealedWeek)
    {
        InstanceRow r = _instance.Rows[row];
        int weeks = _instance.Weeks, asOf = _instance.AsOf;
        double[] best = new double[weeks - asOf + 1];
        Array.Fill(best, double.NegativeInfinity);
        if (r.Place == _place)
        {
            Through(r, hulls, r.Start, 1, r.LifeAtStart, 0, sealedWeek, best);
            return best;
        }
        double[] keep = _keep[r.Table, r.Place], used = _life[r.Table, r.Place];
        double mass = 1, life = r.LifeAtStart;
        for (int t = r.Start; t <= Math.Min(sealedWeek, weeks - 1); t++)
        {
            if (t >= r.FirstMove)
                Through(r, hulls, t, mass, life, -r.BinsPerMass * (homeStood[t] - homeStood[r.Start] + _instance.Places[_place].MoveInCost), sealedWeek, best);
            if (!homeStands[t]) break;
            mass *= keep[t];
            life += used[t];
        }
        return best;
    }

    /// <summary>From a week of coming in on: in air until it is sealed, under its atmosphere until it is opened, in air again until it must be empty.</summary>
    private void Through(InstanceRow r, ExitHull[] hulls, int enter, double mass, double life, double money, int sealedWeek, double[] best)
    {
        int weeks = _instance.Weeks, asOf = _instance.AsOf;
        InstancePlace place = _instance.Places[_place];
        int run = place.RunOut ?? weeks;
        double[] keepAir = _keep[r.Table, _room], lifeAir = _life[r.Table, _room], keepShut = _keep[r.Table, _shut], lifeShut = _life[r.Table, _shut];
        double stands = r.BinsPerMass * place.StandCost, perSound = 1 / r.SoundAtStart;
        for (int t = enter; t < weeks; t++)
        {
            if (t > sealedWeek && t >= asOf && t > enter)
            {
                double m = mass, u = life, paid = money, here = double.NegativeInfinity;
                int emptyBy = Math.Min(weeks, t + run);
                for (int out1 = t; out1 < emptyBy; out1++)
                {
                    double sound = _instance.SoundNear[u] * perSound, most = 0;
                    foreach ((double level, double slope, _) in hulls[out1].Lines) most = Math.Max(most, level + slope * sound);
                    here = Math.Max(here, paid + m * most);
                    m *= keepAir[out1];
                    u += lifeAir[out1];
                    paid -= stands;
                }
                if (emptyBy == weeks && t + run > weeks) here = Math.Max(here, paid + End(r, m, u));
                best[t - asOf] = Math.Max(best[t - asOf], here);
            }
            bool shut = t > sealedWeek;
            mass *= shut ? keepShut[t] : keepAir[t];
            life += shut ? lifeShut[t] : lifeAir[t];
            money -= stands;
        }
        best[weeks - asOf] = Math.Max(best[weeks - asOf], money + End(r, mass, life));
    }

    private double End(InstanceRow r, double mass, double life) => mass * _instance.SoundNear[life] / r.SoundAtStart * _instance.EndPrice * (r.Fresh + r.Crack);
}
