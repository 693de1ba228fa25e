namespace Cloveshed.Core.Planning;

/// <summary>How a solve left a master: its columns, what each takes and lacks, the prices and the value.</summary>
internal sealed record MasterStand(int Columns, double[] Values, double[] ReducedCosts, double[] Duals, double Value);
