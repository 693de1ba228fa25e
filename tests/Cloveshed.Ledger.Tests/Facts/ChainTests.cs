using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using Cloveshed.Ledger.Facts;

namespace Cloveshed.Ledger.Tests.Facts;

/// <summary>Hashes and ids against published values.</summary>
public sealed class ChainTests
{
    private static readonly StoredFact Known = new(
        1, "017f22e2-79b0-7cc3-98c4-dc0c0c07398f", "note", "2022-02-22T14:22:22.0000000-05:00", "2022-02-22T19:22:23.0000000+00:00", "lead", "tablet 2", "Cold 1",
        """{"text":"Raíz ✓","v":1}""", null, "017f22e2-79b0-7cc3-98c4-dc0c0c07398f", new string('0', 64), "");

    /// <summary>FIPS 180-4's examples (NIST, SHA-256: one block, two blocks) and the empty message.</summary>
    [Theory]
    [InlineData("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData("abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq", "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1")]
    [InlineData("", "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855")]
    public void A_digest_is_SHA_256(string text, string digest) => Assert.Equal(digest, FactChain.Digest(Encoding.ASCII.GetBytes(text)));

    /// <summary>Worked out by another language's library (Python's hashlib and int.to_bytes) from the form that the decision describes.</summary>
    [Fact]
    public void A_facts_hash_is_what_another_program_makes_of_the_same_parts() =>
        Assert.Equal("5da18af3b044228c0c44098b64c783e53dda49495d2315b5aff447ae01bd114f", FactChain.Hash(Known));

    /// <summary>A slower twin that writes all parts into one buffer.</summary>
    [Fact]
    public void A_hash_is_over_lengths_and_parts()
    {
        using MemoryStream bytes = new();
        foreach (string? part in new[] { "cloveshed fact 1", "1", Known.Id, "note", Known.HappenedAt, Known.RecordedAt, "lead", "tablet 2", "Cold 1", Known.Body, null, Known.Batch, Known.Prev })
        {
            byte[] length = new byte[4], text = part is null ? [] : Encoding.UTF8.GetBytes(part);
            BinaryPrimitives.WriteUInt32BigEndian(length, part is null ? uint.MaxValue : (uint)text.Length);
            bytes.Write(length);
            bytes.Write(text);
        }
        Assert.Equal(Convert.ToHexStringLower(SHA256.HashData(bytes.ToArray())), FactChain.Hash(Known));
    }

    /// <summary>What moves from one part to the next, or is absent instead of empty, is another fact.</summary>
    [Fact]
    public void No_two_facts_share_a_hash()
    {
        StoredFact[] others =
        [
            Known, Known with { Seq = 2 }, Known with { By = "leadtablet 2", Device = "" }, Known with { By = "lea", Device = "dtablet 2" }, Known with { Corrects = "" },
            Known with { Prev = new string('1', 64) }, Known with { Batch = "" }, Known with { Place = "Cold 1 " }, Known with { HappenedAt = Known.RecordedAt },
        ];
        Assert.Equal(others.Length, others.Select(FactChain.Hash).Distinct().Count());
    }

    /// <summary>RFC 9562, appendix A.6: Tuesday, 22 February 2022, 14:22:22 GMT-05:00 is 0x017F22E279B0 milliseconds.</summary>
    [Fact]
    public void Ids_are_of_version_7_and_begin_with_the_time()
    {
        Assert.Equal((7, 0x9), (Guid.Parse(Known.Id).Version, Guid.Parse(Known.Id).Variant));
        Guid made = new FactOrigin(new DateTimeOffset(2022, 2, 22, 14, 22, 22, TimeSpan.FromHours(-5)), "test").Note("x").Id;
        Assert.StartsWith("017f22e2-79b0-7", made.ToString(), StringComparison.Ordinal);
        Assert.Equal(7, made.Version);
    }

    [Fact]
    public void The_standards_id_is_taken()
    {
        using Shed shed = new();
        shed.Take(shed.Here.Note("x", Guid.Parse("017F22E2-79B0-7CC3-98C4-DC0C0C07398F")));
    }
}
