using Cloveshed.DemoSeason.Basin;
using Cloveshed.DemoSeason.Draws;
using NodaTime;

namespace Cloveshed.DemoSeason.Lots;

/// <summary>
/// The bulbs of a lot as they are: two kinds by count, the main crop and the plants that stayed small, each lognormal, so that
/// no single lognormal fits them quite. Masses in g; Cv is the standard deviation over the mean.
/// </summary>
public sealed record BulbTruth(double SmallShare, double MainMean, double MainCv, double SmallMean, double SmallCv)
{
    public double MeanG => ((1 - SmallShare) * MainMean) + (SmallShare * SmallMean);

    public double Cv
    {
        get
        {
            double main = MainMean * MainMean * (1 + (MainCv * MainCv));
            double small = SmallMean * SmallMean * (1 + (SmallCv * SmallCv));
            double square = ((1 - SmallShare) * main) + (SmallShare * small);
            return Math.Sqrt(square - (MeanG * MeanG)) / MeanG;
        }
    }

    /// <summary>One bulb's mass in g.</summary>
    public double Bulb(Draw draw)
    {
        ArgumentNullException.ThrowIfNull(draw);
        bool small = draw.Chance(SmallShare);
        (double mean, double cv) = small ? (SmallMean, SmallCv) : (MainMean, MainCv);
        double variance = Steady.Ln(1 + (cv * cv));
        return mean * Steady.Exp(draw.Normal(-variance / 2, Math.Sqrt(variance)));
    }
}

/// <summary>How a lot's keeping departs from the usual: factors on the loss of weight, on decay and on the life used.</summary>
public sealed record KeepingTruth(double WeightLoss, double Rot, double LifeUsed);

/// <summary>Where bins of a lot stand when the season begins.</summary>
public sealed record Standing(string Place, int Bins);

/// <summary>
/// A lot as it really is (or will be, once dug). Only what a shed would know of it goes into the season's files, by way of
/// <see cref="LotKnowledge"/>; the rest is the hidden truth.
/// </summary>
/// <param name="Harvested">The real day; the files may expect another.</param>
/// <param name="NetPerBin">Real pounds per bin at harvest, or at the season's start if that is later.</param>
/// <param name="LawShift">Added to the variety's ln g at a given diameter: a flat or a tall lot.</param>
public sealed record Lot(
    string Id, Variety Variety, string Field, LocalDate Harvested, IReadOnlyList<Standing> Stands, double NetPerBin,
    BulbTruth Bulbs, double LawShift, double FreshShare, double CrackShare, KeepingTruth Keeping,
    bool Organic, bool Cured, bool Inhibitor, string? SeedClass, bool Hold, bool CarriedOver)
{
    public int Bins => Stands.Sum(s => s.Bins);

    public double Net => Bins * NetPerBin;
}
