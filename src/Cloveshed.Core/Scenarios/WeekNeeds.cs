using Cloveshed.Core.Planning;

namespace Cloveshed.Core.Scenarios;

/// <summary>
/// What a week should make: what is due to be shipped now, and the stock that the plan means to have at the week's end, less what is there.
/// Scaled mass by product.
/// </summary>
internal sealed class WeekNeeds
{
    private readonly PlanningInstance instance;

    public WeekNeeds(PlanningInstance instance)
    {
        this.instance = instance;
        Wanted = new double[instance.Products.Length];
        Margin = new double[instance.Products.Length];
    }

    /// <summary>[product] mass still to be made.</summary>
    public double[] Wanted { get; }

    /// <summary>[product] scaled money that the least of it brings beyond its making, per scaled mass.</summary>
    public double[] Margin { get; }

    /// <summary>Mass still wanted of a sort: of organic supply only, and of any.</summary>
    public (double Organic, double Any) Of(int sort)
    {
        double organic = 0, any = 0;
        for (int q = 0; q < Wanted.Length; q++)
        {
            if (instance.Products[q].Sort != sort) continue;
            if (instance.Products[q].Organic && instance.OrganicApart) organic += Wanted[q];
            else any += Wanted[q];
        }
        return (organic, any);
    }

    /// <summary>The margin of what is wanted of a sort that a supply may make, weighted by mass.</summary>
    public double MarginOf(int sort, int supply)
    {
        double sum = 0, mass = 0;
        for (int q = 0; q < Wanted.Length; q++)
        {
            if (instance.Products[q].Sort != sort || instance.Products[q].Organic && instance.OrganicApart && supply == 0) continue;
            sum += Wanted[q] * Margin[q];
            mass += Wanted[q];
        }
        return mass > 0 ? sum / mass : 0;
    }
}
