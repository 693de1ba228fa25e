namespace Cloveshed.Core.Lots;

/// <summary>
/// A default that stood in for an empty cell: the dial's name in <see cref="LotDefaults"/>,
/// <see cref="Keep.ClimateDefaults"/> or <see cref="Keep.KeepingParameters"/>, the value as shown, where it is from, and
/// for how many rows (lots, varieties or places) it was taken.
/// </summary>
public sealed record DefaultTaken(string Name, string Value, string Why, int Count);

/// <summary>
/// One number of a set of defaults that can be turned by itself, so that "what would 20% more of it change" is answered
/// by planning again with everything else held.
/// </summary>
public sealed record Dial<T>(string Name, Func<T, double> Read, Func<T, double, T> Write, string Why)
{
    /// <summary>The set with this number multiplied.</summary>
    public T Turned(T of, double factor) => Write(of, Read(of) * factor);
}

/// <summary>Finding one number of a set by name.</summary>
public static class Dial
{
    /// <summary>The dial of that name; an unknown name is the caller's mistake.</summary>
    public static Dial<T> Named<T>(IReadOnlyList<Dial<T>> dials, string name) =>
        dials.FirstOrDefault(d => d.Name == name)
        ?? throw new ArgumentException($"There is no default named '{name}'.", nameof(name));
}
