using Cloveshed.DemoSeason.Draws;
using Cloveshed.DemoSeason.Text;

namespace Cloveshed.DemoSeason.Shed;

/// <summary>The open yard's air by the week: what is usual (the season's files) and what came (the truth).</summary>
public static class YardYear
{
    // Usual weekly means of a dry inland basin at the middle of each month, July first. Invented.
    private static readonly double[] UsualTemp = [26, 25.5, 21.5, 15.5, 9, 5.5, 5, 7.5, 11, 14.5, 19, 23.5];
    private static readonly double[] UsualRh = [42, 43, 48, 56, 66, 74, 75, 70, 62, 54, 47, 43];

    public static (double TempC, double Rh) Usual(int week)
    {
        // Week 2 is the middle of July; a month is 52/12 weeks; straight lines between the middles.
        double at = ((week - 2 + 52) % 52) * 12 / 52.0;
        int month = (int)at;
        double part = at - month;
        int next = (month + 1) % 12;
        return (
            UsualTemp[month] + (part * (UsualTemp[next] - UsualTemp[month])),
            UsualRh[month] + (part * (UsualRh[next] - UsualRh[month])));
    }

    public static string File()
    {
        Table t = new("place", "week", "temp_c", "rh");
        for (int w = 0; w < Scenario.Weeks; w++)
        {
            (double temp, double rh) = Usual(w);
            t.Row(Places.Yard, Scenario.Monday(w), Table.Round(temp, 1), Table.Round(rh, 0));
        }

        return t.ToString();
    }

    /// <summary>The weather that comes: it departs from the usual by a slow wander, warm with dry.</summary>
    public static string TruthFile(ulong seed)
    {
        Draw draw = Draw.For(seed, "yard");
        Table t = new("place", "week", "temp_c", "rh");
        double warm = 0;
        for (int w = 0; w < Scenario.Weeks; w++)
        {
            warm = (0.7 * warm) + draw.Normal(0, 1.3);
            (double temp, double rh) = Usual(w);
            double damp = rh - (1.2 * warm) + draw.Normal(0, 3);
            t.Row(Places.Yard, Scenario.Monday(w), Table.Round(temp + warm, 1), Table.Round(Math.Clamp(damp, 30, 88), 0));
        }

        return t.ToString();
    }
}
