using Cloveshed.Core.Planning;
using Cloveshed.Core.Seasons;

namespace Cloveshed.Core.Scenarios;

/// <summary>Makes runs for planting cloves of other lots than the plan's, where cloves that it meant to have by now are missing.</summary>
internal sealed class MoreSeed(ReplayShed shed, Yard yard, KeepWorths worths, RunsMade made)
{
    private readonly PlanningInstance instance = shed.Instance;

    /// <summary>Other lots for planting cloves that the plan meant to have by now.</summary>
    public void Make(int week, LineBook book)
    {
        for (int n = 0; n < instance.SeedNeeds.Length; n++)
        {
            InstanceSeedNeed need = instance.SeedNeeds[n];
            if (week > need.ByWeek) continue;
            for (int round = 0; round < 4; round++)
            {
                double due = shed.Policy.SeedBy[n][week] - made.SeedMade[n];
                if (due <= 1e-5 * need.Mass) break;
                (Batch Batch, int Line, double Mass)? best = null;
                double most = 1e-9;
                foreach (Batch b in yard.Batches)
                {
                    InstanceLot lot = instance.Lots[b.Lot];
                    if (!yard.MayRun(b, week) || lot.Seed is not { } cls || cls > need.Class || lot.Inhibitor || lot.Variety != need.Variety) continue;
                    double per = b.Ratio * yard.Sound(b).Fresh * instance.KeptSeed;
                    for (int i = 0; i < instance.Lines.Length; i++)
                    {
                        if (instance.Lines[i].Mode != LineMode.Seed) continue;
                        double room = Math.Min(b.Left, book.Room(i, b.Lot) / b.Ratio), least = book.IsSetUp(i, b.Lot) ? 0 : instance.Lines[i].MinRun / b.Ratio * (1 + 1e-6);
                        if (least > room || per <= 0) continue;
                        double mass = Math.Max(Math.Min(due / per, room), least);
                        double gain = Math.Min(due, mass * per) * need.ShortCost - (mass * b.Ratio / instance.Lines[i].Rate + book.SetUp(i, b.Lot)) * book.NextHour(i) - mass * worths.Of(b, week);
                        if (gain > most) (most, best) = (gain, (b, i, mass));
                    }
                }
                if (best is not { } found) break;
                made.Run(found.Batch, found.Line, found.Mass, [], n, week, book);
            }
        }
    }
}
