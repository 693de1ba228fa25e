using System.Text.Unicode;

namespace Cloveshed.SeasonFiles.Csv;

/// <summary>Why a row is not a row of RFC 4180.</summary>
internal enum CsvBreach { None, QuoteInField, TextAfterQuote, QuoteNeverClosed, NotUtf8 }

/// <summary>
/// The rows of one CSV file, one at a time, over its bytes: RFC 4180 section 2, and besides CRLF also LF or CR alone as
/// line end, and a byte order mark at the start. Nothing is copied but cells with doubled quotes.
/// <para>
/// It is our own, though general CSV readers cope with quoted newlines, because a person must be told the row where a
/// quote is wrong. The one that we tried takes a stray quote for the start of a quoted stretch and an open quote for the
/// rest of the file, so that rows vanish without a word, and it turns bytes that are not UTF-8 into replacement characters.
/// </para>
/// After a breach reading goes on with the next row, so that one wrong quote does not hide the faults after it.
/// </summary>
internal sealed class CsvRows
{
    /// <summary>Fields beyond these are counted but not kept: no file of ours is as wide, and one of commas only must not fill the memory.</summary>
    public const int KeptFields = 1000;

    private const byte Comma = (byte)',', Quote = (byte)'"', Lf = (byte)'\n', Cr = (byte)'\r';

    private readonly ReadOnlyMemory<byte> bytes;
    private readonly List<CsvField> fields = [];
    private int position;
    private int nextLine = 1;

    public CsvRows(ReadOnlyMemory<byte> bytes)
    {
        this.bytes = bytes;
        position = bytes.Span.StartsWith("\uFEFF"u8) ? 3 : 0;
    }

    /// <summary>The physical line, counted from 1, on which the row starts.</summary>
    public int Line { get; private set; }

    /// <summary>How many fields the row has; an empty line has one, empty.</summary>
    public int Count { get; private set; }

    /// <summary>How many of them can be read.</summary>
    public int Kept => fields.Count;

    /// <summary>What is wrong with the row first.</summary>
    public CsvBreach Breach { get; private set; }

    /// <summary>The index of the field in which a quote is wrong.</summary>
    public int BreachField { get; private set; }

    /// <summary>True when every field is empty, as in the rows that spreadsheets leave at the end.</summary>
    public bool IsBlank
    {
        get
        {
            foreach (CsvField cell in fields)
                if (bytes.Span.Slice(cell.Start, cell.Length).IndexOfAnyExcept(" \t"u8) >= 0)
                    return false;
            return Breach == CsvBreach.None;
        }
    }

    /// <summary>Moves to the next row; false at the end of the file.</summary>
    public bool Next()
    {
        ReadOnlySpan<byte> all = bytes.Span;
        if (position >= all.Length)
            return false;
        fields.Clear();
        Count = 0;
        Breach = CsvBreach.None;
        Line = nextLine;
        int rowStart = position;
        bool more = true;
        while (more)
        {
            if (position < all.Length && all[position] == Quote)
                ReadQuoted(all);
            else
                ReadBare(all, position, quotesAllowed: false);
            more = position < all.Length && all[position] == Comma;
            if (more)
                position++;
        }
        if (Breach == CsvBreach.None && !Utf8.IsValid(all[rowStart..position]))
            Break(CsvBreach.NotUtf8);
        SkipLineEnd(all);
        return true;
    }

    /// <summary>The field's bytes, without its quotes and with doubled quotes single.</summary>
    public ReadOnlySpan<byte> this[int index]
    {
        get
        {
            CsvField cell = fields[index];
            ReadOnlySpan<byte> raw = bytes.Span.Slice(cell.Start, cell.Length);
            return cell.DoubledQuotes ? Undouble(raw) : raw;
        }
    }

    private void ReadBare(ReadOnlySpan<byte> all, int start, bool quotesAllowed)
    {
        int length = all[position..].IndexOfAny(Comma, Lf, Cr);
        int end = length < 0 ? all.Length : position + length;
        if (!quotesAllowed && all[position..end].Contains(Quote))
            Break(CsvBreach.QuoteInField);
        Keep(start, end, false);
        position = end;
    }

    private void ReadQuoted(ReadOnlySpan<byte> all)
    {
        int open = position, at = position + 1;
        bool doubled = false;
        while (true)
        {
            int length = all[at..].IndexOf(Quote);
            if (length < 0)
            {
                // The row is taken to end with the line on which the quote was opened, so that later rows are still read.
                Break(CsvBreach.QuoteNeverClosed);
                int end = all[open..].IndexOfAny(Lf, Cr);
                position = end < 0 ? all.Length : open + end;
                Keep(open, position, false);
                return;
            }
            at += length + 1;
            if (at >= all.Length || all[at] != Quote)
                break;
            doubled = true;
            at++;
        }
        int close = at - 1;
        nextLine += LineEnds(all[open..close]);
        position = at;
        if (at < all.Length && all[at] is not (Comma or Lf or Cr))
        {
            Break(CsvBreach.TextAfterQuote);
            ReadBare(all, open, quotesAllowed: true);
            return;
        }
        Keep(open + 1, close, doubled);
    }

    private void Keep(int start, int end, bool doubledQuotes)
    {
        Count++;
        if (fields.Count < KeptFields)
            fields.Add(new CsvField(start, end - start, doubledQuotes));
    }

    private void Break(CsvBreach breach)
    {
        if (Breach != CsvBreach.None)
            return;
        Breach = breach;
        BreachField = Count;
    }

    private void SkipLineEnd(ReadOnlySpan<byte> all)
    {
        if (position >= all.Length)
            return;
        position += all[position] == Cr && position + 1 < all.Length && all[position + 1] == Lf ? 2 : 1;
        nextLine++;
    }

    /// <summary>Line ends as an editor counts them: CRLF, LF or CR alone are one each.</summary>
    internal static int LineEnds(ReadOnlySpan<byte> text)
    {
        int count = 0;
        for (int at = text.IndexOfAny(Lf, Cr); at >= 0;)
        {
            count++;
            text = text[(at + (text[at] == Cr && at + 1 < text.Length && text[at + 1] == Lf ? 2 : 1))..];
            at = text.IndexOfAny(Lf, Cr);
        }
        return count;
    }

    private static byte[] Undouble(ReadOnlySpan<byte> raw)
    {
        byte[] single = new byte[raw.Length];
        int length = 0;
        for (int at = 0; at < raw.Length; at++)
        {
            single[length++] = raw[at];
            if (raw[at] == Quote)
                at++;
        }
        return single[..length];
    }

    private readonly record struct CsvField(int Start, int Length, bool DoubledQuotes);
}
