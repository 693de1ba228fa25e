namespace Cloveshed.Core.Scenarios;

/// <summary>What is really so in one scenario. Indices are those of the planning instance that it was drawn for.</summary>
/// <param name="NetFactor">[lot] true mass over the written.</param>
/// <param name="BinsFactor">[row] true bins over the written: as the mass for what is still to be dug; bins that stand are counted.</param>
/// <param name="StartWeek">[row] week in which the row is there; that of the season or after it: never there.</param>
/// <param name="LossPower">[lot] power of the kept part of each week's weight: 1 as the law.</param>
/// <param name="LifeFactor">[lot] speed of the use of life over the law's.</param>
/// <param name="MeanShift">[lot] true less believed mean of ln g; NaN where the classes were drawn besides.</param>
/// <param name="Sorts">[lot][sort] share by mass of size classes and clove grades.</param>
/// <param name="Under">[lot] share of fit bulbs that no class holds.</param>
/// <param name="Fresh">[row] share that makes grade at its start.</param>
/// <param name="Crack">[row] share that is sound and fails grade at its start.</param>
/// <param name="OrderUnits">[order line].</param>
/// <param name="MarketUnits">[market week of the instance].</param>
/// <param name="HoursLost">[line][week] share of the regular hours that a stoppage takes.</param>
public sealed record Scenario(
    int Number, double[] NetFactor, double[] BinsFactor, int[] StartWeek, double[] LossPower, double[] LifeFactor, double[] MeanShift, double[][] Sorts, double[] Under,
    double[] Fresh, double[] Crack, int[] OrderUnits, int[] MarketUnits, double[][] HoursLost)
{
    /// <summary>Scaled bins over scaled mass at start of a row, as it truly is.</summary>
    internal double BinsPerMass(Planning.PlanningInstance instance, int row) =>
        instance.Rows[row].BinsPerMass * BinsFactor[row] / NetFactor[instance.Rows[row].Lot];
}
