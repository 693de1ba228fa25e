using Cloveshed.DemoSeason.Draws;
using Cloveshed.DemoSeason.Text;
using NodaTime;

namespace Cloveshed.DemoSeason.Lots;

/// <summary>
/// samples.csv: bulbs drawn from the truth of each sampled lot, one by one. A lot in the ground was test-dug in June and its bulbs'
/// masses brought to the day of digging by the grower, which is why they speak for the lot as it will be.
/// </summary>
public static class Samples
{
    public static string File(IReadOnlyList<LotKnowledge> known, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(known);
        Table t = new("lot", "date", "weight_g", "diameter_mm", "defect");
        foreach (LotKnowledge k in known.Where(k => k.Sampled > 0))
        {
            // Each lot has its own stream, so that adding a lot leaves the samples of the others alone.
            Draw draw = Draw.For(seed, "sample " + k.Lot.Id);
            LocalDate date = Scenario.FirstWeek.PlusDays(-draw.Whole(1, 12));
            bool measured = draw.Chance(0.6);
            for (int i = 0; i < k.Sampled; i++)
            {
                double g = k.Lot.Bulbs.Bulb(draw);
                decimal? mm = measured ? Table.Round(Diameter(draw, k.Lot, g), 1) : null;
                t.Row(k.Lot.Id, date, Table.Round(g, 1), mm, Defect(draw, k.Lot));
            }
        }

        return t.ToString();
    }

    private static double Diameter(Draw draw, Lot lot, double g)
    {
        double ln = Steady.Ln(g) - lot.Variety.MassA - lot.LawShift;
        return Steady.Exp((ln + draw.Normal(0, lot.Variety.MassS)) / lot.Variety.MassB);
    }

    private static string? Defect(Draw draw, Lot lot)
    {
        double at = draw.Share();
        if (at < lot.FreshShare)
        {
            return null;
        }

        if (at < lot.FreshShare + lot.CrackShare)
        {
            return Kinds(draw, ("skin", 0.42), ("shatter", 0.28), ("mechanical", 0.30));
        }

        return lot.CarriedOver
            ? Kinds(draw, ("decay", 0.40), ("mold", 0.25), ("sprout", 0.35))
            : Kinds(draw, ("decay", 0.52), ("mold", 0.40), ("other", 0.08));
    }

    private static string Kinds(Draw draw, params (string Name, double Weight)[] of) => of[draw.Weighted([.. of.Select(k => k.Weight)])].Name;
}
