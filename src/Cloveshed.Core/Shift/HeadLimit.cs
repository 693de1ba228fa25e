using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Shift;

/// <summary>
/// People at hand for all lines together, minute by minute of the week: what the working rows in force say, those that name the week before
/// those that do not, of several the largest. No limit where none of them says any, and none after the week's end.
/// </summary>
public static class HeadLimit
{
    /// <summary>One for each minute of the week; positive infinity for no limit.</summary>
    public static double[] Of(ShiftQuestion question)
    {
        double[] limit = new double[ShiftQuestion.WeekMinutes];
        Array.Fill(limit, double.PositiveInfinity);
        foreach (bool named in new[] { false, true })
        {
            double[] told = new double[limit.Length];
            Array.Fill(told, -1);
            foreach (ShiftRow row in question.Shifts.Where(row => row.Kind == ShiftKind.Work && row.Heads is not null && row.Week is not null == named))
                foreach (ShiftWindow window in LineHours.Times(row, question.Week))
                    for (int minute = window.Start; minute < window.End; minute++)
                        told[minute] = Math.Max(told[minute], row.Heads!.Value);
            for (int minute = 0; minute < limit.Length; minute++)
                if (told[minute] >= 0)
                    limit[minute] = told[minute];
        }

        return limit;
    }
}
