namespace Cloveshed.Core.Planning;

/// <summary>
/// What any room weeks would be worth, told from the prices of weeks that were solved: a sum over rooms of what each gains by its weeks beyond what its
/// rows are worth at those prices, filled up with what gains most per bin. True where it was made, near the truth around there (Benders 1962: recalled, not seen).
/// Paths with one move are counted, so that it is a guide and no bound.
/// </summary>
internal sealed class RoomCut
{
    private readonly Dictionary<(int Place, RoomSchedule Weeks), (double Gain, double Rent)> _gain = [];
    private double _base;

    /// <summary>The weeks of a room that are compared: sealed in one of some weeks, opened in any later one or not at all.</summary>
    /// <param name="Ways">Of the room, made once for all cuts.</param>
    internal sealed record Weeks(int Place, int[] Sealed, RoomWays Ways);

    /// <summary>Never sealed is one of them where the room is not sealed already.</summary>
    internal static RoomSchedule[] Compared(PlanningInstance instance, Weeks room) =>
    [
        .. room.Sealed.SelectMany(s => Enumerable.Range(0, instance.Weeks - instance.AsOf + 1).Select(o => instance.AsOf + o).Where(o => o > s)
            .Select(o => new RoomSchedule(s, o < instance.Weeks ? o : null))),
        .. instance.Places[room.Place].SealedWeek is null ? [new RoomSchedule(null, null)] : Array.Empty<RoomSchedule>(),
    ];

    internal double Of(IReadOnlyList<int> rooms, RoomChoice choice)
    {
        double sum = _base;
        foreach (int p in rooms) sum += Gain(p, choice.OfPlace[p]!.Value);
        return sum;
    }

    internal double Gain(int place, RoomSchedule weeks) => _gain.TryGetValue((place, weeks), out var known) ? known.Gain : double.NegativeInfinity;

    /// <summary>What one bin's space in the room is worth with these weeks: what the last bin to find room gains. Null where it is not known.</summary>
    internal double? Rent(int place, RoomSchedule weeks) => weeks.Sealed is not null && _gain.TryGetValue((place, weeks), out var known) ? known.Rent : null;

    /// <param name="spots">Of the choice that the prices are of.</param>
    /// <param name="held">The choice, and what it was worth; null for free weeks, whose value is then that of the best weeks.</param>
    internal static RoomCut Of(PlanningInstance instance, IReadOnlyList<Weeks> rooms, Spot[] spots, Prices prices, RoomChoice? held, double value, GenerationLimits limits)
    {
        PricedExit[][][] exits = Exits.OfAll(instance, RunCharges.ForBound(instance), prices, limits.Threads);
        var charges = new StandingCharges(instance, spots, prices);
        var search = new OneMoveSearch(instance, spots);
        var options = new ParallelOptions { MaxDegreeOfParallelism = limits.Threads };
        double[] worth = new double[instance.Rows.Length];
        var hulls = new ExitHull[instance.Rows.Length][];
        Parallel.For(0, instance.Rows.Length, options, row =>
        {
            PricedExit[][] ways = exits[instance.Rows[row].Lot];
            worth[row] = search.Best(row, ways, prices, charges, 0, 0).Bound;
            hulls[row] = [.. ways.Select(week => ExitHull.Of(instance.Rows[row], week))];
        });
        var cut = new RoomCut();
        (Weeks Room, int Sealed)[] tasks = [.. rooms.SelectMany(r => r.Sealed.Select(s => (r, s)))];
        (double Gain, double Rent)[]?[] gains = new (double, double)[tasks.Length][];
        Parallel.For(0, tasks.Length, options, k => gains[k] = limits.Over ? null : Gains(instance, tasks[k].Room, tasks[k].Sealed, spots, charges, worth, hulls));
        for (int k = 0; k < tasks.Length; k++)
            for (int o = 0; gains[k] is { } gain && o < gain.Length; o++)
                cut._gain[(tasks[k].Room.Place, new RoomSchedule(tasks[k].Sealed, o + instance.AsOf < instance.Weeks ? o + instance.AsOf : null))] = gain[o];
        // A room that is never sealed gains nothing by it.
        foreach (Weeks r in rooms.Where(r => instance.Places[r.Place].SealedWeek is null)) cut._gain[(r.Place, new RoomSchedule(null, null))] = (0, 0);
        double here = held is null ? rooms.Sum(r => cut._gain.Where(g => g.Key.Place == r.Place).Select(g => g.Value.Gain).DefaultIfEmpty(0).Max())
            : rooms.Sum(r => cut._gain.GetValueOrDefault((r.Place, held.OfPlace[r.Place]!.Value)).Gain);
        cut._base = value - here;
        return cut;
    }

    /// <summary>[opened - AsOf] what the room gains, sealed in a week, and what the last bin does.</summary>
    private static (double Gain, double Rent)[] Gains(PlanningInstance instance, Weeks room, int sealedWeek, Spot[] spots, StandingCharges charges, double[] worth, ExitHull[][] hulls)
    {
        int count = instance.Weeks - instance.AsOf + 1;
        var each = new List<(double PerBin, double Bins)>[count];
        double[] gain = new double[count];
        for (int o = 0; o < count; o++) each[o] = [];
        for (int row = 0; row < instance.Rows.Length; row++)
        {
            InstanceRow r = instance.Rows[row];
            bool home = r.Place == room.Place;
            int spot = Array.FindIndex(spots, s => s.Place == r.Place && s.Kind != SpotKind.FreeSealed);
            if (spot < 0) spot = Array.FindIndex(spots, s => s.Place == r.Place);
            if (!home && instance.Places[r.Place].Kind == Seasons.PlaceKind.Sealed) continue;
            double[] through = room.Ways.Worth(row, hulls[row], charges.Of(spot), spots[spot].Stand, sealedWeek);
            for (int o = 0; o < count; o++)
            {
                double more = through[o] - worth[row];
                // What stands in the room from the start has no other way; at worst it is let go.
                if (home) gain[o] += r.Mass * Math.Max(more, -worth[row]);
                else if (more > 0) each[o].Add((more / r.BinsPerMass, r.Mass * r.BinsPerMass));
            }
        }
        double[] rent = new double[count];
        double stood = instance.Rows.Where(r => r.Place == room.Place).Sum(r => r.Mass * r.BinsPerMass);
        for (int o = 0; o < count; o++)
        {
            double left = instance.Places[room.Place].Capacity - stood;
            foreach ((double perBin, double bins) in each[o].OrderByDescending(e => e.PerBin))
            {
                if (left <= 0) break;
                gain[o] += perBin * Math.Min(left, bins);
                left -= bins;
                if (left <= 0) rent[o] = perBin;
            }
        }
        return [.. gain.Zip(rent)];
    }
}
