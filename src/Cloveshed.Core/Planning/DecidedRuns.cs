namespace Cloveshed.Core.Planning;

/// <summary>
/// Runs that have been decided: their set-up hours by line and week, and the least mass-in that some must reach. For the polish,
/// which decides them anew, also the runs that may be open, the lots' rows and weeks that may be finished, and the lots and weeks whose fresh runs are unsplit.
/// </summary>
internal sealed record DecidedRuns(
    double[,] SetUpHours, Dictionary<(int Lot, int Line, int Week), double> LeastMass,
    IReadOnlyCollection<(int Lot, int Line, int Week)>? Open = null, IReadOnlyCollection<(int Row, int Week)>? Finishes = null,
    IReadOnlyCollection<(int Lot, int Week)>? Unsplit = null);
