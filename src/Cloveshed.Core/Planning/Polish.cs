namespace Cloveshed.Core.Planning;

/// <summary>
/// What rounding decided is decided again by branch and bound over the paths at hand: all of it at once where that ends soon, and else some weeks, lots or a line at a
/// time while the rest stays, as long as that makes the plan better.
/// </summary>
internal sealed class Polish(PlanningInstance instance, ILinearSolver solver)
{
    private const double CoarsestGap = 1e-3, FinerGap = 1e-4, FinestGap = 1e-6;

    /// <summary>Shares of the time: of one solve, of the first over all, of runs with units in parts, and of units.</summary>
    private const double OneSolve = 0.06, AtOnce = 0.1, InParts = 0.7, Units = 0.15;

    /// <summary>Shares of the time in which a season of every way is decided all at once: with one thread before the windows, else beside them, with units in parts and then whole.</summary>
    private const double Before = 0.4, BesideInParts = 0.6, BesideUnits = 0.2;

    /// <summary>Seconds of one solve at most: it can't be stopped while it goes on.</summary>
    private const double AllAtMost = 60;

    /// <summary>A season of no more than so many yes and no is tried all at once.</summary>
    private const int Small = 700;

    /// <summary>Where holding the plan as it is takes more than this share of the time, the season is too large to be decided piece by piece.</summary>
    private const double TooSlow = 0.1;

    /// <summary>The solve of a window is stopped after so many nodes.</summary>
    private const int NodesOfOne = 200;

    /// <summary>A better plan than the one given, or null where the season is too large or nothing was found.</summary>
    /// <param name="plan">The plan that rounding made.</param>
    internal Master? Run(RoomChoice choice, IReadOnlyList<Findings> found, AnswerBuilding plan, PolishLimits limits)
    {
        double began = limits.Elapsed(), until = began + limits.Seconds;
        int windowsLeft = limits.Windows;
        var models = new List<PolishModel>();
        if (Model() is not { } model) return null;
        models.Add(model);
        var search = new PolishSearch(models, plan, limits.Seed, TooSlow * limits.Seconds);
        bool small = model.Choices.Count(c => c.IsYesNo) <= Small, beside = model.HasEveryWay && windowsLeft > 0 && limits.Threads > 1;
        double atOnce = model.HasEveryWay && windowsLeft > 0 && !beside ? Before : AtOnce;
        int nodesAtOnce = windowsLeft == 0 ? limits.Nodes : Math.Min(limits.Nodes, NodesOfOne);
        bool tooSlow = limits.Elapsed() - began >= TooSlow * limits.Seconds, decided = !tooSlow && small && All(search, atOnce, nodesAtOnce);
        if (!tooSlow && !decided && windowsLeft > 0)
        {
            PolishSearch? whole = null;
            if (beside) Parallel.Invoke(() => whole = Whole(), Windows);
            else Windows();
            if (whole is not null) search.Join(whole);
            Improve(until, FinerGap, _ => true);
        }

        foreach (PolishModel other in models.Skip(1)) other.Dispose();
        if (search.Best is { } best)
        {
            model.Take(best);
            return model.Master;
        }
        model.Dispose();
        return null;

        PolishModel? Model() => PolishModel.Of(instance, solver, choice, found, plan);

        bool All(PolishSearch of, double share, int nodes) => of.Decide([_ => true], Math.Min(AllAtMost, share * limits.Seconds), FinestGap, nodes).Complete;

        void Windows()
        {
            while (models.Count < limits.Threads - (beside ? 1 : 0)) models.Add(Model()!);
            search.Parts();
            Improve(until - ((1 - InParts) * limits.Seconds), model.IsLarge ? FinerGap : CoarsestGap, _ => true);
            search.Units(() => Improve(until - ((1 - InParts - Units) * limits.Seconds), FinerGap, c => c.IsOrder));
        }

        PolishSearch Whole()
        {
            using PolishModel alone = Model()!;
            var all = new PolishSearch([alone], plan, limits.Seed, TooSlow * limits.Seconds);
            all.Parts();
            All(all, BesideInParts, limits.Nodes);
            all.Units(() => All(all, BesideUnits, limits.Nodes));
            return all;
        }

        void Improve(double end, double gap, Func<PolishChoice, bool> what)
        {
            int weeks = instance.Weeks - instance.AsOf;
            bool Over() => limits.Elapsed() >= end || windowsLeft <= 0 || limits.Cancel.IsCancellationRequested;
            for (int size = Math.Max(2, weeks / 8); size < 2 * weeks && !Over(); size = size * 3 / 2 + 1, gap = Math.Max(FinestGap, gap / 4))
                for (bool better = true; better && !Over();)
                {
                    better = false;
                    foreach (Func<PolishChoice, bool>[] windows in PolishWindows.Of(instance, size).Chunk(models.Count))
                    {
                        if (Over()) break;
                        Func<PolishChoice, bool>[] free = [.. windows.Select<Func<PolishChoice, bool>, Func<PolishChoice, bool>>(w => c => w(c) && what(c))];
                        better |= search.Decide(free, Math.Min(end - limits.Elapsed(), Math.Max(1, limits.Seconds * OneSolve)), gap, Math.Min(limits.Nodes, NodesOfOne)).Gained;
                        windowsLeft -= free.Length;
                    }
                }
        }
    }
}

/// <summary>How long the polish may go on. Nodes of one branch and bound, and windows in all: for stops that repeat.</summary>
internal sealed record PolishLimits(double Seconds, int Nodes, int Windows, int Seed, int Threads, Func<double> Elapsed, CancellationToken Cancel);
