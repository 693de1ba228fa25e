using System.Text;
using Cloveshed.Core.Quantities;
using Cloveshed.Core.Sizes;

namespace Cloveshed.Web.Line;

/// <summary>What a line of a sizer's file has against it.</summary>
public enum CountFaultKind { NoHeader, NoWeight, TwoUnits, NotANumber, OutOfBounds, NotWhole, Cells, NoBulbs }

/// <summary>A fault of a sizer's file: where, what was found.</summary>
/// <param name="Line">From 1, the header's; null: of the whole file.</param>
/// <param name="Field">The column's name as it stands in the header; null: of the whole line.</param>
public sealed record CountFault(CountFaultKind Kind, long? Line, string? Field, string? Value);

/// <summary>
/// Reads a sizer's file of weights as it streams by: a header, then a weight a line, or a weight and how many bulbs had it. Grams or pounds,
/// as the header says. Nothing is kept but the histogram, so that ten million bulbs take no more room than ten.
/// </summary>
public sealed class CountReader
{
    /// <summary>Faults that are told; all are counted.</summary>
    public const int MostTold = 20;

    private const double MostG = 5000;
    private const long MostCount = 1_000_000_000;
    private const int LongestLine = 1000, Part = 1 << 18;

    private static readonly string[] Grams = ["weight", "weight_g", "weight_grams", "grams", "g", "peso", "peso_g"], Pounds = ["weight_lb", "weight_lbs", "weight_pounds", "pounds", "lb", "lbs", "peso_lb"],
        Counts = ["count", "bulbs", "number", "n", "cuenta", "cabezas"];

    private readonly List<CountFault> told = [];
    private readonly byte[] line = new byte[LongestLine];
    private int length;
    private bool tooLong;
    private long lines;
    private byte between = (byte)',';
    private string[]? header;
    private int weightAt, countAt = -1;
    private double gramsEach = 1;
    private bool headerFaulty;

    /// <summary>What was read so far.</summary>
    public WeightHistogram Histogram { get; } = new();

    /// <summary>Bulbs so far.</summary>
    public long Bulbs { get; private set; }

    public IReadOnlyList<CountFault> Told => told;

    public long Faults { get; private set; }

    /// <summary>Reads all of a stream.</summary>
    /// <param name="progress">Bytes read and bulbs so far, after each part.</param>
    public async Task Read(Stream stream, Action<long, long> progress, CancellationToken stop)
    {
        byte[] part = new byte[Part];
        long bytes = 0;
        for (int read = await stream.ReadAsync(part, stop); read > 0; read = await stream.ReadAsync(part, stop))
        {
            Take(part.AsSpan(0, read));
            bytes += read;
            progress(bytes, Bulbs);
            // What has no readable header is not read to its end.
            if (headerFaulty)
            {
                return;
            }
        }

        if (length > 0)
        {
            EndLine();
        }

        if (header is null)
        {
            Tell(new CountFault(CountFaultKind.NoHeader, null, null, null));
        }
        else if (Bulbs == 0 && Faults == 0)
        {
            Tell(new CountFault(CountFaultKind.NoBulbs, null, null, null));
        }
    }

    private void Take(ReadOnlySpan<byte> bytes)
    {
        while (bytes.Length > 0 && !headerFaulty)
        {
            int end = bytes.IndexOf((byte)'\n');
            ReadOnlySpan<byte> piece = end < 0 ? bytes : bytes[..end];
            // A line that lies whole in the part is read where it lies.
            if (end >= 0 && length == 0 && header is not null && piece.Length <= LongestLine)
            {
                lines++;
                Row(piece);
            }
            else
            {
                int room = Math.Min(piece.Length, LongestLine - length);
                piece[..room].CopyTo(line.AsSpan(length));
                length += room;
                tooLong |= room < piece.Length;
                if (end >= 0)
                {
                    EndLine();
                }
            }

            if (end < 0)
            {
                return;
            }

            bytes = bytes[(end + 1)..];
        }
    }

    private void EndLine()
    {
        lines++;
        ReadOnlySpan<byte> whole = line.AsSpan(0, length);
        length = 0;
        if (tooLong)
        {
            tooLong = false;
            Tell(new CountFault(CountFaultKind.Cells, lines, null, Text(whole[..40]) + "…"));
            headerFaulty |= header is null;
        }
        else if (header is null)
        {
            Header(Text(whole).TrimStart('\uFEFF').Trim());
        }
        else
        {
            Row(whole);
        }
    }

