using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Lots;

/// <summary>What a season's files say of one lot: its rows, its sampled bulbs, its cells.</summary>
internal sealed record LotEvidence(LotRow[] Rows, int Group, SampleBulb[] Bulbs)
{
    // A sample all of one weight, or a scale that rounds, says nothing of a spread under 2%.
    private const double LeastVariance = 0.02 * 0.02;

    public LotRow Head => Rows[0];

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
