using System.Globalization;

namespace Cloveshed.Core.Quantities;

/// <summary>
/// A price for a mass, kept in the unit in which it was agreed, so that 1.10 a pound stays 1.10. Prices in different units of
/// one currency are compared by what a kilogram costs.
/// </summary>
public readonly record struct MassPrice
{
    private readonly decimal grams;

    private MassPrice(Money money, decimal grams)
    {
        Money = money;
        this.grams = grams;
    }

    /// <summary>The price of one unit of mass.</summary>
    public Money Money { get; }

    /// <summary>The mass that the price is for, in grams; the default value is a price of nothing for a kilogram.</summary>
    public decimal Grams => grams == 0 ? 1000m : grams;

    /// <summary>For a pound.</summary>
    public static MassPrice PerPound(Money money) => new(money, Mass.GramsPerPound);

    /// <summary>For a kilogram.</summary>
    public static MassPrice PerKilogram(Money money) => new(money, 1000m);

    /// <summary>For 100 lb, as the trade quotes by the hundredweight.</summary>
    public static MassPrice PerHundredweight(Money money) => new(money, 100m * Mass.GramsPerPound);

    /// <summary>What a mass costs, not rounded: see <see cref="Money.Rounded"/>.</summary>
    public Money Of(Mass mass) => Money * (mass.Grams / Grams);

    /// <summary>The same price for a pound, not rounded.</summary>
    public Money ToPerPound() => Money * (Mass.GramsPerPound / Grams);

    /// <summary>The same price for a kilogram, not rounded.</summary>
    public Money ToPerKilogram() => Money * (1000m / Grams);

    /// <summary>The price and its mass: "1.10 USD for 453.59237 g".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Money} for {Grams} g");
}
