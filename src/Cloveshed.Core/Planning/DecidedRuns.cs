namespace Cloveshed.Core.Planning;

/// <summary>Runs that have been decided: their set-up hours by line and week, and the least mass-in that some must reach.</summary>
internal sealed record DecidedRuns(double[,] SetUpHours, Dictionary<(int Lot, int Line, int Week), double> LeastMass);
