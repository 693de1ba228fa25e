using MathNet.Numerics;

namespace Cloveshed.Core.Lots;

/// <summary>One past lot's bulbs by size class, and what it was: index of its variety, of its field, of nothing more.</summary>
/// <param name="Counts">Bulbs in each class; fractions are allowed (a bulb that is half in each of two).</param>
public sealed record ClassCounts(int Variety, int Field, double[] Counts)
{
    /// <summary>All bulbs.</summary>
    public double Bulbs => Counts.Sum();
}

/// <summary>Shares by count, and how many bulbs they are known as well as by: a Dirichlet of Bulbs x Shares.</summary>
public sealed record ClassBelief(double[] Shares, double Bulbs)
{
    /// <summary>80% band of a class, by beta quantiles.</summary>
    public Band Band(int c) => DefectPooling.BandOf(Shares[c], Bulbs);

    /// <summary>Sd of a class's share.</summary>
    public double Sd(int c) => Math.Sqrt(Shares[c] * (1 - Shares[c]) / (Bulbs + 1));

    /// <summary>Joined with a lot's own bulbs.</summary>
    public ClassBelief With(double[] counts)
    {
        double own = counts.Sum(), all = Bulbs + own;
        return new([.. Shares.Select((s, c) => (Bulbs * s + counts[c]) / all)], all);
    }
}

/// <summary>
/// Class counts of many lots, Dirichlet-multinomial in a nest: lots of a field around the field's shares, fields of a variety around
/// the variety's, varieties around all. The strength of each level is the one under which the counts are likeliest (maximum marginal
/// likelihood; T. P. Minka, "Estimating a Dirichlet distribution", 2000, from memory, for the means), fitted, not chosen; where a level
/// has too little to tell, it is the default.
/// </summary>
public sealed class ClassCountPooling
{
    /// <summary>Bulbs that a level counts for where it cannot be fitted: lots in a field, fields in a variety, varieties.</summary>
    public static readonly double[] DefaultStrengths = [60, 60, 20];

    // A level with fewer children over its groups than this cannot tell real difference from chance.
    private const int LeastSurplus = 3;
    private const double LeastStrength = 1, MostStrength = 5000;

    private readonly ClassBelief all;
    private readonly Dictionary<int, ClassBelief> varieties = [];
    private readonly Dictionary<(int, int), ClassBelief> fields = [];

    private ClassCountPooling(ClassBelief all, double[] strengths, bool[] fitted) => (this.all, Strengths, Fitted) = (all, strengths, fitted);

    /// <summary>Bulbs that a field's shares count for in a lot, a variety's in a field, all in a variety.</summary>
    public double[] Strengths { get; }

    /// <summary>Whether each was fitted.</summary>
    public bool[] Fitted { get; }

    /// <summary>What is believed of a lot not yet seen: as far down the nest as its variety and field are known.</summary>
    public ClassBelief Prior(int variety, int field) =>
        fields.TryGetValue((variety, field), out ClassBelief? f) ? Down(f, Strengths[0])
        : varieties.TryGetValue(variety, out ClassBelief? v) ? Down(Down(v, Strengths[1]), Strengths[0])
        : Down(Down(Down(all, Strengths[2]), Strengths[1]), Strengths[0]);

    /// <summary>From past lots; one is enough. Flat counts (half a bulb a class) stand in for what no lot showed.</summary>
    public static ClassCountPooling Of(IReadOnlyList<ClassCounts> lots, int classes)
    {
        double[] flat = [.. Enumerable.Repeat(1.0 / classes, classes)];
        Level lot = Level.Of([.. lots.Select(l => l.Counts)], lots.Select(l => (l.Variety, l.Field)).ToArray(), DefaultStrengths[0]);
        Level field = Level.Of(lot.Groups, [.. lot.Keys.Select(k => (k.Item1, 0))], DefaultStrengths[1]);
        Level variety = Level.Of(field.Groups, [.. field.Keys.Select(_ => (0, 0))], DefaultStrengths[2]);
        ClassBelief all = new ClassBelief(flat, classes / 2.0).With(variety.Groups.Count > 0 ? variety.Groups[0] : new double[classes]);
        var pooling = new ClassCountPooling(all, [lot.Strength, field.Strength, variety.Strength], [lot.Fitted, field.Fitted, variety.Fitted]);
        for (int k = 0; k < field.Keys.Count; k++)
            pooling.varieties.Add(field.Keys[k].Item1, Down(all, variety.Strength).With(field.Groups[k]));
        for (int k = 0; k < lot.Keys.Count; k++)
            pooling.fields.Add(lot.Keys[k], Down(pooling.varieties[lot.Keys[k].Item1], field.Strength).With(lot.Groups[k]));
        return pooling;
    }

