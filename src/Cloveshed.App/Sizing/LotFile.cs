using System.CommandLine;
using Cloveshed.App.CommandLine;
using Cloveshed.App.Words;
using Cloveshed.Core.Seasons;
using Cloveshed.Core.Sizes;
using Cloveshed.SeasonFiles.Weighing;

namespace Cloveshed.App.Sizing;

/// <summary>What `sizes` and `cuts` both start from: weighed bulbs, their mass law, and the chart to read them by.</summary>
internal sealed record LotFile(WeighedBulbs Bulbs, MassLawFit Law, IReadOnlyList<SizeClass> Chart)
{
    private const int OddShown = 5;

    public static Option<string> ChartOption(Phrasebook phrases) => Given.FileOption("--chart", "CSV", phrases[Phrase.ChartOption], phrases);

    /// <summary>Null when something was refused; then it has been said.</summary>
    public static LotFile? Read(string file, string? chartFile, World world, Phrasebook phrases)
    {
        WeighedBulbs? bulbs = FileTold.Take(WeightFile.Read(file, phrases.FileLanguage), world, phrases);
        IReadOnlyList<SizeClass>? chart = chartFile is null ? TradeChart.Us : FileTold.Take(ChartFile.Read(chartFile, phrases.FileLanguage), world, phrases);
        if (bulbs is null || chart is null)
        {
            return null;
        }

        MassLawFit law = Allometry.Of(bulbs.Rows);
        if (law.ByDefault)
        {
            world.Error.WriteLine(phrases.Say(Phrase.LawByDefault, law.Pairs, Allometry.LeastPairs));
        }

        foreach (OddBulb odd in law.Odd.Take(OddShown))
        {
            world.Error.WriteLine(phrases.Say(
                odd.Reason == OddReason.Shape ? Phrase.OddShape : Phrase.OddFar, file, odd.Bulb.Line, odd.Bulb.WeightG, odd.Bulb.DiameterMm, odd.Bulb.Shape * 1e4));
        }

        if (law.Odd.Count > OddShown)
        {
            world.Error.WriteLine(phrases.Say(Phrase.MoreOdd, law.Odd.Count - OddShown));
        }

        return new(bulbs, law, chart);
    }
}
