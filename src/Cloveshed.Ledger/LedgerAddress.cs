namespace Cloveshed.Ledger;

/// <summary>Where a ledger is: one SQLite file. A database server comes with a later version and is refused by name until then.</summary>
/// <param name="File">The file's path, as given.</param>
public sealed record LedgerAddress(string File)
{
    private const string Sqlite = "sqlite:";

    /// <summary>Where a ledger is when nothing is said: this file in the current folder.</summary>
    public const string DefaultFile = "cloveshed.db";

    /// <summary>The variable of the environment that names the ledger when a command does not.</summary>
    public const string Variable = "CLOVESHED_DB";

    /// <summary>A path, or sqlite: and a path. Anything with another scheme is refused.</summary>
    public static LedgerAddress Parse(string text)
    {
        if (string.IsNullOrWhiteSpace(text))
            throw new LedgerFault(LedgerFaultKind.NotAnAddress, text);
        if (text.StartsWith("postgres://", StringComparison.OrdinalIgnoreCase) || text.StartsWith("postgresql://", StringComparison.OrdinalIgnoreCase))
            throw new LedgerFault(LedgerFaultKind.NotYetServed, WithoutSecret(text));
        string path = text.StartsWith(Sqlite, StringComparison.OrdinalIgnoreCase) ? text[Sqlite.Length..] : text;
        if (string.IsNullOrWhiteSpace(path) || path.Contains("://", StringComparison.Ordinal) || path.Contains('\0', StringComparison.Ordinal) || path == ":memory:")
            throw new LedgerFault(LedgerFaultKind.NotAnAddress, WithoutSecret(text));
        return new LedgerAddress(path);
    }

    /// <summary>What was given, else what the environment says, else the default.</summary>
    public static LedgerAddress Of(string? given, Func<string, string?> variable) =>
        Parse(given ?? (variable(Variable) is { Length: > 0 } named ? named : DefaultFile));

    /// <inheritdoc/>
    public override string ToString() => File;

    /// <summary>An address may carry a password, which no message repeats.</summary>
    private static string WithoutSecret(string text) =>
        text.IndexOf("://", StringComparison.Ordinal) is >= 0 and int scheme && text.IndexOf('@', StringComparison.Ordinal) is >= 0 and int at && at > scheme
            ? text[..(scheme + 3)] + "…" + text[at..] : text;
}
