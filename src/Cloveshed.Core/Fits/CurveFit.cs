using MathNet.Numerics.LinearAlgebra;

namespace Cloveshed.Core.Fits;

/// <summary>A nonlinear least squares problem: numbers whose squares are to be least in sum.</summary>
/// <param name="Residuals">Pure; as many as there are observations (and priors), for any parameters, all finite at the start.</param>
/// <param name="Start">Where to begin.</param>
/// <param name="MostSteps">Steps tried before giving up.</param>
public sealed record FitQuestion(Func<double[], double[]> Residuals, double[] Start, int MostSteps = 2000);

/// <summary>Why a fit ended.</summary>
public enum FitEnd
{
    /// <summary>No step, however small, changes the parameters or the sum of squares by a digit that counts.</summary>
    Converged,

    /// <summary>The steps allowed were used up: the numbers are not to be trusted.</summary>
    StepsUsedUp,

    /// <summary>The residuals leave a parameter, or a mixture of some, undetermined.</summary>
    Undetermined,
}

/// <summary>A fit and its diagnostics.</summary>
/// <param name="StandardErrors">Of each parameter; infinite where undetermined or where there are no more residuals than parameters.</param>
/// <param name="Covariance">Of the parameters, scaled by the residual variance.</param>
/// <param name="ResidualSd">Square root of the sum of squares over the degrees of freedom; 0 where there are none.</param>
/// <param name="Condition">Of the Jacobian with columns of length 1: near 1 is well set, over 1e8 hardly determined.</param>
public sealed record FitAnswer(
    double[] Parameters, double[] StandardErrors, double[,] Covariance, double SumOfSquares, double ResidualSd, int Freedom, double Condition, int Steps, FitEnd End);

/// <summary>
/// K. Levenberg (1944) and D. W. Marquardt (1963): between Newton's step and the steepest descent, with parameters scaled by
/// their effect; damping as H. B. Nielsen (1999) adapts it (all three from memory). Slopes are central differences. Held to the
/// certified values of the NIST Statistical Reference Datasets.
/// </summary>
public static class CurveFit
{
    private const double SlopeStep = 6e-6, SmallStep = 1e-12;

    /// <summary>Pure; the same question has the same answer, digit for digit.</summary>
    public static FitAnswer Of(FitQuestion question)
    {
        double[] x = [.. question.Start];
        double[] residuals = question.Residuals(x);
        double sum = Sum(residuals);
        if (!double.IsFinite(sum))
            throw new ArgumentException("The residuals are not finite where the fit is to start.", nameof(question));
        // Short first steps: a bold one can land where an exponential has died and nothing slopes any more (BoxBOD from its far start).
        double damping = 100, raise = 2;
        Matrix<double> slopes = Slopes(question.Residuals, x, residuals.Length);
        double[] scale = new double[x.Length];
        FitEnd end = FitEnd.StepsUsedUp;
        int steps = 0, small = 0;
        while (steps < question.MostSteps)
        {
            for (int j = 0; j < x.Length; j++)
                scale[j] = Math.Max(scale[j], Math.Max(slopes.Column(j).L2Norm(), 1e-300));
            steps++;
            double[] step = Step(slopes, residuals, scale, damping);
            double[] tried = [.. x.Zip(step, (at, by) => at + by)];
            double[] there = question.Residuals(tried);
            double newSum = Sum(there);
            bool tiny = step.Zip(x, (by, at) => Math.Abs(by) <= SmallStep * (Math.Abs(at) + SmallStep)).All(yes => yes);
            if (double.IsFinite(newSum) && newSum <= sum)
            {
                double foreseen = sum - Sum(Predicted(slopes, residuals, step));
                double gain = foreseen > 0 ? (sum - newSum) / foreseen : 1;
                bool still = sum - newSum <= 1e-15 * sum;
                (x, residuals, sum) = (tried, there, newSum);
                slopes = Slopes(question.Residuals, x, residuals.Length);
                damping = Math.Max(1e-20, damping * Math.Max(1.0 / 3, 1 - Math.Pow(2 * gain - 1, 3)));
                raise = 2;
                // Twice in a row: one still step may only be a flat stretch.
                small = still || tiny ? small + 1 : 0;
                if (small >= 2 || sum == 0)
                {
                    end = FitEnd.Converged;
                    break;
                }
            }
            else
            {
                if (tiny)
                {
                    end = FitEnd.Converged;
                    break;
                }

                damping = Math.Min(1e300, damping * raise);
                raise = Math.Min(raise * 2, 1e6);
            }
        }

        return Answer(x, residuals, sum, slopes, steps, end);
    }

