using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearAlgebra.Factorization;

namespace Cloveshed.Core.Lots;

/// <summary>
/// The lots of a history by the levels that they share. Fields are many and each lot has one, so they are eliminated first; what is left
/// (the mean, varieties, seasons) is a handful of unknowns however many lots there are.
/// </summary>
internal sealed class LotLevels
{
    private readonly Dictionary<string, int> varieties = [], fields = [];
    private readonly Dictionary<int, int> seasons = [];

    public LotLevels(IReadOnlyList<PastLot> lots)
    {
        Lots = lots;
        foreach (PastLot lot in lots)
        {
            varieties.TryAdd(lot.Variety, varieties.Count);
            fields.TryAdd(lot.Field, fields.Count);
            seasons.TryAdd(lot.Season, seasons.Count);
        }

        Places = [.. lots.Select(l => (1 + varieties[l.Variety], 1 + varieties.Count + seasons[l.Season], fields[l.Field]))];
    }

    public IReadOnlyList<PastLot> Lots { get; }

    /// <summary>Of each lot: the places of its variety and its season among the unknowns (the mean is 0), and its field's number.</summary>
    public (int Variety, int Season, int Field)[] Places { get; }

    public int Varieties => varieties.Count;

    public int Seasons => seasons.Count;

    public int Fields => fields.Count;

    /// <summary>Mean, varieties, seasons.</summary>
    public int Unknowns => 1 + Varieties + Seasons;

    public int? VarietyOf(string variety) => varieties.TryGetValue(variety, out int v) ? 1 + v : null;

    public int? SeasonOf(int season) => seasons.TryGetValue(season, out int s) ? 1 + Varieties + s : null;

    public int? FieldOf(string field) => fields.TryGetValue(field, out int f) ? f : null;
}

/// <summary>
/// Henderson's equations for given sds: C b = r with C = [X'WX, X'WZ; Z'WX, Z'WZ + 1/sd^2], W = 1/(lot variance + error). The inverse of C
/// is the variance of what is predicted, and its determinant is all that the restricted likelihood needs beside those of W and the sds
/// (D. A. Harville, J. Amer. Stat. Assoc. 72 (1977) 320, from memory).
/// </summary>
internal sealed class LotEffects
{
    private readonly LotLevels levels;
    private readonly double[,] crossed;
    private readonly double[] pivot, right, found;
    private readonly Cholesky<double> factor;

    public LotEffects(LotLevels levels, HistorySpread spread)
    {
        (this.levels, Spread) = (levels, spread);
        int unknowns = levels.Unknowns, fields = levels.Fields;
        var matrix = new double[unknowns, unknowns];
        crossed = new double[fields, unknowns];
        pivot = [.. Enumerable.Repeat(1 / (spread.Field * spread.Field), fields)];
        right = new double[fields];
        var side = new double[unknowns];
        double logs = 0, squares = 0;
        for (int i = 0; i < levels.Lots.Count; i++)
        {
            (PastLot lot, (int v, int s, int f)) = (levels.Lots[i], levels.Places[i]);
            double variance = spread.Lot * spread.Lot + lot.Variance, w = 1 / variance;
            logs += Math.Log(variance);
            squares += w * lot.MeanLog * lot.MeanLog;
            pivot[f] += w;
            right[f] += w * lot.MeanLog;
            ReadOnlySpan<int> places = [0, v, s];
            foreach (int a in places)
            {
                side[a] += w * lot.MeanLog;
                crossed[f, a] += w;
                foreach (int b in places)
                    matrix[a, b] += w;
            }
        }

        for (int k = 1; k < unknowns; k++)
            matrix[k, k] += k <= levels.Varieties ? 1 / (spread.Variety * spread.Variety) : 1 / (spread.Season * spread.Season);
        for (int f = 0; f < fields; f++)
        {
            logs += Math.Log(pivot[f]);
            squares -= right[f] * right[f] / pivot[f];
            for (int a = 0; a < unknowns; a++)
            {
                double part = crossed[f, a] / pivot[f];
                if (part == 0)
                    continue;
                side[a] -= part * right[f];
                for (int b = 0; b < unknowns; b++)
                    matrix[a, b] -= part * crossed[f, b];
            }
        }

        factor = Matrix<double>.Build.DenseOfArray(matrix).Cholesky();
        var vector = Vector<double>.Build.Dense(side);
        Vector<double> solved = factor.Solve(vector);
        found = [.. solved];
        double sds = 2 * (levels.Varieties * Math.Log(spread.Variety) + levels.Seasons * Math.Log(spread.Season) + fields * Math.Log(spread.Field));
        RestrictedLikelihood = -0.5 * (logs + sds + factor.DeterminantLn + squares - solved.DotProduct(vector));
    }

