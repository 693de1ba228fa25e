namespace Cloveshed.Core.Scenarios;

/// <summary>A run that the plan has this week, as it is meant to be made. Masses at start.</summary>
internal sealed class Wish(int path, PolicyExit exit, double mass)
{
    /// <summary>A part of a run that is no change worth making. Our choice.</summary>
    public const double Trifle = 0.02;

    public int Path => path;
    public PolicyExit Exit => exit;
    public double Mass { get; set; } = mass;
}
