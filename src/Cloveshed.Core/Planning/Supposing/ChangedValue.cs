namespace Cloveshed.Core.Planning.Supposing;

/// <summary>How long to look. Rounds: of new columns, until the gap or until no more of them pay.</summary>
/// <param name="Nearest">What moves is of the nearest plan that keeps to the changes, unless more search finds one worth more by over this share of the season.</param>
internal sealed record SupposeDepth(int Rounds, double Gap, double Nearest);

/// <summary>A bound of the season as it stands at some prices, scaled money; with changes it is known from the same prices, but for what they do to it.</summary>
internal sealed record StandingBound(double Bound, Prices Prices);

/// <summary>What a changed master that is solved is worth, and its bound, as near as it is asked for.</summary>
internal sealed class ChangedValue(StandingBound standing, SupposeDepth depth, GenerationLimits limits, Action solveOn)
{
    /// <summary>Far: the value is of more search than the nearest plan had, and the master stands there.</summary>
    /// <param name="bound">One that is known already, at the standing prices; infinite where none is.</param>
    internal (double Value, double Bound, bool Far) Of(Master master, ChangePutting put, double bound)
    {
        double value = master.Value + put.ValueOfNothing, far = value;
        bool IsFar(double gap) => bound - far > gap * Math.Abs(far);
        if (double.IsFinite(bound) && IsFar(depth.Gap))
        {
            // The best bound is often between the prices of the plan and those of the change.
            Prices middle = master.UsablePrices().Toward(standing.Prices, 0.5, master.Instance, master.SpotsHere);
            UpperBound.Repair(master.Instance, middle);
            bound = Math.Min(bound, Pricing.At(master, middle, limits, 1).Bound + put.OnBound(middle));
        }
        // What is told is the nearest, unless another is worth more by over so much: a bound as near as that says that none is.
        double wanted = Math.Max(depth.Gap, depth.Nearest);
        for (int round = 0; IsFar(wanted); round++)
        {
            (double here, Prices prices, int added) = ColumnGeneration.Round(master, limits, put.Lines);
            bound = Math.Min(bound, here + put.OnBound(prices));
            if (round >= depth.Rounds || added == 0 || !IsFar(wanted)) break;
            put.Refresh();
            solveOn();
            far = master.Value + put.ValueOfNothing;
        }
        return far - value > depth.Nearest * Math.Abs(value) ? (far, bound, true) : (value, bound, false);
    }
}
