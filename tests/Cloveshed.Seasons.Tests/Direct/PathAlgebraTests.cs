using Cloveshed.Core.Planning;
using static Cloveshed.Seasons.Tests.Direct.HandMaster;

namespace Cloveshed.Seasons.Tests.Direct;

/// <summary>What a path takes of each row of the master, against the formula written out. One unit of it is one scaled pound at the start.</summary>
public sealed class PathAlgebraTests
{
    private static readonly HandMaster At = new();
    private static readonly double[] Shares = At.Instance.Lots[0].Known.ClassShares, Grades = At.Instance.Lots[0].Known.GradeShares;

    /// <summary>Bins per scaled pound of lot A in the yard (60 bins, 6000 lb), scaled.</summary>
    private static readonly double B = 60 * At.Pounds / 6000 / At.Bins;

    // Spots: yard, cold, then the room loaded as a cold place, then the room loaded to be sealed.
    private const int Sealed = 3;

    /// <summary>
    /// Hours of a line for a scaled pound run of a lot of so many pounds, its set-up spread over the most that can be run: the lot, or
    /// what the hours and the week's people leave after one set-up.
    /// </summary>
    private static double Hours(double rate, double hours, double setUp, double lot) =>
        At.Pounds * (1 / rate + setUp / Math.Min(lot, (hours - setUp) * rate));

    [Fact]
    public void Run_fresh_in_a_week_of_few_people_with_the_small_bulbs_cracked_a_week_later()
    {
        (double w, double sound) = At.State(0, Yard, Cold);
        // 60 person-hours for 4 heads: 15 h. The whole of lot A is 8000 lb.
        double fit = w * 0.8 * sound * 0.9, sorted = w * 0.15 * sound + fit * (1 - Shares[M]);
        var rows = At.Rows;
        At.Path(0, new Exit(ExitKind.Fresh, 2, Pack, 1UL << M, Crack, 3, -1), new Stay(Yard, 0), new Stay(Cold, 1)).UpTo(double.PositiveInfinity).Is(
            -3 * B * At.Bins / At.Dollars,
            (rows.Row[0], 1),
            (rows.Stand[Yard, 0], -B), (rows.Stand[Yard, 1], B), (rows.Stand[Cold, 1], -B), (rows.Stand[Cold, 2], B),
            (rows.Hour[Pack, 2], w * Hours(100, 15, 0.5, 8000)),
            (rows.Supply[M, 0, 2], -fit * Shares[M]),
            (rows.Hour[Crack, 3], sorted * Hours(60, 30, 0.25, double.PositiveInfinity)),
            (rows.Supply[G2, 0, 3], -sorted * 0.8 * Grades[1]));
        Assert.All(new[] { Shares[0], Shares[M], Shares[L], Grades[0], Grades[1] }, share => Assert.InRange(share, 0.02, 0.98));
    }

    [Fact]
    public void Run_fresh_with_all_that_is_sorted_out_let_go()
    {
        double fit = 0.75 * 0.9;
        double[] shares = At.Instance.Lots[1].Known.ClassShares;
        At.Path(2, new Exit(ExitKind.Fresh, 0, Pack, 1UL << M | 1UL << L, -1, -1, -1), new Stay(Yard, 0)).Is(0,
            (At.Rows.Row[2], 1), (At.Rows.Hour[Pack, 0], Hours(100, 25, 0.5, 4000)),
            // Organic: a supply of its own.
            (At.Rows.Supply[M, 1, 0], -fit * shares[M]), (At.Rows.Supply[L, 1, 0], -fit * shares[L]));
    }

    [Fact]
    public void Cracked_whole()
    {
        (double w, double sound) = At.State(0, Yard);
        At.Path(0, new Exit(ExitKind.Crack, 1, Crack, 0, -1, -1, -1), new Stay(Yard, 0)).Is(0,
            (At.Rows.Row[0], 1), (At.Rows.Stand[Yard, 0], -B), (At.Rows.Stand[Yard, 1], B),
            (At.Rows.Hour[Crack, 1], w * Hours(60, 30, 0.25, 8000)),
            (At.Rows.Supply[G2, 0, 1], -w * 0.95 * sound * 0.8 * Grades[1]));
    }

