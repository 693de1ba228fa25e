using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace Cloveshed.Ledger.Facts;

/// <summary>
/// The chain: each fact's hash is SHA-256 (FIPS 180-4) over its own content and the hash before. Every part goes in as its length in
/// bytes (four, high byte first) and its UTF-8, so that no two different facts give the same bytes; what is absent goes in as
/// length 0xFFFFFFFF.
/// </summary>
internal static class FactChain
{
    /// <summary>The form's name goes in first: another form of the chain would never pass for this one.</summary>
    private const string Form = "cloveshed fact 1";

    /// <summary>The hash that a fact must carry; the one that it carries is not looked at.</summary>
    public static string Hash(StoredFact fact)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Append(hash, Form);
        Append(hash, fact.Seq.ToString(CultureInfo.InvariantCulture));
        Append(hash, fact.Id);
        Append(hash, fact.Kind);
        Append(hash, fact.HappenedAt);
        Append(hash, fact.RecordedAt);
        Append(hash, fact.By);
        Append(hash, fact.Device);
        Append(hash, fact.Place);
        Append(hash, fact.Body);
        Append(hash, fact.Corrects);
        Append(hash, fact.Batch);
        Append(hash, fact.Prev);
        return Convert.ToHexStringLower(hash.GetHashAndReset());
    }

    /// <summary>SHA-256 of a document, in lower-case hexadecimal.</summary>
    public static string Digest(ReadOnlySpan<byte> document) => Convert.ToHexStringLower(SHA256.HashData(document));

    private static void Append(IncrementalHash hash, string? part)
    {
        Span<byte> length = stackalloc byte[4];
        if (part is null)
        {
            length.Fill(0xFF);
            hash.AppendData(length);
            return;
        }
        int count = Encoding.UTF8.GetByteCount(part);
        BinaryPrimitives.WriteInt32BigEndian(length, count);
        hash.AppendData(length);
        byte[] rented = System.Buffers.ArrayPool<byte>.Shared.Rent(count);
        Encoding.UTF8.GetBytes(part, rented);
        hash.AppendData(rented, 0, count);
        System.Buffers.ArrayPool<byte>.Shared.Return(rented);
    }
}
