using System.Diagnostics;
using System.Globalization;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.Solver.Highs;
using Google.OrTools.LinearSolver;

namespace Cloveshed.Bench;

/// <summary>
/// The planner's own master program over all room weeks, as it stands after some rounds, given to every solver at hand from scratch.
/// Printed: seconds (median), the ratio to the method that the planner uses, and how far the objective is from it.
/// </summary>
internal static class Backends
{
    private const double MostSeconds = 240;

    public static void Run(string folder, int rounds, int repeats)
    {
        SeasonReading reading = SeasonReader.Read(folder);
        Season season = reading.Season ?? throw new ArgumentException($"{folder} does not hold a sound season.");
        PlanningInstance instance = InstanceBuilding.Build(season, LotKnowing.Know(season), Beliefs.Default);
        var recording = new RecordingSolver(new HighsSolver());
        var clock = Stopwatch.StartNew();
        var limits = new GenerationLimits(1e-9, 1e9, rounds, SearchDepth.Fine, () => clock.Elapsed.TotalSeconds, 2, default);
        using Master master = new RoomSearch(instance, recording).NewMaster(RoomChoice.Free(instance), RunCharges.ForBound(instance), []);
        GenerationResult grown = ColumnGeneration.Run(master, limits);
        RecordedProgram program = recording.Last!;
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{season.Settings.Name}: {season.Lots.Count} lot rows, {season.Settings.Weeks} weeks; master after {grown.Rounds} rounds: {program.Rows.Count} rows, {program.Columns.Count} columns, {program.Columns.Sum(c => c.Entries.Length)} entries; medians of {repeats}"));
        (double Seconds, double Objective, string Status) own = Median(repeats, () => Highs(program, LinearMethod.InteriorPoint));
        Console.WriteLine("| solver | seconds | of the planner's own | objective off by | status |\n| --- | ---: | ---: | ---: | --- |");
        Row("HiGHS interior point with crossover (the planner's)", own, own);
        Row("HiGHS simplex", Median(repeats, () => Highs(program, LinearMethod.ColdSimplex)), own);
        foreach (string backend in (string[])["GLOP", "CLP", "PDLP"]) Row(backend, Median(repeats, () => OrTools(program, backend)), own);
    }

    private static void Row(string name, (double Seconds, double Objective, string Status) it, (double Seconds, double Objective, string Status) own) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"| {name} | {it.Seconds:0.00} | {it.Seconds / own.Seconds:0.0} | {Math.Abs(it.Objective - own.Objective) / Math.Abs(own.Objective):0.0e0} | {it.Status} |"));

    private static (double, double, string) Median(int repeats, Func<(double Seconds, double Objective, string Status)> once)
    {
        var all = new List<(double Seconds, double Objective, string Status)>();
        for (int k = 0; k < repeats; k++)
        {
            all.Add(once());
            if (all[^1].Seconds > MostSeconds / 2) break; // one such run says enough
        }
        return all.OrderBy(x => x.Seconds).ElementAt(all.Count / 2);
    }

    private static (double, double, string) Highs(RecordedProgram program, LinearMethod method)
    {
        using ILinearProgram own = new HighsSolver().NewProgram();
        own.AddRows([.. program.Rows.Select(r => r.Lower)], [.. program.Rows.Select(r => r.Upper)]);
        var batch = new ColumnBatch();
        foreach (RecordedColumn c in program.Columns)
        {
            batch.Open(c.Cost, c.Lower, c.Upper);
            foreach ((int row, double value) in c.Entries) batch.Entry(row, value);
        }
        own.AddColumns(batch);
        var clock = Stopwatch.StartNew();
        LinearStatus status = own.Solve(method, MostSeconds);
        return (clock.Elapsed.TotalSeconds, own.Objective, status.ToString());
    }

    private static (double, double, string) OrTools(RecordedProgram program, string backend)
    {
        using Google.OrTools.LinearSolver.Solver solver = Google.OrTools.LinearSolver.Solver.CreateSolver(backend);
        Constraint[] rows = [.. program.Rows.Select(r => solver.MakeConstraint(r.Lower, r.Upper, ""))];
        Objective objective = solver.Objective();
        foreach (RecordedColumn c in program.Columns)
        {
            Variable x = solver.MakeNumVar(c.Lower, c.Upper, "");
            objective.SetCoefficient(x, c.Cost);
            foreach ((int row, double value) in c.Entries) rows[row].SetCoefficient(x, value);
        }
        objective.SetMaximization();
        solver.SetTimeLimit((long)(MostSeconds * 1000));
        var clock = Stopwatch.StartNew();
        Google.OrTools.LinearSolver.Solver.ResultStatus status = solver.Solve();
        return (clock.Elapsed.TotalSeconds, objective.Value(), status.ToString());
    }
}