    private void Header(string text)
    {
        if (text.Length == 0)
        {
            return; // empty lines before the header
        }

        between = text.Contains('\t', StringComparison.Ordinal) ? (byte)'\t' : text.Contains(';', StringComparison.Ordinal) ? (byte)';' : (byte)',';
        header = [.. text.Split((char)between).Select(cell => cell.Trim().Trim('"'))];
        string[] names = [.. header.Select(Plain)];
        int[] grams = [.. names.Index().Where(name => Grams.Contains(name.Item)).Select(name => name.Index)], pounds = [.. names.Index().Where(name => Pounds.Contains(name.Item)).Select(name => name.Index)];
        if (grams.Length + pounds.Length != 1)
        {
            headerFaulty = true;
            Tell(new CountFault(grams.Length + pounds.Length == 0 ? CountFaultKind.NoWeight : CountFaultKind.TwoUnits, lines, null, text.Length > 80 ? text[..80] + "…" : text));
            return;
        }

        weightAt = grams.Length == 1 ? grams[0] : pounds[0];
        gramsEach = grams.Length == 1 ? 1 : (double)Mass.GramsPerPound;
        countAt = Array.FindIndex(names, name => Counts.Contains(name));
    }

    private void Row(ReadOnlySpan<byte> row)
    {
        row = row.TrimEnd((byte)'\r');
        if (row.IndexOfAnyExcept(" \t,;\""u8) < 0)
        {
            return; // as spreadsheets leave at the end
        }

        // A line of more cells than the header: a decimal comma would otherwise be read as a weight and something beside it.
        if (row.Count(between) >= header!.Length)
        {
            Tell(new CountFault(CountFaultKind.Cells, lines, null, Text(row)));
            return;
        }

        ReadOnlySpan<byte> weight = Cell(row, weightAt), count = countAt >= 0 ? Cell(row, countAt) : default;
        if (!Number(weight, out double number))
        {
            Tell(new CountFault(CountFaultKind.NotANumber, lines, header[weightAt], Text(weight)));
            return;
        }

        double g = number * gramsEach;
        if (!(g > 0 && g <= MostG))
        {
            Tell(new CountFault(CountFaultKind.OutOfBounds, lines, header[weightAt], Text(weight)));
            return;
        }

        double bulbs = 1;
        if (countAt >= 0 && count.Length > 0 && !(Number(count, out bulbs) && bulbs == Math.Floor(bulbs) && bulbs <= MostCount))
        {
            Tell(new CountFault(CountFaultKind.NotWhole, lines, header[countAt], Text(count)));
            return;
        }

        Histogram.AddTenths((int)Math.Round(g * 10, MidpointRounding.ToEven), (long)bulbs);
        Bulbs += (long)bulbs;
    }

    private ReadOnlySpan<byte> Cell(ReadOnlySpan<byte> row, int at)
    {
        for (; at > 0; at--)
        {
            int end = row.IndexOf(between);
            if (end < 0)
            {
                return default;
            }

            row = row[(end + 1)..];
        }

        int to = row.IndexOf(between);
        return (to < 0 ? row : row[..to]).Trim(" \t\""u8);
    }

    // Digits with at most one point. Up to 15 digits are exact, and one division by a power of ten rounds once.
    private static bool Number(ReadOnlySpan<byte> cell, out double value)
    {
        long digits = 0;
        int count = 0;
        double tens = 0;
        value = 0;
        foreach (byte sign in cell)
        {
            if (sign == '.' && tens == 0)
            {
                tens = 1;
                continue;
            }

            if (sign is < (byte)'0' or > (byte)'9' || ++count > 15)
            {
                return false;
            }

            digits = digits * 10 + (sign - '0');
            tens *= 10;
        }

        value = tens > 1 ? digits / tens : digits;
        return count > 0;
    }

    private static string Plain(string name)
    {
        StringBuilder plain = new();
        foreach (char sign in name.ToLowerInvariant())
        {
            if (char.IsLetterOrDigit(sign))
            {
                plain.Append(sign);
            }
            else if (plain.Length > 0 && plain[^1] != '_')
            {
                plain.Append('_');
            }
        }

        return plain.ToString().TrimEnd('_');
    }

    private static string Text(ReadOnlySpan<byte> bytes) => Encoding.UTF8.GetString(bytes.Length > 80 ? bytes[..80] : bytes);

    private void Tell(CountFault fault)
    {
        Faults++;
        if (told.Count < MostTold)
        {
            told.Add(fault);
        }
    }
}
