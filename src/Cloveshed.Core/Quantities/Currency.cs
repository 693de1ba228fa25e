namespace Cloveshed.Core.Quantities;

/// <summary>
/// A currency by its ISO 4217 code, with the number of decimals of its minor unit. The default value is XXX, the standard's
/// code for "no currency", so that an uninitialised amount can never be added to a real one.
/// </summary>
public readonly record struct Currency
{
    // The codes whose minor unit is not a hundredth, from ISO 4217:2015 list one (from memory; checked in the tests against the
    // culture data of the platform where that has the currency).
    private static readonly Dictionary<string, int> OtherDecimals = new(StringComparer.Ordinal)
    {
        ["BIF"] = 0, ["CLP"] = 0, ["DJF"] = 0, ["GNF"] = 0, ["ISK"] = 0, ["JPY"] = 0, ["KMF"] = 0, ["KRW"] = 0, ["PYG"] = 0,
        ["RWF"] = 0, ["UGX"] = 0, ["VND"] = 0, ["VUV"] = 0, ["XAF"] = 0, ["XOF"] = 0, ["XPF"] = 0, ["XXX"] = 0,
        ["BHD"] = 3, ["IQD"] = 3, ["JOD"] = 3, ["KWD"] = 3, ["LYD"] = 3, ["OMR"] = 3, ["TND"] = 3,
    };

    private readonly string? code;

    private Currency(string code) => this.code = code;

    /// <summary>The United States dollar.</summary>
    public static Currency Usd { get; } = new("USD");

    /// <summary>Three capital letters.</summary>
    public string Code => code ?? "XXX";

    /// <summary>Decimals of the minor unit: 2 unless the standard says otherwise.</summary>
    public int Decimals => OtherDecimals.TryGetValue(Code, out int decimals) ? decimals : 2;

    /// <summary>Any three capital letters are taken: a new currency must not wait for a new version.</summary>
    public static Currency FromCode(string code) =>
        code is { Length: 3 } && code.All(char.IsAsciiLetterUpper)
            ? new(code)
            : throw new ArgumentException($"A currency is an ISO 4217 code of three capital letters, such as USD, not '{code}'.", nameof(code));

    /// <summary>The code.</summary>
    public override string ToString() => Code;
}
