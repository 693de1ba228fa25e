using Cloveshed.Core.Keep.Clocks;

namespace Cloveshed.Core.Scenarios;

// What a season is unsure of, each thing a record of its own with our defaults. A scale of 0 makes it sure.

/// <summary>Sizes of a lot: as far as the 80% bands of what is known of it go, times this scale.</summary>
/// <param name="OfKind">How much of a lot's error of the mean is its variety's, where nothing else is known of the lot; our choice.</param>
/// <param name="Classes">Times what the classes' bands say beyond what the mean moves; 0: only the mean is unsure.</param>
public sealed record SizeSpread(double Scale = 1, double OfKind = 0.7, double Classes = 1);

/// <summary>Fresh, crack and waste shares at the start: as far as the 80% bands of what is known of the lot go, times this scale.</summary>
public sealed record SoundSpread(double Scale = 1);

/// <summary>
/// Mass of a lot: sds of its logarithm where lots.csv has no net_low and net_high (which are read as an 80% band). Common practice, no
/// source: an estimate in the ground is off by an eighth, tallied bins by a twentieth, a scale by a hundredth.
/// </summary>
/// <param name="Common">Part of the variance that all lots still in the ground have in common: the year's weather.</param>
public sealed record YieldSpread(double Estimated = 0.125, double Dug = 0.05, double Weighed = 0.01, double Common = 0.3);

/// <summary>Keeping clocks: sds of the logarithm of their speeds over the law's.</summary>
/// <param name="Weight">Of the weekly loss of weight: that of <see cref="ClockPrior.Default"/>.</param>
/// <param name="Life">Of the weekly use of storage life: between those of sprouting and decay there, which partly even out.</param>
/// <param name="Common">Part of the variance that all lots have in common. Common practice, no source.</param>
public sealed record ClockSpread(double Weight = 0.25, double Life = 0.25, double Common = 0.3);

/// <summary>Weeks by which digging is early or late, rounded to whole weeks. Sds; common practice, no source: rain holds up a whole valley, and each field a little more. What is dug straight into a room is on its day: a room that is to be shut does not wait.</summary>
public sealed record HarvestSpread(double Valley = 0.7, double Field = 0.5);

/// <summary>
/// Demand. Firm lines are as written. Forecast lines are off by a product's common error and their own (sds of the logarithm; common
/// practice, no source). Market weeks are as their p10, p50 and p90 say.
/// </summary>
/// <param name="MarketCommon">Correlation of one product's market weeks; common practice, no source.</param>
public sealed record DemandSpread(double Forecast = 0.25, double Product = 0.1, double Market = 1, double MarketCommon = 0.5);

/// <summary>Stoppages of a line: the chance that a week has one, and the mean share of the week's regular hours that it takes. Common practice, no source.</summary>
public sealed record StoppageSpread(double Chance = 0.08, double MeanShare = 0.15);

/// <summary>All of it.</summary>
public sealed record ScenarioAssumptions(
    SizeSpread Sizes, SoundSpread Sound, YieldSpread Yield, ClockSpread Clock, HarvestSpread Harvest, DemandSpread Demand, StoppageSpread Stoppages)
{
    /// <summary>Our defaults.</summary>
    public static ScenarioAssumptions Default { get; } = new(new(), new(), new(), new(), new(), new(), new());

    /// <summary>Nothing is unsure: every scenario is the season as written.</summary>
    public static ScenarioAssumptions Sure { get; } = new(
        new(0), new(0), new(0, 0, 0), new(0, 0), new(0, 0), new(0, 0, 0), new(0, 0));
}
