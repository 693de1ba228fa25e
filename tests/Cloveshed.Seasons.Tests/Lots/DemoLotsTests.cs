using System.Globalization;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.SeasonFiles;
using Cloveshed.Seasons.Tests.Demo;

namespace Cloveshed.Seasons.Tests.Lots;

/// <summary>The demo season's lots, as known from its files, against its hidden truth: held-out lots, drawn by code that knows nothing of ours.</summary>
public class DemoLotsTests
{
    private static readonly Season Demo = SeasonReader.Read(Path.Combine(Committed.Data, "demo-season")).Season!;

    private static readonly Dictionary<string, Dictionary<string, string>> Truth =
        Committed.Rows("demo-truth/lots.csv").GroupBy(t => t["lot"], StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First(), StringComparer.Ordinal);

    [Fact]
    public void Four_in_five_true_class_shares_of_sampled_lots_lie_in_their_bands()
    {
        int inside = 0, all = 0;
        double squared = 0;
        foreach (LotKnowledge k in LotKnowing.Know(Demo).Lots.Values.Where(k => k.Sources.SampledBulbs > 0))
        {
            double[] truth = TrueShares(k);
            for (int c = 0; c < truth.Length; c++)
            {
                all++;
                inside += k.ClassBands[c].Low <= truth[c] && truth[c] <= k.ClassBands[c].High ? 1 : 0;
                squared += k.Sources.Mean == KnownBy.Samples ? Math.Pow(k.ClassShares[c] - truth[c], 2) : 0;
            }
        }

        Assert.InRange(inside / (double)all, 0.75, 0.85);
        Assert.True(Math.Sqrt(squared / all) < 0.025);
    }

    [Fact]
    public void Knowing_leans_on_no_default_but_what_the_files_leave_open()
    {
        string[] taken = [.. LotKnowing.Know(Demo).Defaults.Select(d => d.Name)];
        Assert.DoesNotContain("bulb_mean_g", taken);
        Assert.DoesNotContain("crack_share", taken);
    }

    private static double[] TrueShares(LotKnowledge k)
    {
        Dictionary<string, string> t = Truth[k.Lot.Text];
        double Figure(string column) => double.Parse(t[column], CultureInfo.InvariantCulture);
        MassLaw law = Demo.Varieties.Single(v => v.Id == k.Variety).BulbLaw;
        law = law with { A = law.A + Figure("law_shift") };
        var main = new SizeCurve(Figure("main_mean_g"), Figure("main_cv"));
        var small = new SizeCurve(Figure("small_mean_g"), Figure("small_cv"));
        double smallMass = Figure("small_share") * small.MeanG, mainMass = (1 - Figure("small_share")) * main.MeanG;
        return [.. Demo.Sizes.Select(s =>
            ((mainMass * main.MassShare(law, s.MinMm, s.MaxMm)) + (smallMass * small.MassShare(law, s.MinMm, s.MaxMm))) / (mainMass + smallMass))];
    }
}
