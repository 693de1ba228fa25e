namespace Cloveshed.Ledger;

/// <summary>A place where the ledger is not what it must be.</summary>
/// <param name="Rule">storage, seq, hash, prev, body, kind, head, document or fold.</param>
public sealed record LedgerFlaw(string Rule, string Where, string Found, string Expected);

/// <summary>What a walk over the whole ledger found.</summary>
/// <param name="Flaws">The first thousand.</param>
public sealed record VerifyResult(long Facts, LedgerHead Head, IReadOnlyList<LedgerFlaw> Flaws)
{
    /// <summary>The chain holds, bodies and documents are those that it vouches for, and the read tables are what the facts come to.</summary>
    public bool Ok => Flaws.Count == 0;
}

/// <summary>The read tables, made again. Where the chain itself is broken nothing was made.</summary>
/// <param name="Differences">What the tables held otherwise before.</param>
/// <param name="Rebuilt">False where the chain is broken.</param>
public sealed record RebuildResult(long Facts, LedgerHead Head, IReadOnlyList<LedgerFlaw> Differences, bool Rebuilt)
{
    /// <summary>The tables were already what the facts come to.</summary>
    public bool Ok => Rebuilt && Differences.Count == 0;
}

/// <summary>A copy that was proved before it got its name.</summary>
public sealed record BackupResult(long Facts, LedgerHead Head);

/// <summary>A new ledger that was proved before it got its name.</summary>
public sealed record RestoreResult(long Facts, LedgerHead Head);