    private static FitAnswer Answer(double[] x, double[] residuals, double sum, Matrix<double> slopes, int steps, FitEnd end)
    {
        int freedom = residuals.Length - x.Length;
        double sd = freedom > 0 ? Math.Sqrt(sum / freedom) : 0;
        double[] length = [.. Enumerable.Range(0, x.Length).Select(j => slopes.Column(j).L2Norm())];
        double[,] covariance = new double[x.Length, x.Length];
        double condition = double.PositiveInfinity;
        if (length.All(l => l > 0) && freedom >= 0)
        {
            // With columns of length 1, so that pounds and days do not pass for a near dependence.
            Matrix<double> unit = Matrix<double>.Build.Dense(slopes.RowCount, x.Length, (i, j) => slopes[i, j] / length[j]);
            condition = unit.Svd(false).ConditionNumber;
            if (condition < 1e12)
            {
                Matrix<double> inverse = unit.QR().R.SubMatrix(0, x.Length, 0, x.Length).Inverse();
                Matrix<double> both = inverse * inverse.Transpose();
                for (int i = 0; i < x.Length; i++)
                    for (int j = 0; j < x.Length; j++)
                        covariance[i, j] = both[i, j] * sd * sd / (length[i] * length[j]);
            }
        }

        bool determined = condition < 1e12;
        double[] errors = [.. Enumerable.Range(0, x.Length).Select(j => determined && freedom > 0 ? Math.Sqrt(covariance[j, j]) : double.PositiveInfinity)];
        return new FitAnswer(x, errors, covariance, sum, sd, freedom, condition, steps, end == FitEnd.Converged && !determined ? FitEnd.Undetermined : end);
    }

    /// <summary>Least squares of [J; sqrt(damping) D] against [-r; 0], by Householder's QR: no squared condition.</summary>
    private static double[] Step(Matrix<double> slopes, double[] residuals, double[] scale, double damping)
    {
        int rows = slopes.RowCount, columns = slopes.ColumnCount;
        double root = Math.Sqrt(damping);
        Matrix<double> both = Matrix<double>.Build.Dense(rows + columns, columns);
        for (int j = 0; j < columns; j++)
        {
            for (int i = 0; i < rows; i++)
                both[i, j] = slopes[i, j] / scale[j];
            both[rows + j, j] = root;
        }

        Vector<double> against = Vector<double>.Build.Dense(rows + columns, i => i < rows ? -residuals[i] : 0);
        Vector<double> scaled = both.QR().Solve(against);
        return [.. Enumerable.Range(0, columns).Select(j => scaled[j] / scale[j])];
    }

    private static double[] Predicted(Matrix<double> slopes, double[] residuals, double[] step) =>
        [.. (slopes * Vector<double>.Build.Dense(step) + Vector<double>.Build.Dense(residuals))];

    private static Matrix<double> Slopes(Func<double[], double[]> of, double[] x, int rows)
    {
        Matrix<double> slopes = Matrix<double>.Build.Dense(rows, x.Length);
        for (int j = 0; j < x.Length; j++)
        {
            double by = SlopeStep * Math.Max(Math.Abs(x[j]), 1e-4);
            double[] up = [.. x], down = [.. x];
            up[j] += by;
            down[j] -= by;
            double[] above = of(up), below = of(down);
            for (int i = 0; i < rows; i++)
            {
                double slope = (above[i] - below[i]) / (up[j] - down[j]);
                slopes[i, j] = double.IsFinite(slope) ? slope : 0;
            }
        }

        return slopes;
    }

    private static double Sum(double[] residuals)
    {
        double sum = 0;
        foreach (double r in residuals)
            sum += r * r;
        return sum;
    }
}
