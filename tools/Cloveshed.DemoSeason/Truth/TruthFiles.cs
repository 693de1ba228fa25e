using Cloveshed.DemoSeason.Lots;
using Cloveshed.DemoSeason.Text;

namespace Cloveshed.DemoSeason.Truth;

/// <summary>The lots as they really are. It is kept apart from the season: a planner that reads it has cheated.</summary>
public static class TruthFiles
{
    public static string Lots(IReadOnlyList<Lot> lots)
    {
        ArgumentNullException.ThrowIfNull(lots);
        Table t = new(
            "lot", "place", "harvested", "bins", "net", "mean_g", "cv", "small_share", "main_mean_g", "main_cv", "small_mean_g", "small_cv",
            "law_shift", "fresh_share", "crack_share", "weight_loss_factor", "rot_factor", "life_factor");
        foreach (Lot l in lots)
        {
            BulbTruth b = l.Bulbs;
            foreach (Standing s in l.Stands)
            {
                t.Row(
                    l.Id, s.Place, l.Harvested, s.Bins, Table.Round(s.Bins * l.NetPerBin, 0), Table.Round(b.MeanG, 3), Table.Round(b.Cv, 4),
                    Table.Round(b.SmallShare, 4), Table.Round(b.MainMean, 3), Table.Round(b.MainCv, 4), Table.Round(b.SmallMean, 3),
                    Table.Round(b.SmallCv, 4), Table.Round(l.LawShift, 4), Table.Round(l.FreshShare, 4), Table.Round(l.CrackShare, 4),
                    Table.Round(l.Keeping.WeightLoss, 4), Table.Round(l.Keeping.Rot, 4), Table.Round(l.Keeping.LifeUsed, 4));
            }
        }

        return t.ToString();
    }

    public static string Readme() =>
        """
        # The demo season's hidden truth

        What really stands in the lots of `../demo-season`, what the market really takes and what weather really comes. All of it is
        invented and made by `tools/Cloveshed.DemoSeason` from the same seed. **Nothing that plans may read this folder**: it is for
        playing the season out afterwards, so that closings, calibration and re-planning meet honest differences.

        `lots.csv`, a row for each lot and place where it stands:

        | column | meaning |
        |---|---|
        | harvested | the real day; the season's file expects another for most lots still in the ground |
        | bins, net | real bins and pounds on that day, or on the season's first day for what stood before |
        | mean_g, cv | of single bulbs by count, over both kinds of bulbs |
        | small_share | share by count of the small kind; the rest are the main kind |
        | main_mean_g, main_cv, small_mean_g, small_cv | each kind is lognormal in mass |
        | law_shift | added to the variety's ln g at a given diameter |
        | fresh_share, crack_share | real shares by mass at that start |
        | weight_loss_factor | times the loss of weight that the keeping model expects |
        | rot_factor | times the rate at which sound mass is lost |
        | life_factor | times the storage life used |

        `market.csv`: units that can really be sold in each week. `place-weeks.csv`: the open yard's real air.

        """.ReplaceLineEndings("\n");
}
