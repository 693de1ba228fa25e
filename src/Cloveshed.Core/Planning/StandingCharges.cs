namespace Cloveshed.Core.Planning;

/// <summary>What a scaled bin pays for standing, summed over weeks, so that a stay of any length is one subtraction.</summary>
internal sealed class StandingCharges
{
    private readonly double[][] _upTo;

    internal StandingCharges(PlanningInstance instance, Spot[] spots, Prices prices)
    {
        _upTo = new double[spots.Length][];
        for (int s = 0; s < spots.Length; s++)
        {
            double[] sum = _upTo[s] = new double[instance.Weeks + 1];
            for (int t = 0; t < instance.Weeks; t++) sum[t + 1] = sum[t] + prices.Stand[s, t];
        }
    }

    /// <summary>[week] what standing in a spot costs from the first week to the start of this one.</summary>
    internal double[] Of(int spot) => _upTo[spot];
}
