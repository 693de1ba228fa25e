using System.Globalization;

namespace Cloveshed.Core.Quantities;

/// <summary>
/// An amount in one currency, exact in decimal. It is not rounded until <see cref="Rounded"/> is asked for, because a total of
/// rounded parts and a rounded total differ, and the caller must choose which one the paper shows. There is no way in from a
/// double. Bounded at ±1e15; beyond that every operation refuses.
/// </summary>
public readonly record struct Money : IComparable<Money>
{
    private const decimal Bound = 1_000_000_000_000_000m;

    private Money(decimal amount, Currency currency)
    {
        if (amount is < -Bound or > Bound)
        {
            throw new ArgumentOutOfRangeException(nameof(amount), amount, "An amount of money lies between -1e15 and 1e15.");
        }

        Amount = amount;
        Currency = currency;
    }

    /// <summary>In whole units of the currency, with whatever decimals it was made with.</summary>
    public decimal Amount { get; }

    /// <summary>Whose amount it is.</summary>
    public Currency Currency { get; }

    /// <summary>As given.</summary>
    public static Money From(decimal amount, Currency currency) => new(amount, currency);

    /// <summary>From whole minor units (cents), exact.</summary>
    public static Money FromMinorUnits(long minorUnits, Currency currency) => new(minorUnits / MinorUnitsIn(currency), currency);

    /// <summary>To the currency's minor unit, a half to the even one, so that many roundings do not drift one way.</summary>
    public Money Rounded() => new(Math.Round(Amount, Currency.Decimals, MidpointRounding.ToEven), Currency);

    /// <summary>Whole minor units, rounded as <see cref="Rounded"/>: what an allocation splits.</summary>
    public long ToMinorUnits() => (long)(Rounded().Amount * MinorUnitsIn(Currency));

    /// <summary>The sum of two amounts of one currency; other currencies are refused.</summary>
    public static Money operator +(Money left, Money right) => new(left.Amount + Same(left, right).Amount, left.Currency);

    /// <summary>The difference of two amounts of one currency; other currencies are refused.</summary>
    public static Money operator -(Money left, Money right) => new(left.Amount - Same(left, right).Amount, left.Currency);

    /// <summary>The opposite amount.</summary>
    public static Money operator -(Money money) => new(-money.Amount, money.Currency);

    /// <summary>So many times, not rounded.</summary>
    public static Money operator *(Money money, decimal factor) => new(money.Amount * factor, money.Currency);

    /// <summary>Less; other currencies are refused.</summary>
    public static bool operator <(Money left, Money right) => left.CompareTo(right) < 0;

    /// <summary>Less or equal; other currencies are refused.</summary>
    public static bool operator <=(Money left, Money right) => left.CompareTo(right) <= 0;

    /// <summary>More; other currencies are refused.</summary>
    public static bool operator >(Money left, Money right) => left.CompareTo(right) > 0;

    /// <summary>More or equal; other currencies are refused.</summary>
    public static bool operator >=(Money left, Money right) => left.CompareTo(right) >= 0;

    /// <summary>By amount; other currencies are refused.</summary>
    public int CompareTo(Money other) => Amount.CompareTo(Same(this, other).Amount);

    /// <summary>The amount as it is, with at least the currency's decimals, and the code: "12.50 USD".</summary>
    public override string ToString()
    {
        string format = "0." + new string('0', Currency.Decimals) + new string('#', 28 - Currency.Decimals);
        return Amount.ToString(format, CultureInfo.InvariantCulture) + " " + Currency.Code;
    }

    private static decimal MinorUnitsIn(Currency currency) => currency.Decimals switch { 0 => 1m, 2 => 100m, 3 => 1000m, _ => throw new ArgumentOutOfRangeException(nameof(currency)) };

    private static Money Same(Money left, Money right) =>
        left.Currency == right.Currency
            ? right
            : throw new InvalidOperationException($"{left.Currency} and {right.Currency} do not add or compare: convert one first.");
}
