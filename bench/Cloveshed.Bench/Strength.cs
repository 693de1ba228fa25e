using System.Diagnostics;
using System.Globalization;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.Solver.Highs;

namespace Cloveshed.Bench;

/// <summary>
/// The linear model of a season, and of so many times its lots, over all room weeks: value (scaled money), bound and processor time, round by round.
/// </summary>
internal static class Strength
{
    public static void Run(string folder, int times, double gap)
    {
        Season season = SeasonReader.Read(folder).Season ?? throw new ArgumentException($"{folder} does not hold a sound season.");
        if (times > 1) season = ManyFold.Of(season, times);
        using var here = Process.GetCurrentProcess();
        double Cpu()
        {
            here.Refresh();
            return here.TotalProcessorTime.TotalSeconds;
        }
        var clock = Stopwatch.StartNew();
        double cpu = Cpu();
        PlanningInstance instance = InstanceBuilding.Build(season, LotKnowing.Know(season), Beliefs.Default);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"built {clock.Elapsed.TotalSeconds:0.0} s, processor {Cpu() - cpu:0.0} s"));
        var limits = new GenerationLimits(gap, 1e9, 100, SearchDepth.Fine, () => clock.Elapsed.TotalSeconds, 2, default);
        using Master master = new RoomSearch(instance, new HighsSolver()).NewMaster(RoomChoice.Free(instance), RunCharges.ForBound(instance), []);
        GenerationResult result = ColumnGeneration.Run(master, limits, double.NegativeInfinity, (round, value, bound) =>
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{round} value {value:0.000} bound {bound:0.000} gap {(bound - value) / value:0.00000} rows {master.RowCount} columns {master.ColumnCount} s {clock.Elapsed.TotalSeconds:0.0} processor {Cpu() - cpu:0.0}")));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"end {result.Value:0.000} {result.Bound:0.000} processor {Cpu() - cpu:0.0} s, {master.RowCount} rows"));
    }
}
