using MathNet.Numerics.Distributions;
using NodaTime;

namespace Cloveshed.Core.Keep.Clocks;

/// <summary>A stretch of a lot's future in one climate.</summary>
public sealed record FutureStay(int Days, Climate Climate);

/// <summary>A lot as it is, what is believed of its clocks, and where it will stand.</summary>
/// <param name="Now">By the law alone, as of <paramref name="Today"/>.</param>
/// <param name="Future">The last stretch goes on without end.</param>
/// <param name="LeastSound">Share of sound bulbs under which it is too late; a fifth lost by default.</param>
public sealed record RunByQuestion(
    LotClocks Now, ClockBelief Belief, KeepingTraits Traits, LotCondition Condition, IReadOnlyList<FutureStay> Future, LocalDate Today, KeepingParameters P,
    double LeastSound = 1 - KeepingLaw.LostAtEndOfLife);

/// <summary>The last day on which enough of a lot is sound, and the band about it; days that would be over four years away are four years away.</summary>
/// <param name="Low80">One chance in ten that it is sooner: the day to work by when being late is dear.</param>
/// <param name="SoundToday">Share sound by what is believed now.</param>
public sealed record RunByAnswer(LocalDate By, LocalDate Low80, LocalDate High80, double SoundToday);

/// <summary>The day by which a lot must be run.</summary>
public static class RunBy
{
    private const int Draws = 401, MostDays = 1461;

    /// <summary>
    /// Pure: the speeds of sprouting and decay are drawn from the belief at fixed, evenly spread points (R. D. Roberts's additive recurrence,
    /// from memory), the day found for each, and the tenth, middle and ninetieth hundredths taken.
    /// </summary>
    public static RunByAnswer Of(RunByQuestion question)
    {
        if (question.Future.Count == 0 || question.Future.Any(stay => stay.Days < 0))
            throw new ArgumentException("A lot stands somewhere: its future has a stretch or more, of no negative length.", nameof(question));
        (double[] sprout, double[] decay) = Ahead(question);
        ClockBelief belief = question.Belief;
        double sd = Math.Sqrt(belief.Covariance[1, 1]), along = sd > 0 ? belief.Covariance[2, 1] / sd : 0;
        double across = Math.Sqrt(Math.Max(0, belief.Covariance[2, 2] - along * along));
        int[] days = new int[Draws];
        for (int k = 0; k < Draws; k++)
        {
            const double Plastic = 1.32471795724474602596;
            double z1 = Normal.InvCDF(0, 1, (0.5 + (k + 1) / Plastic) % 1), z2 = Normal.InvCDF(0, 1, (0.5 + (k + 1) / (Plastic * Plastic)) % 1);
            days[k] = LastDay(question, sprout, decay, Math.Exp(belief.LnSpeeds[1] + sd * z1), Math.Exp(belief.LnSpeeds[2] + along * z1 + across * z2));
        }

        Array.Sort(days);
        LocalDate At(double share) => question.Today.PlusDays(days[(int)Math.Round(share * (Draws - 1))]);
        double soundNow = BulbLosses.Of(question.P, question.Condition, question.Now.Sprout * Math.Exp(belief.LnSpeeds[1]), question.Now.Decay * Math.Exp(belief.LnSpeeds[2])).Sound;
        return new RunByAnswer(At(0.5), At(0.1), At(0.9), soundNow);
    }

    /// <summary>Life used by each clock, by the law, at the start of each day from today on.</summary>
    private static (double[] Sprout, double[] Decay) Ahead(RunByQuestion question)
    {
        double[] sprout = new double[MostDays + 1], decay = new double[MostDays + 1];
        (sprout[0], decay[0]) = (question.Now.Sprout, question.Now.Decay);
        int stay = 0, until = question.Future[0].Days;
        (double s, double d) = KeepingLaw.LifeUsedByClock(question.P, question.Traits, question.Future[0].Climate);
        for (int day = 0; day < MostDays; day++)
        {
            while (day >= until && stay + 1 < question.Future.Count)
            {
                stay++;
                until += question.Future[stay].Days;
                (s, d) = KeepingLaw.LifeUsedByClock(question.P, question.Traits, question.Future[stay].Climate);
            }

            sprout[day + 1] = sprout[day] + s / 7;
            decay[day + 1] = decay[day] + d / 7;
        }

        return (sprout, decay);
    }

    /// <summary>Soundness only falls, so the day is found by halving; 0 for a lot that is past it.</summary>
    private static int LastDay(RunByQuestion question, double[] sprout, double[] decay, double sproutSpeed, double decaySpeed)
    {
        bool Sound(int day) => BulbLosses.Of(question.P, question.Condition, sprout[day] * sproutSpeed, decay[day] * decaySpeed).Sound >= question.LeastSound;
        if (!Sound(0))
            return 0;
        int low = 0, high = MostDays + 1;
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = Sound(middle) ? (middle, high) : (low, middle);
        }

        return low;
    }
}
