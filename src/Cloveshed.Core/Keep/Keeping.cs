using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Keep;

/// <summary>The air around a lot for a week: °C, percent relative humidity, percent oxygen and carbon dioxide.</summary>
public readonly record struct Climate(double TempC, double Rh, double O2, double Co2);

/// <summary>What about a lot changes how it keeps.</summary>
public sealed record KeepingTraits(KeepClass Keeps, bool Inhibitor, bool Cured);

/// <summary>One week of keeping: the share of its weight that a lot loses, and the share of its storage life that it uses.</summary>
public readonly record struct WeekOfKeeping(double WeightLoss, double LifeUsed);
