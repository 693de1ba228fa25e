using Cloveshed.Core.Planning.Supposing;
using Cloveshed.Solver.Highs;
using Cloveshed.Web.Promises;

namespace Cloveshed.Web.Tests.Promises;

/// <summary>
/// Holds up the answers of a room whose model is ready, as another question that takes long does, so that a test can look at a question while it waits: the thread that answers waits for a model that nobody makes.
/// </summary>
internal sealed class HeldAnswers : IDisposable
{
    private readonly PromiseStand never;
    private bool released;

    public HeldAnswers(PromiseRoom room)
    {
        never = new PromiseStand(room.Standing!.Basis, StandReason.First, () => 0);
        room.Suppose(never, [new SeasonChange.OrderCancelled(new("none"), null)]);
    }

    /// <summary>The questions that wait have their turn.</summary>
    public void Release()
    {
        if (!released)
        {
            released = true;
            never.Drop();
            never.Prepare(new HighsSolver(), 1, 1);
        }
    }

    public void Dispose()
    {
        Release();
        never.Dispose();
    }
}
