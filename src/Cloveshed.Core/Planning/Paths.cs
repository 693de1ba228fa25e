namespace Cloveshed.Core.Planning;

/// <summary>A stay: from the start of week Enter in a spot, until the next stay or the end.</summary>
public readonly record struct Stay(int Spot, int Enter);

/// <summary>
/// What a row's mass may do: stand in one spot after another and leave by an exit. The state at the exit is of its week's
/// start: MassRatio of the start mass, life used, and the two shares. A Stand exit has Week = Weeks.
/// </summary>
public sealed record PathColumn(int Row, Stay[] Stays, Exit Exit, double MassRatio, double Life, double Fresh, double Crack)
{
    public bool SameAs(PathColumn other) => Row == other.Row && Exit == other.Exit && Stays.AsSpan().SequenceEqual(other.Stays);

    public int Key()
    {
        var hash = new HashCode();
        hash.Add(Row);
        hash.Add(Exit);
        foreach (Stay s in Stays) hash.Add(s);
        return hash.ToHashCode();
    }
}

/// <summary>How a row's mass changes along its stays.</summary>
public static class PathStates
{
    /// <summary>Loss and life of one week in a spot: a free sealed room keeps as well as the better of air and atmosphere.</summary>
    public static (double Loss, double Life) Week(KeepTable table, Spot spot, int week)
    {
        double loss = table.Loss[spot.Place][week], life = table.Life[spot.Place][week];
        double sealedLoss = table.SealedLoss[spot.Place][week], sealedLife = table.SealedLife[spot.Place][week];
        return spot.Kind == SpotKind.FreeSealed ? (Math.Min(loss, sealedLoss), Math.Min(life, sealedLife))
            : spot.UnderAtmosphere(week) ? (sealedLoss, sealedLife) : (loss, life);
    }

    /// <summary>Mass ratio and life used at the start of each week from the row's start to Weeks inclusive.</summary>
    public static (double[] MassRatio, double[] Life) Along(PlanningInstance instance, Spot[] spots, int row, Stay[] stays)
    {
        InstanceRow r = instance.Rows[row];
        double[] mass = new double[instance.Weeks + 1], life = new double[instance.Weeks + 1];
        double w = 1, u = r.LifeAtStart;
        int stay = 0;
        for (int t = r.Start; ; t++)
        {
            mass[t] = w;
            life[t] = u;
            if (t == instance.Weeks) return (mass, life);
            while (stay + 1 < stays.Length && stays[stay + 1].Enter <= t) stay++;
            (double loss, double used) = Week(instance.Tables[r.Table], spots[stays[stay].Spot], t);
            w *= 1 - loss;
            u += used;
        }
    }

    /// <summary>[table, spot][week]: the part of its weight that garlic keeps, and the life that it uses.</summary>
    public static (double[,][] Keep, double[,][] Life) Weekly(PlanningInstance instance, Spot[] spots)
    {
        double[,][] keep = new double[instance.Tables.Length, spots.Length][], life = new double[instance.Tables.Length, spots.Length][];
        for (int k = 0; k < instance.Tables.Length; k++)
            for (int s = 0; s < spots.Length; s++)
            {
                (double Loss, double Life)[] weeks = [.. Enumerable.Range(0, instance.Weeks).Select(t => Week(instance.Tables[k], spots[s], t))];
                keep[k, s] = [.. weeks.Select(w => 1 - w.Loss)];
                life[k, s] = [.. weeks.Select(w => w.Life)];
            }
        return (keep, life);
    }

    public static PathColumn Column(PlanningInstance instance, Spot[] spots, int row, Stay[] stays, Exit exit)
    {
        (double[] mass, double[] life) = Along(instance, spots, row, stays);
        int t = exit.Week;
        double sound = SoundOf(instance, row, life[t]);
        InstanceRow r = instance.Rows[row];
        return new PathColumn(row, stays, exit, mass[t], life[t], r.Fresh * sound, r.Crack * sound);
    }

    /// <summary>The part of what was sound at the row's start that is sound when so much life is used.</summary>
    public static double SoundOf(PlanningInstance instance, int row, double life) =>
        instance.SoundShare(life) / instance.Rows[row].SoundAtStart;
}