    [Fact]
    public void Cracked_for_seed()
    {
        (double w, double sound) = At.State(0, Yard, Yard);
        double cloves = w * 0.8 * sound * 0.75;
        At.Path(0, new Exit(ExitKind.Seed, 2, SeedLine, 0, -1, -1, 0), new Stay(Yard, 0)).Is(cloves * 2 * At.Pounds / At.Dollars,
            (At.Rows.Row[0], 1), (At.Rows.Stand[Yard, 0], -B), (At.Rows.Stand[Yard, 2], B),
            // 60 h of one head: 59 x 50 lb is less than the lot.
            (At.Rows.Hour[SeedLine, 2], w * Hours(50, 60, 1, 8000)), (At.Rows.Seed[0], cloves));
    }

    [Fact]
    public void Sold_as_is_by_what_it_weighs_then()
    {
        (double w, _) = At.State(0, Yard);
        At.Path(0, new Exit(ExitKind.SoldAsIs, 1, -1, 0, -1, -1, 0), new Stay(Yard, 0)).Is(w * 0.2 * At.Pounds / At.Dollars,
            (At.Rows.Row[0], 1), (At.Rows.Stand[Yard, 0], -B), (At.Rows.Stand[Yard, 1], B), (At.Rows.AsIs[0, 1], w));
    }

    [Fact]
    public void Discarded_at_once() => At.Path(0, new Exit(ExitKind.Discard, 0, -1, 0, -1, -1, -1), new Stay(Yard, 0)).Is(0, (At.Rows.Row[0], 1));

    [Fact]
    public void Standing_in_a_sealed_room_at_the_end_takes_of_what_the_room_may_hold_to_the_end()
    {
        KeepTable table = At.Instance.Tables[At.Instance.Rows[0].Table];
        double w = 1 - table.Loss[Yard][0], life = At.Instance.Rows[0].LifeAtStart + table.Life[Yard][0];
        for (int t = 1; t < 4; t++)
        {
            w *= 1 - Math.Min(table.Loss[Room][t], table.SealedLoss[Room][t]);
            life += Math.Min(table.Life[Room][t], table.SealedLife[Room][t]);
        }
        double sound = At.Instance.SoundShare(life) / At.Instance.SoundShare(At.Instance.Rows[0].LifeAtStart);
        At.Path(0, new Exit(ExitKind.Stand, 4, -1, 0, -1, -1, -1), new Stay(Yard, 0), new Stay(Sealed, 1)).Is(
            w * 0.95 * sound * 0.1 * At.Pounds / At.Dollars - 4 * B * At.Bins / At.Dollars,
            (At.Rows.Row[0], 1), (At.Rows.Stand[Yard, 0], -B), (At.Rows.Stand[Yard, 1], B), (At.Rows.Stand[Sealed, 1], -B), (At.Rows.Out[Sealed, 4], B));
    }

    [Fact]
    public void Leaving_a_sealed_room_takes_of_what_the_room_may_let_out_that_week() =>
        At.Path(0, new Exit(ExitKind.Discard, 3, -1, 0, -1, -1, -1), new Stay(Yard, 0), new Stay(Sealed, 1), new Stay(Cold, 3)).Is(
            -(4 + 3) * B * At.Bins / At.Dollars,
            (At.Rows.Row[0], 1), (At.Rows.Stand[Yard, 0], -B), (At.Rows.Stand[Yard, 1], B), (At.Rows.Stand[Sealed, 1], -B), (At.Rows.Stand[Sealed, 3], B),
            (At.Rows.Out[Sealed, 3], B));

    [Fact]
    public void A_decided_run_counts_toward_its_least_mass()
    {
        var run = (0, Pack, 1);
        var decided = new HandMaster(decided: new DecidedRuns(new double[3, 4], new() { [run] = 300 / At.Pounds }));
        (double w, _) = decided.State(0, Yard);
        Written path = decided.Path(0, new Exit(ExitKind.Fresh, 1, Pack, 0, -1, -1, -1), new Stay(Yard, 0));
        Assert.Equal(-w, path.Entries.Single(e => e.Row == decided.Rows.LeastRun[run]).Value, 1e-12);
        Assert.Equal(-300 / At.Pounds, decided.Rows.Upper[decided.Rows.LeastRun[run]], 1e-12);
    }
}
