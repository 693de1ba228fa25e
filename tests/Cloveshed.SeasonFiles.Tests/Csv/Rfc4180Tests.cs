using System.Text;
using Cloveshed.SeasonFiles.Csv;

namespace Cloveshed.SeasonFiles.Tests.Csv;

/// <summary>RFC 4180 (Shafranovich, 2005), section 2: each rule with the RFC's own example, rule numbers as there.</summary>
public sealed class Rfc4180Tests
{
    [Theory]
    [InlineData("rule 1", "aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n", "aaa|bbb|ccc", "zzz|yyy|xxx")]
    [InlineData("rule 2: the last line end may be missing", "aaa,bbb,ccc\r\nzzz,yyy,xxx", "aaa|bbb|ccc", "zzz|yyy|xxx")]
    [InlineData("rule 4: spaces are part of a field", " aaa,bbb ,ccc\r\nzzz, ,xxx\r\n", " aaa|bbb |ccc", "zzz| |xxx")]
    [InlineData("rule 5: fields may be in quotes or not", "\"aaa\",\"bbb\",\"ccc\"\r\nzzz,yyy,xxx", "aaa|bbb|ccc", "zzz|yyy|xxx")]
    [InlineData("rule 6: line ends, quotes and commas in quotes", "\"aaa\",\"b\r\nbb\",\"c,c\"\r\nzzz,yyy,xxx", "aaa|b\r\nbb|c,c", "zzz|yyy|xxx")]
    [InlineData("rule 7: a quote in quotes is doubled", "\"aaa\",\"b\"\"bb\",\"\"\"\"\r\nzzz,\"\",xxx", "aaa|b\"bb|\"", "zzz||xxx")]
    public void Section_2(string rule, string text, string first, string second)
    {
        List<string> rows = [.. Rows(text).Select(row => row.Cells)];

        Assert.True(rows is [var a, var b] && a == first && b == second, $"{rule}: {string.Join(" // ", rows)}");
    }

    /// <summary>Beyond the RFC, because people's programs write so: LF or CR alone as line end, a byte order mark (U+FEFF) at the start.</summary>
    [Theory]
    [InlineData("a,b\nc,d\n")]
    [InlineData("a,b\rc,d\r")]
    [InlineData("\uFEFFa,b\r\nc,d")]
    public void Other_line_ends_and_a_byte_order_mark_are_read(string text) => Assert.Equal(["a|b", "c|d"], Rows(text).Select(row => row.Cells));

    [Fact]
    public void A_row_has_the_physical_line_on_which_it_starts() =>
        Assert.Equal([1, 2, 5, 6, 7], Rows("a,b\n\"1\r\n2\n3\",x\r\nc,d\r\r\n\"\n\",y").Select(row => row.Line));

    [Theory]
    [InlineData("a\"b,c\nd,e\n", "QuoteInField", 0, "a\"b|c")]
    [InlineData("a,b\"\nd,e\n", "QuoteInField", 1, "a|b\"")]
    [InlineData("\"a\"b,c\nd,e\n", "TextAfterQuote", 0, "\"a\"b|c")]
    [InlineData("a,\"b\" \nd,e\n", "TextAfterQuote", 1, "a|\"b\" ")]
    [InlineData("a,\"b\nd,e\n", "QuoteNeverClosed", 1, "a|\"b")]
    [InlineData("a,\"b\"\"\nd,e\n", "QuoteNeverClosed", 1, "a|\"b\"\"")]
    public void A_wrong_quote_is_named_and_hides_no_later_row(string text, string breach, int field, string cells)
    {
        List<(int Line, string Cells, string Breach, int Field)> rows = Rows(text);

        Assert.Equal((1, cells, breach, field), rows[0]);
        Assert.Equal((2, "d|e", "None", 0), rows[1] with { Field = 0 });
        Assert.Equal(2, rows.Count);
    }

    [Fact]
    public void Bytes_that_are_not_UTF_8_are_named()
    {
        // RFC 3629, section 3: F1 starts a sequence of four bytes; C0 never occurs.
        foreach (byte[] bad in (byte[][])[[0xF1, 0x6F], [0xC0, 0xAF]])
        {
            CsvRows rows = new((byte[])[.. "a,b\nc,"u8, .. bad, .. "\nd,e\n"u8]);
            Assert.True(rows.Next());
            Assert.Equal(CsvBreach.None, rows.Breach);
            Assert.True(rows.Next());
            Assert.Equal((CsvBreach.NotUtf8, 2), (rows.Breach, rows.Line));
            Assert.True(rows.Next());
            Assert.Equal(CsvBreach.None, rows.Breach);
        }
    }

    [Fact]
    public void A_row_of_commas_without_end_is_counted_but_not_kept()
    {
        CsvRows rows = new(Encoding.UTF8.GetBytes(new string(',', 5000) + "\na,b\n"));

        Assert.True(rows.Next());
        Assert.Equal((5001, CsvRows.KeptFields), (rows.Count, rows.Kept));
        Assert.True(rows.Next());
        Assert.Equal((2, 2), (rows.Count, rows.Line));
    }

    internal static List<(int Line, string Cells, string Breach, int Field)> Rows(string text)
    {
        CsvRows rows = new(Encoding.UTF8.GetBytes(text));
        List<(int, string, string, int)> read = [];
        while (rows.Next())
            read.Add((rows.Line, string.Join('|', Enumerable.Range(0, rows.Count).Select(at => Encoding.UTF8.GetString(rows[at]))), rows.Breach.ToString(), rows.BreachField));
        return read;
    }
}
