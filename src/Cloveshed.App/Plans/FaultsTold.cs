using Cloveshed.App.Words;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.App.Plans;

/// <summary>Faults of a folder's files under the line that refuses it, and how many more there are than are listed.</summary>
internal static class FaultsTold
{
    public static void Tell(IReadOnlyList<Fault> faults, int count, World world, Phrasebook phrases)
    {
        foreach (Fault fault in faults)
        {
            world.Error.WriteLine("  " + fault);
        }

        if (count > faults.Count)
        {
            world.Error.WriteLine("  " + phrases.Say(Phrase.MoreFaults, count - faults.Count));
        }
    }
}
