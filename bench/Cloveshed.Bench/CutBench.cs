using System.Globalization;
using Cloveshed.Core.Cuts;
using Cloveshed.Core.Lots;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using Cloveshed.SeasonFiles;

namespace Cloveshed.Bench;

/// <summary>
/// The cuts' search beside a plain dynamic programme over all pairs of grid points and beside trying every setting; and what the cuts earn on
/// the demo's lots, made from the sample and judged on the hidden truth, beside nominal cuts.
/// </summary>
internal static class CutBench
{
    public static void Run(string folder, string truth, int repeats)
    {
        SizeCurve curve = new(56, 0.34);
        CutQuestion question = new(
            new([new(1, curve.Mu, Math.Sqrt(curve.SigmaSquared))]), new(-6.482, 2.646, 0.06), new(-6.482, 2.646, 0.06), TradeChart.Us, CutQuestion.UsualPrices(9), 0.05, 0.1);
        Console.WriteLine("| grid | points | search | plain, all pairs | ratio | every setting |\n| --- | ---: | ---: | ---: | ---: | ---: |");
        foreach (double step in (double[])[20, 5, 1, 0.5, 0.1])
        {
            CutTable table = CutTable.Of(question.Curve, question.Law, question.Chart, step);
            double value = 0, pairs = 0, all = 0;
            double own = Sizing.Median(repeats, () => value = new CutSearch(table, question.PricePerKg, (_, _) => question.Tolerance, true).Best(9).Value);
            double plain = Sizing.Median(step < 0.5 ? 1 : repeats, () => pairs = AllPairs(table, question));
            double? every = step >= 20 ? Sizing.Median(1, () => all = EverySetting(table, question)) : null;
            if (Math.Abs(value - pairs) > 1e-9 || (every is not null && Math.Abs(all - pairs) > 1e-9))
                throw new InvalidOperationException($"The searches disagree at {step} g: {value}, {pairs}, {all}.");
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {step} g | {table.Points} | {own * 1000:0.00} ms | {plain * 1000:0.00} ms | {plain / own:0.0} | {(every is { } s ? $"{s * 1000:0.0} ms" : "")} |"));
        }

        double table01 = Sizing.Median(repeats, () => CutTable.Of(question.Curve, question.Law, question.Chart, 0.1));
        double choose = Sizing.Median(repeats, () => CutChoosing.Choose(question));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"\nA whole answer at 0.1 g: {choose * 1000:0} ms, of it the table {table01 * 1000:0} ms."));
        OnTheDemo(folder, truth);
    }

    private static void OnTheDemo(string folder, string truthFile)
    {
        Season season = SeasonReader.Read(folder).Season ?? throw new ArgumentException($"{folder} does not hold a sound season.");
        Dictionary<string, string[]> truths = File.ReadLines(truthFile).Skip(1).Select(row => row.Split(',')).DistinctBy(row => row[0]).ToDictionary(row => row[0]);
        ILookup<Core.LotId, SampleBulb> samples = season.Samples.ToLookup(s => s.Lot);
        SizeClass[] three = [new(new("Small"), null, 37, 47), new(new("Medium"), null, 47, 57), new(new("Large"), null, 57, null)];
        SizeClass[] two = [new(new("Medium"), null, 37, 50), new(new("Large"), null, 50, null)];
        Console.WriteLine("\n| chart | lots | cuts hold | nominal: boxes off tolerance | value | nominal | gain |\n| --- | ---: | ---: | ---: | ---: | ---: | ---: |");
        foreach ((string name, SizeClass[] chart, double tolerance) in ((string, SizeClass[], double)[])[("trade, 5%", [.. season.Sizes], 0.05), ("three of 10 mm, 5%", three, 0.05), ("three of 10 mm, 10%", three, 0.1), ("two, 5%", two, 0.05), ("two, 10%", two, 0.1)])
        {
            int lots = 0, held = 0, boxes = 0, off = 0, nominalBoxes = 0;
            double value = 0, nominal = 0;
            foreach (IGrouping<Core.LotId, LotRow> rows in season.Lots.GroupBy(r => r.Lot))
            {
                SampledBulb[] bulbs = [.. samples[rows.Key].Where(s => s.Defect is not (Defect.Mold or Defect.Decay)).Select((s, k) => new SampledBulb(s.WeightG, s.DiameterMm, 1, k))];
                if (bulbs.Count(b => b.DiameterMm is not null) < 30)
                    continue;
                lots++;
                MassLaw variety = season.Varieties.Single(v => v.Id == rows.First().Variety).BulbLaw;
                MassLawFit law = Allometry.Of(bulbs, variety);
                CutQuestion asked = new(
                    MixtureFit.Usual(WeightCells.OfWeights([.. bulbs.Select(b => b.WeightG)])).Curve, law.DiameterOnMass, law.MeanLaw, chart, CutQuestion.UsualPrices(chart.Length), tolerance, 0.1);
                CutAnswer answer = CutChoosing.Choose(asked);
                CutQuestion real = asked with { Curve = TrueCurve(truths[rows.Key.Text]), Law = variety with { A = variety.A + At(truths[rows.Key.Text], 12) } };
                CutTable table = CutTable.Of(real.Curve, real.Law, chart, 0.1);
                // A buyer who finds a box a little over by bad luck of the sample still takes it at the next lower price: the same rule for both.
                Setting ours = CutChoosing.Judge(real, table, [.. answer.Best.Boxes.Select(b => b.Box)], answer.Best.OverG), theirs = CutChoosing.Judge(real, table, [.. answer.Nominal.Boxes.Select(b => b.Box)], null);
                value += ours.Value;
                nominal += theirs.Value;
                boxes += ours.Boxes.Count;
                held += ours.Boxes.Count(b => b.Below + b.Above <= 1.5 * tolerance);
                off += theirs.Boxes.Count(b => !b.Holds);
                nominalBoxes += theirs.Boxes.Count;
            }

            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"| {name} | {lots} | {held} of {boxes} | {off} of {nominalBoxes} | {value / lots:0.000} | {nominal / lots:0.000} | {(value / nominal - 1) * 100:+0.0;-0.0}% |"));
        }
    }

    private static double At(string[] row, int column) => double.Parse(row[column], CultureInfo.InvariantCulture);

    private static LognormalMixture TrueCurve(string[] row)
    {
        SizeCurve main = new(At(row, 8), At(row, 9)), little = At(row, 7) > 0 ? new(At(row, 10), At(row, 11)) : main;
        return new([new(At(row, 7), little.Mu, Math.Sqrt(little.SigmaSquared)), new(1 - At(row, 7), main.Mu, Math.Sqrt(main.SigmaSquared))]);
    }

    // The programme as one would first write it: for every end, every begin.
    private static double AllPairs(CutTable table, CutQuestion question)
    {
        int n = table.Points, classes = question.Chart.Count;
        double[][] best = [.. Enumerable.Range(0, classes).Select(_ => Enumerable.Repeat(double.NegativeInfinity, n).ToArray())];
        for (int c = 0; c < classes; c++)
        {
            for (int e = c; e < classes; e++)
            {
                for (int j = 1; j < n; j++)
                {
                    for (int i = 0; i < j; i++)
                    {
                        double mass = table.Mass[j] - table.Mass[i], right = table.Wide[c][j] - table.Wide[c][i] - (table.Wide[e + 1][j] - table.Wide[e + 1][i]);
                        if (mass - right > question.Tolerance * mass + 1e-13)
                            continue;
                        double value = Math.Max(0, c > 0 ? best[c - 1][i] : 0) + question.PricePerKg[c] * mass;
                        if (value > best[e][j])
                            best[e][j] = value;
                    }
                }
            }
        }

        return Math.Max(0, best[classes - 1][n - 1]);
    }

    private static double EverySetting(CutTable table, CutQuestion question)
    {
        int n = table.Points, classes = question.Chart.Count;
        double best = 0;
        for (int c = 0; c < classes; c++)
        {
            for (int from = 0; from < n; from++)
                Go(c, from, 0);
        }

        return best;

        void Go(int c, int from, double earned)
        {
            for (int e = c; e < classes; e++)
            {
                for (int to = from + 1; to < n; to++)
                {
                    double mass = table.Mass[to] - table.Mass[from], right = table.Wide[c][to] - table.Wide[c][from] - (table.Wide[e + 1][to] - table.Wide[e + 1][from]);
                    if (mass - right > question.Tolerance * mass + 1e-13)
                        continue;
                    double now = earned + question.PricePerKg[c] * mass;
                    if (e == classes - 1 && to == n - 1)
                        best = Math.Max(best, now);
                    if (e + 1 < classes)
                        Go(e + 1, to, now);
                }
            }
        }
    }
}
