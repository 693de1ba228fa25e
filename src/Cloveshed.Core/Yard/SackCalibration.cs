using Cloveshed.Core.Fits;
using Cloveshed.Core.Keep;
using NodaTime;

namespace Cloveshed.Core.Yard;

/// <summary>One weighing of a marked sack. Any one unit of weight, the same for all weighings of a sack.</summary>
public sealed record SackWeight(string Sack, LocalDateTime At, double Weight);

/// <summary>Sacks, and the weather that they had.</summary>
/// <param name="Weather">As the sacks had it, from the moment of digging.</param>
/// <param name="ScaleSd">Error of a weighing as a share of the weight, before the fit says what it is; our default of half a percent.</param>
public sealed record CalibrationQuestion(
    IReadOnlyList<WeatherRow> Weather, IReadOnlyList<SackWeight> Sacks, CuringParameters P, KeepingParameters Keep, double ScaleSd = 0.005);

/// <summary>What the sacks say of the yard, and how well they say it.</summary>
/// <param name="Sacks">Sacks used: those weighed at least twice.</param>
/// <param name="LeftOut">Sacks weighed once only: one weight says nothing of drying.</param>
/// <param name="ResidualSd">Of a weighing, share of its weight, by the fit; null with as few weighings as numbers fitted.</param>
/// <param name="Correlation">Between the logarithms of rate and green: near 1 or -1, the sacks cannot tell fast drying from much to dry.</param>
/// <param name="Worst">The weighing that fits worst, and by how much of its weight.</param>
public sealed record CalibrationAnswer(
    YardKnowledge Yard, int Sacks, IReadOnlyList<string> LeftOut, int Weighings, double? ResidualSd, double Correlation, double Condition, int Steps, FitEnd End,
    SackWeight Worst, double WorstBy);

/// <summary>
/// The numbers of a yard (how fast it dries, how much green there is to dry, what the cloves lose) from sacks weighed day by day: nonlinear least
/// squares on the logarithm of weight, with the defaults as a prior and each sack's dug weight free.
/// </summary>
public static class SackCalibration
{
    /// <summary>Pure. Weighings must lie within the weather.</summary>
    public static CalibrationAnswer Of(CalibrationQuestion question)
    {
        IReadOnlyList<WeatherRow> weather = question.Weather;
        SackWeight[][] sacks = [.. question.Sacks.GroupBy(s => s.Sack).Where(g => g.Select(s => s.At).Distinct().Count() > 1).Select(g => g.OrderBy(s => s.At).ToArray())];
        string[] leftOut = [.. question.Sacks.Select(s => s.Sack).Distinct().Except(sacks.Select(s => s[0].Sack))];
        if (sacks.Length == 0)
            throw new ArgumentException("Calibration needs a sack that was weighed at two times or more.", nameof(question));
        LocalDateTime end = weather[^1].From.PlusSeconds((long)Math.Round(Curing.Hours(weather, weather.Count - 1) * 3600));
        foreach (SackWeight s in question.Sacks)
        {
            if (s.At < weather[0].From || s.At > end)
                throw new ArgumentException($"Sack {s.Sack} was weighed at {s.At}, outside of the weather.", nameof(question));
            ArgumentOutOfRangeException.ThrowIfNegativeOrZero(s.Weight, nameof(question));
        }

        CuringParameters p = question.P;
        LocalDateTime[] moments = [.. sacks.SelectMany(s => s).Select(s => s.At).Distinct().Order()];
        double[] Residuals(double[] x)
        {
            Dictionary<LocalDateTime, double> ratios = Ratios(question, new YardKnowledge(x[0], 0, x[1], 0, x[2], 0).In(p), moments);
            var all = new List<double>();
            for (int k = 0; k < sacks.Length; k++)
                foreach (SackWeight s in sacks[k])
                    all.Add((Math.Log(s.Weight / sacks[k][0].Weight) - x[3 + k] - Math.Log(ratios[s.At])) / question.ScaleSd);
            all.Add(x[0] / p.RateSd);
            all.Add(x[1] / p.GreenSd);
            all.Add(x[2] / p.CloveSd);
            return [.. all];
        }

        FitAnswer fit = CurveFit.Of(new FitQuestion(Residuals, new double[3 + sacks.Length], MostSteps: 200));
        double[] last = Residuals(fit.Parameters);
        SackWeight[] weighed = [.. sacks.SelectMany(s => s)];
        int freedom = weighed.Length - sacks.Length - 3;
        double sum = last.Take(weighed.Length).Sum(r => r * r);
        // The prior's width is stated, not estimated: errors are scaled up when the weighings scatter more than the scale does, never down.
        double scale = freedom > 0 ? Math.Max(1, Math.Sqrt(sum / freedom)) : 1;
        double per = fit.ResidualSd > 0 ? scale / fit.ResidualSd : 0;
        double Sd(int j, double prior) => per > 0 && double.IsFinite(fit.StandardErrors[j]) ? Math.Min(prior, fit.StandardErrors[j] * per) : prior;
        int worst = Enumerable.Range(0, weighed.Length).MaxBy(i => Math.Abs(last[i]));
        double both = Math.Sqrt(fit.Covariance[0, 0] * fit.Covariance[1, 1]);
        return new CalibrationAnswer(
            new YardKnowledge(fit.Parameters[0], Sd(0, p.RateSd), fit.Parameters[1], Sd(1, p.GreenSd), fit.Parameters[2], Sd(2, p.CloveSd)),
            sacks.Length, leftOut, weighed.Length, freedom > 0 ? Math.Sqrt(sum / freedom) * question.ScaleSd : null,
            both > 0 ? fit.Covariance[0, 1] / both : 0, fit.Condition, fit.Steps, fit.End, weighed[worst], last[worst] * question.ScaleSd);
    }

    /// <summary>Weight over dug weight at each moment (in order).</summary>
    private static Dictionary<LocalDateTime, double> Ratios(CalibrationQuestion question, CuringParameters p, LocalDateTime[] moments)
    {
        var ratios = new Dictionary<LocalDateTime, double>();
        CuringState state = CuringLaw.Dug(p);
        int next = 0;
        for (int i = 0; i < question.Weather.Count && next < moments.Length; i++)
        {
            WeatherRow row = question.Weather[i];
            double hours = Curing.Hours(question.Weather, i);
            LocalDateTime end = row.From.PlusSeconds((long)Math.Round(hours * 3600));
            while (next < moments.Length && moments[next] <= end && (moments[next] < end || i == question.Weather.Count - 1))
            {
                double into = Period.Between(row.From, moments[next], PeriodUnits.Seconds).Seconds / 3600.0;
                // A weighing at a row's very start is before its rain.
                ratios[moments[next]] = CuringLaw.MassRatio(p, into <= 0 ? state : CuringLaw.After(p, question.Keep, state, row, into));
                next++;
            }

            state = CuringLaw.After(p, question.Keep, state, row, hours);
        }

        return ratios;
    }
}
