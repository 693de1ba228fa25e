namespace Cloveshed.Core.Scenarios;

/// <summary>One run of a replayed week: of a batch, or of sorted-out bulbs of a lot (Batch null). Masses scaled.</summary>
internal sealed class WeekRun(int number, int line, int lot, Batch? batch, double massIn, double startMass, double hours)
{
    public int Number => number;
    public int Line => line;
    public int Lot => lot;
    public Batch? Batch => batch;
    public double MassIn => massIn;
    public double StartMass => startMass;
    public double Hours => hours;

    /// <summary>[sort] what it gives, and the part that the plan packs first.</summary>
    public double[] Gives { get; init; } = [];
    public double[] PackFirst { get; init; } = [];

    /// <summary>Fresh runs: sound mass that is not packed.</summary>
    public double SortedOut { get; set; }
    public Dictionary<int, double> Made { get; } = [];
    public Dictionary<int, double> Seed { get; } = [];
}

/// <summary>Sorted-out bulbs that wait for the cracker.</summary>
internal sealed class Waiting(int lot, int week, double mass)
{
    public int Lot => lot;
    public int Week => week;
    public double Mass { get; set; } = mass;
}
