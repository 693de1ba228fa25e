using System.Diagnostics;
using System.Globalization;
using Cloveshed.Check;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.Seasons.Tests.Direct;
using Cloveshed.Seasons.Tests.Odd;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Bench;

/// <summary>
/// The planner beside the season written as one program and given to HiGHS, at several sizes, from two kinds of seasons: values and bounds in the season's
/// currency, seconds, and the planner's value to that program's. Every plan goes through the independent check.
/// </summary>
internal static class Referee
{
    /// <summary>The program takes what goes once from place to place, as the planner's search does.</summary>
    private const int Moves = 1;

    /// <summary>More columns than this and room weeks are held to the plan's, so that the program fits a machine.</summary>
    private const int MostColumns = 150_000;

    /// <summary>Of the planner's own polish: as it is for people.</summary>
    private const int Nodes = int.MaxValue;

    private const double PlanSeconds = 60, Gap = 1e-4;

    private static readonly (string Kind, int Lots, int Weeks, ulong Seed)[] Sizes =
    [
        ("tight", 6, 10, 1), ("tight", 12, 10, 2), ("tight", 12, 16, 3), ("tight", 24, 16, 4), ("tight", 45, 26, 5), ("tight", 90, 52, 6),
        ("rooms", 6, 10, 1), ("rooms", 12, 10, 2), ("rooms", 12, 16, 3), ("rooms", 24, 16, 4),
        ("demo", 6, 10, 0), ("demo", 12, 10, 0), ("demo", 12, 16, 0), ("demo", 24, 16, 0), ("demo", 45, 26, 0), ("demo", 90, 52, 0),
    ];

    public static void All(int seconds)
    {
        Head();
        foreach ((string kind, int lots, int weeks, ulong seed) in Sizes) One(kind, lots, weeks, seed, seconds);
    }

    public static void One(string kind, int lots, int weeks, ulong seed, int seconds, int nodes = Nodes) =>
        Row($"{kind} {lots} x {weeks}, seed {seed}", Season(kind, lots, weeks, seed), seconds, nodes);

    /// <summary>The same season with one thing at a time made easy: where the difference goes, there it comes from.</summary>
    public static void Why(string kind, int lots, int weeks, ulong seed, int seconds)
    {
        Head();
        Season season = Season(kind, lots, weeks, seed);
        Row("as it is", season, seconds);
        Row("no least runs", season with { Lines = [.. season.Lines.Select(line => line with { MinRun = 0 })] }, seconds);
        Row("no set-ups", season with { Lines = [.. season.Lines.Select(line => line with { SetupHours = 0 })] }, seconds);
        Row("no whole orders", season with { Orders = [.. season.Orders.Select(line => line with { Whole = false })] }, seconds);
        Row("no weekly costs of places", season with { Places = [.. season.Places.Select(place => place with { CostPerWeek = 0 })] }, seconds);
        Row("no rooms", season with { Places = [.. season.Places.Select(place => place.Kind == PlaceKind.Sealed ? place with { Kind = PlaceKind.Cold, O2 = null, Co2 = null, RunOutWeeks = null } : place)], SealedRooms = [] }, seconds);
        Row("small units", season with
        {
            Products = [.. season.Products.Select(p => p with { Net = p.Net / 50, UnitCost = p.UnitCost / 50 })],
            Orders = [.. season.Orders.Select(line => line with { Units = line.Units * 50, Price = line.Price / 50, LateCost = line.LateCost / 50, ShortCost = line.ShortCost / 50 })],
            Market = [.. season.Market.Select(row => row with { P10 = row.P10 * 50, P50 = row.P50 * 50, P90 = row.P90 * 50, Price = row.Price / 50 })],
            Stock = [.. season.Stock.Select(row => row with { Units = row.Units * 50 })],
        }, seconds);
    }

    private static Season Season(string kind, int lots, int weeks, ulong seed)
    {
        if (kind != "demo") return TightSeason.Draw(seed, lots, weeks, kind == "rooms");
        Season demo = SeasonReader.Read("data/demo-season").Season ?? throw new InvalidOperationException("data/demo-season does not hold a sound season.");
        return LargeSeason.Cut(demo, lots, weeks);
    }

    private static void Head() =>
        Console.WriteLine("| season | columns | rooms | direct value | its bound | s | plan, rounded | s | plan, polished | s | bound | rounded to direct | polished to direct | worse by, of revenue | remarks |\n| --- | ---: | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | --- |");

