using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;

namespace Cloveshed.Core.Cuts;

/// <summary>What the sizer is to be set for.</summary>
/// <param name="Curve">The lot's bulb weights.</param>
/// <param name="Law">Diameters of a given weight.</param>
/// <param name="MeanLaw">The mean weight of a given diameter: where nominal cuts are set.</param>
/// <param name="Chart">The buyer's classes, small to large.</param>
/// <param name="PricePerKg">Of each class.</param>
/// <param name="Tolerance">Off-size share by weight that a box may hold, under and over its class together.</param>
/// <param name="StepG">The sizer's grid.</param>
/// <param name="MostOutlets">Boxes that can be packed at once; null: as many as classes.</param>
/// <param name="Inspection">An inspector whose sample must pass; null: the expected share alone counts.</param>
/// <param name="InspectionRisk">The most that boxes may be refused by that inspector.</param>
public sealed record CutQuestion(
    LognormalMixture Curve, MassLaw Law, MassLaw MeanLaw, IReadOnlyList<SizeClass> Chart, IReadOnlyList<double> PricePerKg, double Tolerance,
    double StepG, int? MostOutlets = null, Grading.Inspection? Inspection = null, double InspectionRisk = 0.1)
{
    /// <summary>The step that a sizer's scale can tell apart with certainty; common practice, no source.</summary>
    public const double UsualStepG = 0.1;

    /// <summary>Where nobody names prices: each class a tenth dearer than the one below, the smallest 1 a kilogram.</summary>
    public static double[] UsualPrices(int classes) => [.. Enumerable.Range(0, classes).Select(c => Math.Pow(1.1, c))];
}

/// <summary>One box on the sizer: the class that it is sold as, and the classes merged into it.</summary>
/// <param name="Class">Index in the chart of the class whose name and price it has.</param>
/// <param name="Last">Index of the largest class in it; equal to Class where none is merged into it.</param>
/// <param name="MinG">Bulbs from this weight on, up to the next box's.</param>
public readonly record struct Box(int Class, int Last, double MinG);

/// <summary>What lands in a box.</summary>
/// <param name="Share">Of the lot, by mass.</param>
/// <param name="Below">Share of the box, by mass, under the diameter of its class.</param>
/// <param name="Above">Share of the box over the upper limit of its largest class.</param>
/// <param name="GivenAway">Share of the box that is of a larger class merged into it: sold for less than it is.</param>
/// <param name="RefusalRisk">Of the question's inspector; null without one.</param>
/// <param name="Paid">Price per kg that it fetches: its own, or the next lower class's where it is off tolerance.</param>
public sealed record BoxFound(Box Box, double Share, double Below, double Above, double GivenAway, double MeanG, double? RefusalRisk, bool Holds, double Paid);

/// <summary>A whole setting of the sizer and what it is worth.</summary>
/// <param name="OverG">Bulbs from this weight on are taken off the top; null: none are.</param>
/// <param name="Value">Money per kilogram of the lot.</param>
public sealed record Setting(IReadOnlyList<BoxFound> Boxes, double? OverG, double Value);

/// <summary>What one gram up or down of a cut changes, in money per kilogram of the lot.</summary>
public readonly record struct GramWorth(double MinG, double Up, double Down);

/// <summary>The best setting, the nominal one, and the price of a gram at each cut.</summary>
/// <param name="Merged">Classes sold under the name of a smaller one.</param>
/// <param name="Skipped">Classes under the first box: left for the cracker.</param>
public sealed record CutAnswer(Setting Best, Setting Nominal, IReadOnlyList<int> Merged, IReadOnlyList<int> Skipped, IReadOnlyList<GramWorth> Grams);
