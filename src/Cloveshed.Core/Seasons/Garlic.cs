using Cloveshed.Core.Sizes;
using NodaTime;

namespace Cloveshed.Core.Seasons;

/// <summary>sizes.csv: one class of the chart; MinMm inclusive, MaxMm exclusive, null for no upper bound. Small to large.</summary>
public sealed record SizeClass(SizeClassId Id, string? Code, double MinMm, double? MaxMm);

/// <summary>clove-grades.csv: a window of clove width, min inclusive, max exclusive, null for no upper bound.</summary>
public sealed record CloveGrade(CloveGradeId Id, double MinMm, double? MaxMm);

/// <summary>How long a variety keeps, in the trade's three words.</summary>
public enum KeepClass { Short, Medium, Long }

/// <summary>ln g = A + B ln mm, residual standard deviation S (of ln g).</summary>
public sealed record MassLaw(double A, double B, double S);

/// <summary>varieties.csv. CloveLaw is over the width in mm at which a clove passes a round hole.</summary>
public sealed record Variety(
    VarietyId Id, MassLaw BulbLaw, KeepClass? Keeps, double? ClovesPerBulb, double? CloveCv, MassLaw? CloveLaw);

/// <summary>Fitness for planting, best first; a need for B is served by A or B.</summary>
public enum SeedClass { A, B, C }

/// <summary>How a lot's net mass is known.</summary>
public enum LotState { Estimated, Dug, Weighed }

/// <summary>
/// lots.csv: one lot in one place. Net, Bins and the two shares are as of the later of Harvested, the season's as-of date
/// and its first week. Key (Lot, Place).
/// </summary>
public sealed record LotRow(
    LotId Lot, PlaceId Place, VarietyId Variety, string Field, LocalDate Harvested, double Bins, double Net, LotState? State,
    double? NetLow, double? NetHigh, bool Organic, bool? Cured, bool Inhibitor, double? FreshShare, double? CrackShare,
    SeedClass? SeedClass, double? MeanG, double? Cv, LocalDate? Ready, bool Hold);

/// <summary>What a sizer counted of a lot so far.</summary>
/// <param name="BinsRun">Bins that these bulbs came out of; at least one.</param>
public sealed record SizerCounted(LotId Lot, int BinsRun, WeightHistogram Counts);

/// <summary>What a sampler found wrong with a bulb.</summary>
public enum Defect { None, Mold, Decay, Sprout, Shatter, Mechanical, Skin, Other }

/// <summary>samples.csv: one sampled bulb.</summary>
public sealed record SampleBulb(LotId Lot, LocalDate Date, double WeightG, double? DiameterMm, Defect Defect);

/// <summary>What a line does.</summary>
public enum LineMode { Fresh, Crack, Seed }

/// <summary>yields.csv: mass out of the line's good products per mass in of fit bulbs.</summary>
public sealed record ModeYield(LineMode Mode, double KeptShare);
