using System.Text;

namespace Cloveshed.SeasonFiles.Weighing;

/// <summary>
/// The fast half of <see cref="WeightFile"/>: a header of the known names, then rows of bare digits with at most one point a cell.
/// Null at anything else, including every value out of bounds, so that only the careful reader ever speaks of faults.
/// </summary>
internal static class PlainWeights
{
    private const byte Comma = (byte)',', Lf = (byte)'\n', Cr = (byte)'\r', Point = (byte)'.';
    private const int MostDigits = 15;
    private static readonly double[] Tens = [1, 10, 100, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];
    private static readonly string[] Names = ["weight_g", "diameter_mm", "count"];

    public static WeighedBulbs? Take(ReadOnlySpan<byte> all)
    {
        int at = all.StartsWith("\uFEFF"u8) ? 3 : 0, end = all[at..].IndexOf(Lf);
        if (end < 0)
            return null;
        string[] header = Encoding.UTF8.GetString(all.Slice(at, end)).TrimEnd('\r').Split(',');
        int[] meaning = [.. header.Select(name => Array.IndexOf(Names, name.Trim()))];
        if (meaning.Contains(-1) || meaning.Distinct().Count() < meaning.Length || !meaning.Contains(0))
            return null;
        return Rows(all, at + end + 1, meaning);
    }

    private static WeighedBulbs? Rows(ReadOnlySpan<byte> all, int at, int[] meaning)
    {
        BulbTally tally = new();
        Span<double> cells = stackalloc double[3];
        for (int line = 2; at < all.Length; line++)
        {
            if (all[at] is (byte)' ' or (byte)'\t' or Cr or Lf or Comma && OnlyBlank(all[at..]))
                return Closed(tally); // as spreadsheets leave at the end
            cells.Fill(double.NaN);
            for (int k = 0; k < meaning.Length; k++)
            {
                if (!Cell(all, ref at, out cells[meaning[k]]))
                    return null;
                bool last = k + 1 == meaning.Length;
                if (at >= all.Length)
                    return last && Row(tally, cells, line) ? Closed(tally) : null;
                byte end = all[at++];
                if (last && end == Cr && at < all.Length)
                    end = all[at++];
                if (end != (last ? Lf : Comma))
                    return null;
            }

            if (!Row(tally, cells, line))
                return null;
        }

        return Closed(tally);
    }

    private static bool Row(BulbTally tally, Span<double> cells, int line)
    {
        double g = cells[0], mm = cells[1], count = double.IsNaN(cells[2]) ? 1 : cells[2];
        // The bounds of the careful reader; NaN, an empty cell, fails the first and passes the second.
        if (!(g is > 0 and <= 5000) || mm is <= 0 or > 500 || count > 1e9 || count != Math.Truncate(count))
            return false;
        tally.Add(g, double.IsNaN(mm) ? null : mm, (long)count, line);
        return true;
    }

    private static WeighedBulbs? Closed(BulbTally tally) => tally.Bulbs > 0 ? tally.Close() : null;

    // Digits, at most one point; an empty cell is NaN. Up to 15 digits are exact, and one division by a power of ten rounds once.
    private static bool Cell(ReadOnlySpan<byte> all, ref int at, out double value)
    {
        long digits = 0;
        int count = 0, point = -1;
        for (; at < all.Length; at++)
        {
            int digit = all[at] - (byte)'0';
            if (digit is >= 0 and <= 9)
            {
                digits = digits * 10 + digit;
                if (++count > MostDigits)
                    break;
            }
            else if (all[at] == Point && point < 0)
                point = count;
            else
                break;
        }

        value = count == 0 ? double.NaN : point < 0 ? digits : digits / Tens[count - point];
        return count <= MostDigits && (count > 0 || point < 0);
    }

    private static bool OnlyBlank(ReadOnlySpan<byte> rest) => rest.IndexOfAnyExcept(" \t\r\n,"u8) < 0;
}
