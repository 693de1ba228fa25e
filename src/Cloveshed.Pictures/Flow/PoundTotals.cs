using Cloveshed.Core;
using Cloveshed.Core.Answers;
using Cloveshed.Core.Seasons;
using Cloveshed.Pictures.Paths;

namespace Cloveshed.Pictures.Flow;

/// <summary>
/// Where a season's pounds go, summed from the answer's rows with no model of our own, in the season's unit. Index 0 of the
/// pairs: what stood when the season was read; 1: what is dug later. What season-files.md says decides each split: fresh
/// and crack shares of the path at the run's week, and the mode's kept share.
/// </summary>
public sealed record PoundTotals(
    double[] Source, double[] Shrink, double[] Fresh, double[] Crack, double[] Seed, double[] SoldAsIs, double[] Discarded, double[] Standing,
    IReadOnlyList<(string Name, double Mass)> Packed, double Sorted, double FreshSkins, double FreshWaste, double SortedCracked,
    IReadOnlyList<(string Name, double Mass)> Cloves, double CloveTotal, double CrackSkins, double CrackWaste,
    double SeedCloves, double SeedServed, double SeedSkins, double SeedWaste)
{
    public static PoundTotals From(Season season, PlanAnswer answer)
    {
        var book = new PathBook(season, answer);
        int Side(string path) => book[path].FirstWeek > season.Settings.AsOfWeek ? 1 : 0;
        double[] source = new double[2];
        double[] standing = new double[2];
        double[] shrink = new double[2];
        double[] sold = new double[2];
        double[] discarded = new double[2];
        var byMode = new Dictionary<LineMode, double[]> { [LineMode.Fresh] = new double[2], [LineMode.Crack] = new double[2], [LineMode.Seed] = new double[2] };
        Dictionary<LineMode, double> kept = season.Yields.ToDictionary(y => y.Mode, y => y.KeptShare);
        HashSet<(LotId, PlaceId)> paths = [.. book.All.Select(p => (p.Lot, p.FromPlace))];
        foreach (LotRow row in season.Lots.Where(l => paths.Contains((l.Lot, l.Place))))
        {
            source[Math.Max(season.Settings.WeekOf(row.Harvested), 0) > season.Settings.AsOfWeek ? 1 : 0] += row.Net;
        }
        foreach (PathLine path in book.All)
        {
            int side = Side(path.Path);
            standing[side] += path.EndMass;
            shrink[side] += path.EndMassAtStart - path.EndMass;
        }
        foreach (AsIsRow row in answer.AsIs)
        {
            (row.Discarded ? discarded : sold)[Side(row.Path)] += row.Mass;
            shrink[Side(row.Path)] += row.MassAtStart - row.Mass;
        }
        double freshSkins = 0, freshWaste = 0, crackSkins = 0, crackWaste = 0, cloves = 0, seedCloves = 0, seedSkins = 0, seedWaste = 0, sortedCracked = 0;
        foreach (RunRow run in answer.Runs)
        {
            double share = kept[run.Mode];
            if (run.Path is not { } path)
            {
                sortedCracked += run.MassIn;
                cloves += share * run.MassIn;
                crackSkins += (1 - share) * run.MassIn;
                continue;
            }
            byMode[run.Mode][Side(path)] += run.MassIn;
            shrink[Side(path)] += run.MassAtStart - run.MassIn;
            PathWeek state = book[path].State(run.Week);
            double fit = run.MassIn * (run.Mode == LineMode.Crack ? state.FreshShare + state.CrackShare : state.FreshShare);
            switch (run.Mode)
            {
                case LineMode.Fresh:
                    freshSkins += (1 - share) * fit;
                    freshWaste += run.MassIn * (1 - state.FreshShare - state.CrackShare);
                    break;
                case LineMode.Crack:
                    cloves += share * fit;
                    crackSkins += (1 - share) * fit;
                    crackWaste += run.MassIn - fit;
                    break;
                default:
                    seedCloves += share * fit;
                    seedSkins += (1 - share) * fit;
                    seedWaste += run.MassIn - fit;
                    break;
            }
        }
        Dictionary<ProductId, Product> products = season.Products.ToDictionary(p => p.Id);
        List<string> order = [.. season.Sizes.Select(s => s.Id.Text).Reverse(), .. season.CloveGrades.Select(g => g.Id.Text).Reverse()];
        List<(string, double)> By(ProductForm form) => [.. answer.Made.Where(m => products[m.Product].Form == form)
            .GroupBy(m => products[m.Product].From).OrderBy(g => order.IndexOf(g.Key)).Select(g => (g.Key, g.Sum(m => m.Mass)))];
        return new PoundTotals(
            source, shrink, byMode[LineMode.Fresh], byMode[LineMode.Crack], byMode[LineMode.Seed], sold, discarded, standing,
            By(ProductForm.Bulb), answer.Sorted.Sum(s => s.Mass), freshSkins, freshWaste, sortedCracked, By(ProductForm.Clove), cloves,
            crackSkins, crackWaste, seedCloves, answer.Seed.Sum(s => s.Cloves), seedSkins, seedWaste);
    }
}
