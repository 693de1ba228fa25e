using Cloveshed.App.Words;
using Cloveshed.SeasonFiles.Faults;
using Cloveshed.SeasonFiles.Weighing;

namespace Cloveshed.App.Sizing;

/// <summary>Takes what a file of the line held, or says what is wrong with it.</summary>
internal static class FileTold
{
    /// <summary>A person mends a few at a time; what a screen cannot hold is counted.</summary>
    private const int FaultsShown = 10;

    /// <summary>The value, or null when faults were told.</summary>
    public static T? Take<T>(FileReading<T> reading, World world, Phrasebook phrases) where T : class
    {
        foreach (SeasonWarning warning in reading.Warnings)
        {
            world.Error.WriteLine(phrases.Say(Phrase.WarningLine, warning));
        }

        foreach (Fault fault in reading.Faults.Take(FaultsShown))
        {
            world.Error.WriteLine(fault);
        }

        if (reading.FaultCount > FaultsShown)
        {
            world.Error.WriteLine(phrases.Say(Phrase.MoreFaults, reading.FaultCount - FaultsShown));
        }

        return reading.Value;
    }
}
