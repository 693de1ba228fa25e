using Cloveshed.Core.Planning;

namespace Cloveshed.Web.Tests.Plan;

/// <summary>A solver that waits at a gate before each program, so that a test can look at a plan while it is being made.</summary>
internal sealed class GatedSolver(ILinearSolver solver) : ILinearSolver, IDisposable
{
    private readonly ManualResetEventSlim gate = new(initialState: false);
    private readonly TaskCompletionSource reached = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Completes when the planner stands at the gate for the first time.</summary>
    public Task Reached => reached.Task;

    public void Open() => gate.Set();

    public void Dispose() => gate.Dispose();

    public ILinearProgram NewProgram()
    {
        reached.TrySetResult();
        gate.Wait();
        return solver.NewProgram();
    }
}

/// <summary>A solver that does not come to be.</summary>
internal sealed class BrokenSolver : ILinearSolver
{
    public ILinearProgram NewProgram() => throw new InvalidOperationException("The solver's library is not there.");
}
