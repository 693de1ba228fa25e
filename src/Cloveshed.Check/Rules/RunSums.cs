using Cloveshed.Check.Answer;
using Cloveshed.Check.Season;

namespace Cloveshed.Check.Rules;

/// <summary>One lot in one run, over all its paths: what goes in, and how much of that is fit for what. As weighed that week.</summary>
internal sealed class RunLot(Lot lot, string run, int week, string mode, bool sorted)
{
    public Lot Lot => lot;

    public string Run => run;

    public int Week => week;

    public string Mode => mode;

    public bool Sorted => sorted;

    public double MassIn { get; set; }

    /// <summary>Mass in that makes grade.</summary>
    public double Fresh { get; set; }

    /// <summary>Mass in that is sound but fails grade.</summary>
    public double Crack { get; set; }
}

/// <summary>What the runs take in, by run and lot.</summary>
internal sealed class RunSums
{
    private readonly Dictionary<(string Run, string Lot), RunLot> sums = [];

    public IReadOnlyCollection<RunLot> All => sums.Values;

    public RunLot? Find(string run, string lot) => sums.GetValueOrDefault((run, lot));

    public static RunSums Of(SeasonData season, AnswerData answer, PathTracks tracks)
    {
        var runs = new RunSums();
        foreach (RunRow row in answer.Runs)
        {
            if (!runs.sums.TryGetValue((row.Run, row.Lot), out RunLot? sum))
            {
                // The mode is the line's: what a row calls its mode is compared with it by RunRules.
                sum = new RunLot(season.Lots[row.Lot], row.Run, row.Week, season.Lines[row.OnLine].Mode, row.Sorted);
                runs.sums.Add((row.Run, row.Lot), sum);
            }

            sum.MassIn += row.MassIn;
            if (!row.Sorted && tracks.Find(row.Path)?.States[row.Week] is PathRow state)
            {
                sum.Fresh += row.MassIn * state.Fresh;
                sum.Crack += row.MassIn * state.Crack;
            }
        }

        return runs;
    }
}
