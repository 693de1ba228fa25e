using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots;

/// <summary>What is told of one lot: its rows, its sampled bulbs, its cells, and what the sizer saw of it.</summary>
internal sealed record LotEvidence(LotRow[] Rows, int Group, SampleBulb[] Bulbs, SizerTold? Sizer = null)
{
    // A sample all of one weight, or a scale that rounds, says nothing of a spread under 2%.
    private const double LeastVariance = 0.02 * 0.02;

    public LotRow Head => Rows[0];

    public double BinsStanding => Rows.Sum(r => r.Bins);

    // A mouldy or decayed bulb has lost weight and is in no size class.
    public double[] Logs { get; } = [.. Bulbs.Where(b => b.Defect is not (Defect.Mold or Defect.Decay)).Select(b => Math.Log(b.WeightG))];

    public int Weighed => Logs.Length;

    public double MeanLog => Logs.Average();

    public double VarianceOfLogs
    {
        get
        {
            double mean = MeanLog;
            return Math.Max(LeastVariance, Logs.Sum(x => (x - mean) * (x - mean)) / (Logs.Length - 1));
        }
    }

    /// <summary>Whether bulbs of it were weighed, by hand or by the sizer.</summary>
    public bool TellsMean => Weighed > 0 || Sizer is not null;

    /// <summary>Mean of ln g and its error variance, of bulbs weighed by hand and by the sizer, for bulbs of this variance.</summary>
    public (double Mean, double Error) MeanTold(double s2)
    {
        if (Sizer is not { } told)
            return (MeanLog, s2 / Weighed);
        var sized = new MeanBelief(told.Mean, told.Error);
        MeanBelief both = Weighed > 0 ? sized.With(MeanLog, s2 / Weighed) : sized;
        return (both.Mean, both.Variance);
    }

    /// <summary>Variance of ln g and its degrees of freedom; null where too few bulbs were weighed to tell.</summary>
    public (double S2, double Freedom)? SpreadTold
    {
        get
        {
            (double s2, double freedom) = Weighed > 1 ? (VarianceOfLogs, Weighed - 1.0) : (0, 0);
            // Bins differ in spread as they do in size, so a sizer's spread too is worth only its fair bulbs.
            if (Sizer is { } told && told.Worth > 1)
                (s2, freedom) = ((s2 * freedom + told.Within * told.Worth) / (freedom + told.Worth), freedom + told.Worth);
            return freedom > 0 ? (Math.Max(LeastVariance, s2), freedom) : null;
        }
    }

    /// <summary>How far the lot's ln g lies above the mass law at its bulbs' diameters: mean, and how many were measured.</summary>
    public (double Mean, int Count) AboveLaw(MassLaw law)
    {
        double sum = 0;
        int count = 0;
        foreach (SampleBulb bulb in Bulbs)
        {
            if (bulb.DiameterMm is not { } mm || bulb.Defect is Defect.Mold or Defect.Decay)
                continue;
            sum += Math.Log(bulb.WeightG) - law.A - law.B * Math.Log(mm);
            count++;
        }

        return (count > 0 ? sum / count : 0, count);
    }

    /// <summary>Of the bulbs that were measured, mm.</summary>
    public double[] Diameters { get; } = [.. Bulbs.Where(b => b.DiameterMm is not null && b.Defect is not (Defect.Mold or Defect.Decay)).Select(b => b.DiameterMm!.Value)];

    /// <summary>Measured bulbs under the chart, in each class, and over it.</summary>
    public double[] InClasses(IReadOnlyList<SizeClass> sizes)
    {
        var counts = new double[sizes.Count + 2];
        foreach (double mm in Diameters)
        {
            int c = 0;
            while (c < sizes.Count && mm >= sizes[c].MinMm)
                c++;
            counts[c == sizes.Count && mm >= sizes[^1].MaxMm ? c + 1 : c]++;
        }

        return counts;
    }

    public DefectSample Defects => DefectSample.Of(Bulbs);

    /// <summary>Mean of the rows that give both shares, by net; null if none does.</summary>
    public SoundShares? GivenShares
    {
        get
        {
            double net = 0, fresh = 0, crack = 0;
            foreach (LotRow row in Rows)
            {
                if (row is not { FreshShare: { } f, CrackShare: { } c })
                    continue;
                net += row.Net;
                fresh += row.Net * f;
                crack += row.Net * c;
            }

            return net > 0 ? new SoundShares(fresh / net, crack / net) : null;
        }
    }

    public bool EveryRowGivesShares => Rows.All(r => r is { FreshShare: not null, CrackShare: not null });
}
