using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots;

/// <summary>
/// Flat or tall lots: how far each lot's ln g lies above its variety's mass law, pulled toward none by B = V/(V + A), where V
/// is the error of the lot's own mean and A the mean of (shift^2 - V) over all measured lots.
/// </summary>
internal sealed class LawShifts
{
    private const int FewestLots = 4;

    private readonly (double Shift, double Variance)[] shifts;

    public LawShifts(LotEvidence[] lots, IReadOnlyList<Variety> varieties, LotDefaults defaults)
    {
        // A law without scatter still meets a caliper that rounds.
        const double LeastScatter = 0.01;
        double sum = 0;
        int measured = 0;
        var seen = new (double Mean, double V)?[lots.Length];
        for (int i = 0; i < lots.Length; i++)
        {
            MassLaw law = varieties[lots[i].Group].BulbLaw;
            (double mean, int count) = lots[i].AboveLaw(law);
            if (count == 0)
                continue;
            double v = Math.Pow(Math.Max(LeastScatter, law.S), 2) / count;
            seen[i] = (mean, v);
            sum += mean * mean - v;
            measured++;
        }

        Fitted = measured >= FewestLots;
        Measured = measured;
        double between = Fitted ? Math.Max(0, sum / measured) : defaults.LawShiftSd * defaults.LawShiftSd;
        shifts = [.. seen.Select(s => s is { } x
            ? (x.Mean * between / (x.V + between), x.V * between / (x.V + between))
            : (0, between))];
    }

    public bool Fitted { get; }

    public int Measured { get; }

    public (double Shift, double Variance) Of(int lot) => shifts[lot];
}
