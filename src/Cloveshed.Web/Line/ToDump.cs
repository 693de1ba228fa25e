using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Line;

/// <summary>Which bins of a lot a machine's figures are of.</summary>
internal enum DumpBasis
{
    /// <summary>Those that the adopted plan gives this machine.</summary>
    Planned,

    /// <summary>Those that it gives the lot's other line: none are planned here.</summary>
    OtherLine,

    /// <summary>All that stands: no adopted plan runs the lot.</summary>
    All,
}

/// <summary>
/// The bins of a lot that are to be dumped, the one basis of cartons, pounds and sheets: sizer and drum ask the same question of the same plan, so that
/// their figures can stand side by side.
/// </summary>
/// <param name="Mass">As weighed when they are dumped, in the season's unit.</param>
/// <param name="Bins">Whole bins.</param>
internal sealed record ToDump(double Mass, double Bins, DumpBasis Basis)
{
    /// <param name="rows">Of one lot, not empty.</param>
    /// <param name="fresh">For the sizer; else for the cracker and the seed line, which share the drum.</param>
    public static ToDump Of(ShedReading shed, LotRow[] rows, bool fresh)
    {
        RunRow[] runs = [.. (shed.Book?.RunsOf[rows[0].Lot] ?? []).Where(run => !run.FromSorted)];
        RunRow[] here = [.. runs.Where(run => run.Mode == LineMode.Fresh == fresh)], dumped = here.Length > 0 ? here : runs;
        double net = rows.Sum(row => row.Net), bins = rows.Sum(row => row.Bins);
        // Bins go with the mass at the start: shrinking frees none.
        return dumped.Sum(run => run.MassIn) is > 0 and var mass
            ? new(Math.Round(mass, 0), Math.Ceiling((net > 0 ? dumped.Sum(run => run.MassAtStart) / net * bins : 0) - 1e-6), here.Length > 0 ? DumpBasis.Planned : DumpBasis.OtherLine)
            : new(Math.Round(net, 0), Math.Ceiling(bins - 1e-6), DumpBasis.All);
    }
}
