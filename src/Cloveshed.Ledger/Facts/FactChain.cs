using System.Buffers;
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

    private const int LengthBytes = 4;

    /// <summary>The hash that a fact must carry; the one that it carries is not looked at.</summary>
    public static string Hash(StoredFact fact)
    {
        ReadOnlySpan<string?> parts =
        [
            Form, fact.Seq.ToString(CultureInfo.InvariantCulture), fact.Id, fact.Kind, fact.HappenedAt, fact.RecordedAt, fact.By, fact.Device, fact.Place,
            fact.Body, fact.Corrects, fact.Batch, fact.Prev,
        ];
        int most = 0;
        foreach (string? part in parts)
            most += LengthBytes + (part is null ? 0 : Encoding.UTF8.GetMaxByteCount(part.Length));
        // One buffer and one call: thirteen parts handed over one by one took longer than the hashing.
        byte[] buffer = ArrayPool<byte>.Shared.Rent(most);
        int length = 0;
        foreach (string? part in parts)
            length += Put(part, buffer.AsSpan(length));
        string hash = Convert.ToHexStringLower(SHA256.HashData(buffer.AsSpan(0, length)));
        ArrayPool<byte>.Shared.Return(buffer);
        return hash;
    }

    /// <summary>SHA-256 of a document, in lower-case hexadecimal.</summary>
    public static string Digest(ReadOnlySpan<byte> document) => Convert.ToHexStringLower(SHA256.HashData(document));

    private static int Put(string? part, Span<byte> into)
    {
        if (part is null)
        {
            into[..LengthBytes].Fill(0xFF);
            return LengthBytes;
        }
        int count = Encoding.UTF8.GetBytes(part, into[LengthBytes..]);
        BinaryPrimitives.WriteInt32BigEndian(into, count);
        return LengthBytes + count;
    }
}
