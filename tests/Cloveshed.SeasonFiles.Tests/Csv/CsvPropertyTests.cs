using System.Text;
using Cloveshed.SeasonFiles.Csv;
using Cloveshed.SeasonFiles.Layouts;
using CsCheck;
using nietras.SeparatedValues;

namespace Cloveshed.SeasonFiles.Tests.Csv;

/// <summary>What we write, we and a reader by other hands (Sep) read alike; what we read, Sep reads alike where it is sound.</summary>
public sealed class CsvPropertyTests
{
    private const string Letters = "aZ7 ,\"\n\r;\tñ葱|";

    private static readonly Gen<string> Cell = Gen.Int[0, Letters.Length - 1].Select(at => Letters[at]).Array[0, 6].Select(letters => new string(letters));

    private static readonly byte[] Signs = [(byte)'"', (byte)',', (byte)'\n', (byte)'\r', (byte)'a', 0xF1, 0];

    private static readonly Gen<string[][]> Cells = Gen.Int[1, 5].SelectMany(width => Cell.Array[width].Array[0, 8]);

    [Fact]
    public void Cells_come_back_as_they_were() =>
        Cells.Sample(cells =>
        {
            CsvRows rows = new(Written(cells));
            List<string[]> read = [];
            while (rows.Next())
            {
                Assert.Equal(CsvBreach.None, rows.Breach);
                read.Add([.. Enumerable.Range(0, rows.Count).Select(at => Encoding.UTF8.GetString(rows[at]))]);
            }
            Assert.Equal(cells, read.Skip(1));
        }, iter: 2000);

    /// <summary>RFC 4180, section 2, rules 1 and 5 to 7; spaces at an end are quoted too, because many programs drop them otherwise.</summary>
    [Fact]
    public void Cells_are_quoted_where_they_must_be_and_rows_end_with_CRLF() =>
        Assert.Equal(
            "c0,c1,c2\r\nplain text,\" end\",\"end \"\r\n\"a,b\",\"say \"\"so\"\"\",\"two\nlines\"\r\n",
            Encoding.UTF8.GetString(Written([["plain text", " end", "end "], ["a,b", "say \"so\"", "two\nlines"]])));

    [Fact]
    public void Another_reader_reads_the_same() =>
        Cells.Sample(cells =>
        {
            using SepReader reader = Sep.New(',').Reader(options => options with { Unescape = true, HasHeader = true }).From(Written(cells));
            List<string[]> read = [];
            foreach (SepReader.Row row in reader)
            {
                string[] found = new string[row.ColCount];
                for (int at = 0; at < found.Length; at++)
                    found[at] = row[at].ToString();
                read.Add(found);
            }
            Assert.Equal(cells, read);
        }, iter: 2000);

    /// <summary>The line of a row is one more than the line ends before it, counted by the base library.</summary>
    [Fact]
    public void Lines_are_counted_as_an_editor_does() =>
        Cells.Sample(cells =>
        {
            byte[] bytes = Written(cells);
            CsvRows rows = new(bytes);
            List<int> lines = [];
            while (rows.Next())
                lines.Add(rows.Line);
            for (int row = 0; row < cells.Length; row++)
                Assert.Equal(1 + LineEnds(Written(cells[..row])), lines[row + 1]);
        }, iter: 500);

    /// <summary>Whatever the bytes are, reading ends, and every row stands on a later line than the one before.</summary>
    [Fact]
    public void Any_bytes_are_read_to_their_end() =>
        Gen.Int[0, Signs.Length - 1].Select(at => Signs[at]).Array[0, 60].Sample(bytes =>
        {
            CsvRows rows = new(bytes);
            int line = 0;
            while (rows.Next())
            {
                Assert.True(rows.Line > line);
                line = rows.Line;
            }
            Assert.True(line <= 1 + LineEnds(bytes));
        }, iter: 20_000);

    private static int LineEnds(byte[] bytes) => Encoding.Latin1.GetString(bytes).Replace("\r\n", "\n", StringComparison.Ordinal).Count(letter => letter is '\n' or '\r');

    private static byte[] Written(string[][] cells)
    {
        FileLayout layout = new("any.csv", needed: true);
        for (int at = 0; at < (cells.Length == 0 ? 1 : cells[0].Length); at++)
            layout.Text($"c{at}");
        CsvText text = new(layout);
        foreach (string[] row in cells)
        {
            foreach (string cell in row)
                text.Text(cell);
            text.EndRow();
        }
        return text.ToBytes();
    }
}
