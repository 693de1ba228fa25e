using System.Text.Json;
using Cloveshed.Ledger.Facts;
using CsCheck;

namespace Cloveshed.Ledger.Tests.Facts;

/// <summary>Canonical JSON against RFC 8785 (JSON Canonicalization Scheme, 2020).</summary>
public sealed class CanonicalJsonTests
{
    /// <summary>RFC 8785, appendix B; the texts are also what a run of ECMAScript itself printed for these bits.</summary>
    [Theory]
    [InlineData(0x0000000000000000, "0")]
    [InlineData(0x8000000000000000, "0")]
    [InlineData(0x0000000000000001, "5e-324")]
    [InlineData(0x8000000000000001, "-5e-324")]
    [InlineData(0x7fefffffffffffff, "1.7976931348623157e+308")]
    [InlineData(0xffefffffffffffff, "-1.7976931348623157e+308")]
    [InlineData(0x4340000000000000, "9007199254740992")]
    [InlineData(0xc340000000000000, "-9007199254740992")]
    [InlineData(0x4430000000000000, "295147905179352830000")]
    [InlineData(0x44b52d02c7e14af5, "9.999999999999997e+22")]
    [InlineData(0x44b52d02c7e14af6, "1e+23")]
    [InlineData(0x44b52d02c7e14af7, "1.0000000000000001e+23")]
    [InlineData(0x444b1ae4d6e2ef4e, "999999999999999700000")]
    [InlineData(0x444b1ae4d6e2ef4f, "999999999999999900000")]
    [InlineData(0x444b1ae4d6e2ef50, "1e+21")]
    [InlineData(0x3eb0c6f7a0b5ed8c, "9.999999999999997e-7")]
    [InlineData(0x3eb0c6f7a0b5ed8d, "0.000001")]
    [InlineData(0x41b3de4355555553, "333333333.3333332")]
    [InlineData(0x41b3de4355555554, "333333333.33333325")]
    [InlineData(0x41b3de4355555555, "333333333.3333333")]
    [InlineData(0x41b3de4355555556, "333333333.3333334")]
    [InlineData(0x41b3de4355555557, "333333333.33333343")]
    [InlineData(0xbecbf647612f3696, "-0.0000033333333333333333")]
    [InlineData(0x43143ff3c1cb0959, "1424953923781206.2")]
    public void Numbers_are_written_as_the_standard_writes_them(ulong bits, string text) =>
        Assert.Equal(text, CanonicalJson.Number(BitConverter.UInt64BitsToDouble(bits)));

    [Fact]
    public void What_is_not_finite_has_no_text() => Assert.All(new[] { double.NaN, double.PositiveInfinity, double.NegativeInfinity }, number => Assert.Null(CanonicalJson.Number(number)));

    /// <summary>RFC 8785, section 3.2.2 (the input) and 3.2.3 (the result).</summary>
    [Fact]
    public void The_standards_example_comes_out_as_the_standard_has_it()
    {
        const string Input = """
            {
              "numbers": [333333333.33333329, 1E30, 4.50, 2e-3, 0.000000000000000000000000001],
              "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
              "literals": [null, true, false]
            }
            """;
        const string Expected = """{"literals":[null,true,false],"numbers":[333333333.3333333,1e+30,4.5,0.002,1e-27],"string":"€$\u000f\nA'B\"\\\\\"/"}""";
        Assert.Equal(Expected, CanonicalJson.Of(JsonElement.Parse(Input)));
    }

    /// <summary>RFC 8785, section 3.2.3: the order of keys is that of UTF-16 code units.</summary>
    [Fact]
    public void Keys_are_in_the_standards_order()
    {
        const string Input = """{"\u20ac": "Euro Sign", "\r": "Carriage Return", "\ufb33": "Hebrew Letter Dalet With Dagesh", "1": "One", "\ud83d\ude00": "Emoji: Grinning Face", "\u0080": "Control", "\u00f6": "Latin Small Letter O With Diaeresis"}""";
        string[] keys = [.. JsonElement.Parse(CanonicalJson.Of(JsonElement.Parse(Input))!).EnumerateObject().Select(member => member.Value.GetString()!)];
        Assert.Equal(
            ["Carriage Return", "One", "Control", "Latin Small Letter O With Diaeresis", "Euro Sign", "Emoji: Grinning Face", "Hebrew Letter Dalet With Dagesh"], keys);
    }

    [Theory]
    [InlineData("""{"a":1,"a":2}""")]
    [InlineData("""{"a":"\ud800"}""")]
    [InlineData("""{"a":1e999}""")]
    public void What_has_two_readings_or_none_has_no_canonical_form(string text) => Assert.Null(CanonicalJson.Of(JsonElement.Parse(text)));

    [Fact]
    public void A_canonical_text_is_its_own_canonical_text_and_reads_back() =>
        Gen.Dictionary(Gen.String[Gen.Char["ab\"\\\n\u0001é€"], 0, 4], Gen.Double)[0, 8].Sample(members =>
        {
            Dictionary<string, double> finite = members.Where(member => double.IsFinite(member.Value)).ToDictionary();
            string text = CanonicalJson.Of(JsonSerializer.SerializeToElement(finite))!;
            return text == CanonicalJson.Of(JsonElement.Parse(text)) && JsonSerializer.Deserialize<Dictionary<string, double>>(text)!.All(member => finite[member.Key] == member.Value);
        }, iter: 500);
}
