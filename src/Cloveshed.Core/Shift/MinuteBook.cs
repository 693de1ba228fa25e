using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Shift;

/// <summary>What a line does in a minute of the week.</summary>
internal enum MinuteUse : byte { Off, Work, Break, Maintenance, Cleaning }

/// <summary>
/// A line's week written down minute by minute, straight from the rows: the check's own view, which shares nothing with the working time that
/// schedules are made from.
/// </summary>
internal sealed class MinuteBook
{
    private const int Day = 1440;
    private readonly MinuteUse[] uses = new MinuteUse[7 * Day];
    private readonly string?[] names = new string?[7 * Day];

    public MinuteBook(ShiftQuestion question, ShiftLine line)
    {
        foreach (ShiftRow row in question.Shifts.Where(row => row.Kind != ShiftKind.Dock && (row.Line is null || row.Line == line.Id)))
            foreach (int minute in InForce(question, row))
                if (Rank(Use(row.Kind)) > Rank(uses[minute]))
                    (uses[minute], names[minute]) = (Use(row.Kind), row.Name);
        SetupRow? cleaning = null;
        foreach (SetupRow row in question.Setups)
            if (row.Kind == SetupKind.Cleaning && line.Mode != LineMode.Seed && (row.Line == line.Id || (row.Line is null && cleaning is null)))
                cleaning = row;
        for (int day = 0; day < 7 && cleaning is not null; day++)
        {
            double left = cleaning.Minutes;
            for (int minute = day * Day; minute < (day + 1) * Day && left > 1e-9; minute++)
                if (uses[minute] == MinuteUse.Work)
                    (uses[minute], left) = (MinuteUse.Cleaning, left - 1);
        }
    }

    /// <summary>After the week's end every minute is worked.</summary>
    public MinuteUse this[int minute] => minute >= uses.Length ? MinuteUse.Work : minute < 0 ? MinuteUse.Off : uses[minute];

    /// <summary>The row that stops the line, or by which it works, in this minute.</summary>
    public string? Name(int minute) => minute >= 0 && minute < names.Length ? names[minute] : null;

    /// <summary>Worked minutes from one (included) to another (not included).</summary>
    public int Worked(int from, int to)
    {
        int worked = 0;
        for (int minute = from; minute < to; minute++)
            worked += this[minute] == MinuteUse.Work ? 1 : 0;
        return worked;
    }

    /// <summary>People for all lines, minute by minute; negative where no row says any.</summary>
    public static double[] People(ShiftQuestion question)
    {
        double[] people = new double[7 * Day];
        bool[] ofWeek = new bool[people.Length];
        Array.Fill(people, -1);
        foreach (ShiftRow row in question.Shifts.Where(row => row is { Kind: ShiftKind.Work, Heads: not null }))
            foreach (int minute in InForce(question, row))
                if (row.Week is null ? !ofWeek[minute] && row.Heads > people[minute] : !ofWeek[minute] || row.Heads > people[minute])
                    (people[minute], ofWeek[minute]) = (row.Heads!.Value, row.Week is not null);
        return people;
    }

    /// <summary>The minutes of the week that a row's time holds, those after midnight of the Sunday before among them.</summary>
    private static IEnumerable<int> InForce(ShiftQuestion question, ShiftRow row)
    {
        for (int day = -1; day < 7; day++)
        {
            bool named = (row.Day is not { } of || (int)of == (day < 0 ? 7 : day + 1)) && (row.Week is not { } week || week == (day < 0 ? question.Week - 1 : question.Week));
            for (int ofDay = row.StartMinute; ofDay < row.EndMinute && named; ofDay++)
                if ((day * Day) + ofDay is >= 0 and < 7 * Day and int minute)
                    yield return minute;
        }
    }

    private static int Rank(MinuteUse use) => use switch { MinuteUse.Off => 0, MinuteUse.Work => 1, MinuteUse.Break => 2, _ => 3 };

    private static MinuteUse Use(ShiftKind kind) => kind switch { ShiftKind.Work => MinuteUse.Work, ShiftKind.Break => MinuteUse.Break, _ => MinuteUse.Maintenance };
}