    private static void Row(string name, Season season, int seconds, int nodes = Nodes)
    {
        List<string> remarks = [];
        (PlanAnswer rounded, double roundedSeconds) = Planned(season, 0, remarks);
        (PlanAnswer polished, double polishedSeconds) = Planned(season, nodes, remarks);
        foreach (PlanAnswer plan in (PlanAnswer[])[rounded, polished])
            Console.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{name}: {plan.Summary.Value:0} = {string.Join(", ", plan.Summary.Revenues.Select(r => $"{r.Key} {r.Value:0}").Concat(plan.Summary.Costs.Select(c => $"{c.Key} {-c.Value:0}")))}; {plan.Runs.Count(run => !run.FromSorted)} runs, {plan.Rooms.Count} rooms sealed"));
        PlanningInstance instance = InstanceBuilding.Build(season, LotKnowing.Know(season), Beliefs.Default);
        PlanAnswer better = polished.Summary.Value >= rounded.Summary.Value ? polished : rounded;
        bool free = Columns(instance) <= MostColumns;
        DirectQuestion question = new(instance, free ? null : RoomChoice.Of(instance, better.Rooms), Mixed: true, Moves);
        var clock = Stopwatch.StartNew();
        DirectResult direct = DirectModel.Solve(question, seconds, Gap);
        double value = direct.Value * instance.MoneyScale, bound = direct.Bound * instance.MoneyScale;
        // A plan's bound holds for every plan, and so for the one that was found directly; what the program finds generously may pass it by the solver's tolerance.
        foreach (PlanAnswer plan in (PlanAnswer[])[rounded, polished])
            if (value > plan.Summary.Bound + (1e-5 * Math.Abs(value))) remarks.Add(string.Create(CultureInfo.InvariantCulture, $"BOUND {plan.Summary.Bound:0.00} BELOW"));
        if (free && better.Summary.Value > bound + (1e-5 * Math.Abs(value))) remarks.Add("plan above the direct bound");
        if (!double.IsFinite(value))
        {
            remarks.Add("no solution of the program in its time");
            value = double.NaN;
        }

        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {direct.Columns.Length} | {(free ? "free" : "as planned")} | {value:0} | {bound:0} | {clock.Elapsed.TotalSeconds:0} | {rounded.Summary.Value:0} | {roundedSeconds:0} | {polished.Summary.Value:0} | {polishedSeconds:0} | {polished.Summary.Bound:0} | {rounded.Summary.Value / value:0.0000} | {polished.Summary.Value / value:0.0000} | {(value - polished.Summary.Value) / polished.Summary.Revenue:0.00%} | {string.Join("; ", remarks.Prepend($"direct {direct.Status}"))} |"));
    }

    private static (PlanAnswer Plan, double Seconds) Planned(Season season, int nodes, List<string> remarks)
    {
        var clock = Stopwatch.StartNew();
        PlanAnswer plan = new SeasonPlanner(new HighsSolver()).Plan(new PlanRequest(
            season, Beliefs.Default, PlanSeconds, Gap, 1, 1, SearchDepth.Fine, () => clock.Elapsed.TotalSeconds, "", "", [], PolishNodesAtMost: nodes));
        double seconds = clock.Elapsed.TotalSeconds;
        CheckResult check = Checked(season, plan);
        if (!check.Holds) remarks.Add($"BREACH {check.Breaches[0].Rule} {check.Breaches[0].Where}: {check.Breaches[0].Found}, allowed {check.Breaches[0].Allowed} ({check.Breaches.Count} in all)");
        return (plan, seconds);
    }

    private static CheckResult Checked(Season season, PlanAnswer plan)
    {
        string folder = Path.Combine(Path.GetTempPath(), $"referee-{Guid.NewGuid():N}");
        try
        {
            SeasonWriter.Write(season, Path.Combine(folder, "in"));
            AnswerWriter.Write(plan, season, Path.Combine(folder, "out"));
            return PlanCheck.Check(Path.Combine(folder, "in"), Path.Combine(folder, "out"));
        }
        finally
        {
            Directory.Delete(folder, true);
        }
    }

    /// <summary>About how many columns free room weeks would make: ways of every row, each with its ways out; counted no further than what is too many.</summary>
    private static int Columns(PlanningInstance instance)
    {
        RoomPlan[][] plans = [.. Enumerable.Range(0, instance.Places.Length).Select(place => RoomPlan.AllOf(instance, place))];
        // Rooms multiply: two moves between rooms with their own weeks are not taken here, one is.
        double plain = plans.Sum(of => (double)of.Length) * instance.Weeks * instance.Weeks / 6 * (instance.Lines.Length + 2);
        return (int)Math.Min(int.MaxValue, plain * instance.Rows.Length);
    }
}