    /// <summary>
    /// ln of the marginal likelihood of one lot's counts under shares and a strength, without the multinomial coefficient, which knows
    /// of neither.
    /// </summary>
    public static double LogMarginal(double[] counts, double[] shares, double strength)
    {
        double sum = SpecialFunctions.GammaLn(strength) - SpecialFunctions.GammaLn(strength + counts.Sum());
        for (int c = 0; c < counts.Length; c++)
        {
            double a = strength * shares[c];
            if (counts[c] > 0)
                sum += SpecialFunctions.GammaLn(a + counts[c]) - SpecialFunctions.GammaLn(a);
        }

        return sum;
    }

    // A child differs from its parent by 1/(strength + 1), and the parent is known by its own bulbs only.
    private static ClassBelief Down(ClassBelief parent, double strength) => parent with { Bulbs = 1 / (1 / strength + 1 / parent.Bulbs) };

    /// <summary>One level of the nest: its children in groups, the strength between them, and what each group is worth as one child of the next level.</summary>
    private sealed record Level(IReadOnlyList<(int, int)> Keys, IReadOnlyList<double[]> Groups, double Strength, bool Fitted)
    {
        public static Level Of(IReadOnlyList<double[]> children, IReadOnlyList<(int, int)> keyOf, double otherwise)
        {
            (int, int)[] keys = [.. keyOf.Distinct()];
            int[][] members = [.. keys.Select(key => Enumerable.Range(0, children.Count).Where(i => keyOf[i] == key).ToArray())];
            bool fitted = children.Count - keys.Length >= LeastSurplus;
            double strength = otherwise;
            if (fitted)
            {
                // Golden section in ln M: the marginal likelihood has one hill in it.
                double low = Math.Log(LeastStrength), high = Math.Log(MostStrength), ratio = (Math.Sqrt(5) - 1) / 2;
                while (high - low > 1e-4)
                {
                    double a = high - ratio * (high - low), b = low + ratio * (high - low);
                    if (Likelihood(children, members, Math.Exp(a)) > Likelihood(children, members, Math.Exp(b)))
                        high = b;
                    else
                        low = a;
                }

                strength = Math.Exp((low + high) / 2);
            }

            return new(keys, [.. members.Select(m => Worth(children, m, strength))], strength, fitted);
        }

        // Each group's mean costs what it was fitted by, so a group of one says nothing.
        private static double Likelihood(IReadOnlyList<double[]> children, int[][] members, double strength)
        {
            double sum = 0;
            foreach (int[] group in members)
            {
                if (group.Length < 2)
                    continue;
                foreach (int i in group)
                {
                    int[] rest = [.. group.Where(j => j != i)];
                    // The others' mean is itself only known by what they are worth; else its error would pass for difference.
                    double known = 0.5 + rest.Sum(j => Weight(children[j], strength));
                    sum += LogMarginal(children[i], Mean(children, rest, strength), 1 / (1 / strength + 1 / known));
                }
            }

            return sum;
        }

        // A group's shares as its children weigh in them, and the bulbs that they are worth: children differ, so fewer than were counted.
        private static double[] Worth(IReadOnlyList<double[]> children, int[] group, double strength)
        {
            double bulbs = group.Sum(i => Weight(children[i], strength));
            return [.. Mean(children, group, strength).Select(s => s * bulbs)];
        }

        private static double[] Mean(IReadOnlyList<double[]> children, int[] group, double strength)
        {
            var mean = new double[children[0].Length];
            double all = 0;
            foreach (int i in group)
            {
                double bulbs = children[i].Sum(), weight = Weight(children[i], strength);
                all += weight;
                for (int c = 0; c < mean.Length; c++)
                    mean[c] += weight * (bulbs > 0 ? children[i][c] / bulbs : 0);
            }

            // Half a bulb over all classes, so that a class that none of them showed is still thought of.
            for (int c = 0; c < mean.Length; c++)
                mean[c] = (mean[c] + 0.5 / mean.Length) / (all + 0.5);
            return mean;
        }

        private static double Weight(double[] counts, double strength)
        {
            double bulbs = counts.Sum();
            return bulbs > 0 ? 1 / (1 / (strength + 1) + 1 / bulbs) : 0;
        }
    }
}
