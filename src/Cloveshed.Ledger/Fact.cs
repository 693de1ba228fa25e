using System.Text.Json;
using Cloveshed.Ledger.Facts;

namespace Cloveshed.Ledger;

/// <summary>A fact as whoever saw it made hands it in. Handed in again it is the same fact.</summary>
/// <param name="Id">UUID version 7, made where the fact was made.</param>
/// <param name="Kind">One of <see cref="FactKinds"/>.</param>
/// <param name="HappenedAt">When it happened, with the offset of the place where it did; a correction of something past happened then.</param>
/// <param name="By">Who says so, as a role or device name; never a person's name.</param>
/// <param name="Body">A JSON object of the kind's form; without "v" it is version 1.</param>
/// <param name="Corrects">The fact that this one takes the place of.</param>
public sealed record NewFact(
    Guid Id, string Kind, DateTimeOffset HappenedAt, string By, string Device, string Place, JsonElement Body, Guid? Corrects = null);

/// <summary>A fact as the ledger holds it, for good.</summary>
/// <param name="Seq">Its number: 1, 2, 3 and so on without a gap.</param>
/// <param name="RecordedAt">When the ledger took it, UTC.</param>
/// <param name="Batch">The id of the first fact that was taken with it.</param>
/// <param name="Prev">The hash of the fact before; 64 zeros for the first.</param>
/// <param name="Hash">SHA-256 over all else, in lower-case hexadecimal.</param>
public sealed record Fact(
    long Seq, Guid Id, string Kind, DateTimeOffset HappenedAt, DateTimeOffset RecordedAt, string By, string Device, string Place,
    JsonElement Body, Guid? Corrects, Guid Batch, string Prev, string Hash)
{
    /// <summary>Whether the hash is that of the rest.</summary>
    public bool HashHolds => FactChain.Hash(StoredFact.Of(this)) == Hash;
}

/// <summary>The last fact's number and hash; 0 and 64 zeros for a ledger without facts. Noted elsewhere, it proves all that came before.</summary>
public sealed record LedgerHead(long Seq, string Hash)
{
    /// <summary>Before the first fact.</summary>
    public static LedgerHead None { get; } = new(0, new string('0', 64));
}

/// <summary>Why a fact was not taken.</summary>
/// <param name="Rule">The rule's name, such as fact-changed; for a season's faults season- and the reader's rule.</param>
public sealed record Refusal(Guid Id, string Rule, string Message, string Remedy);

/// <summary>The answer to an append: all of the batch is in the ledger for good, or nothing of it.</summary>
public abstract record Appended
{
    private Appended()
    {
    }

    /// <param name="Again">Nothing was new: this batch had been taken before, and this is the same answer again.</param>
    public sealed record Accepted(IReadOnlyList<(Guid Id, long Seq)> Facts, bool Again) : Appended;

    /// <summary>Nothing was written.</summary>
    public sealed record Refused(IReadOnlyList<Refusal> Refusals) : Appended;
}