    public HistorySpread Spread { get; }

    /// <summary>Its logarithm, up to a constant.</summary>
    public double RestrictedLikelihood { get; }

    /// <summary>
    /// Variance of a sum of lots' kinds, each times its weight: kinds share the mean, their variety, their season and their field, so that what they are
    /// off by adds up. What was never seen is shared by those that have it.
    /// </summary>
    public double SumVariance(IEnumerable<(string Variety, string Field, int Season, double Weight)> kinds)
    {
        var unknown = new double[found.Length];
        var fields = new double[pivot.Length];
        var newVarieties = new Dictionary<string, double>();
        var newFields = new Dictionary<string, double>();
        var newSeasons = new Dictionary<int, double>();
        foreach ((string variety, string field, int season, double weight) in kinds)
        {
            unknown[0] += weight;
            if (levels.VarietyOf(variety) is { } v)
                unknown[v] += weight;
            else
                newVarieties[variety] = newVarieties.GetValueOrDefault(variety) + weight;
            if (levels.SeasonOf(season) is { } s)
                unknown[s] += weight;
            else
                newSeasons[season] = newSeasons.GetValueOrDefault(season) + weight;
            if (levels.FieldOf(field) is { } f)
                fields[f] += weight;
            else
                newFields[field] = newFields.GetValueOrDefault(field) + weight;
        }

        double variance = Squares(newVarieties.Values) * Spread.Variety * Spread.Variety + Squares(newSeasons.Values) * Spread.Season * Spread.Season + Squares(newFields.Values) * Spread.Field * Spread.Field;
        for (int f = 0; f < fields.Length; f++)
        {
            variance += fields[f] * fields[f] / pivot[f];
            for (int k = 0; k < unknown.Length && fields[f] != 0; k++)
                unknown[k] -= fields[f] * crossed[f, k] / pivot[f];
        }

        var all = Vector<double>.Build.Dense(unknown);
        return variance + all.DotProduct(factor.Solve(all));

        static double Squares(IEnumerable<double> sums) => sums.Sum(sum => sum * sum);
    }

    /// <summary>The mean of lots of this kind. What was never seen adds its own variance.</summary>
    public MeanBelief Of(string variety, string field, int season)
    {
        var weight = Vector<double>.Build.Dense(found.Length);
        weight[0] = 1;
        double variance = 0, mean = 0;
        if (levels.VarietyOf(variety) is { } v)
            weight[v] = 1;
        else
            variance += Spread.Variety * Spread.Variety;
        if (levels.SeasonOf(season) is { } s)
            weight[s] = 1;
        else
            variance += Spread.Season * Spread.Season;
        if (levels.FieldOf(field) is { } f)
        {
            mean = right[f] / pivot[f];
            variance += 1 / pivot[f];
            for (int k = 0; k < found.Length; k++)
                weight[k] -= crossed[f, k] / pivot[f];
        }
        else
        {
            variance += Spread.Field * Spread.Field;
        }

        for (int k = 0; k < found.Length; k++)
            mean += weight[k] * found[k];
        return new(mean, variance + weight.DotProduct(factor.Solve(weight)));
    }
}
