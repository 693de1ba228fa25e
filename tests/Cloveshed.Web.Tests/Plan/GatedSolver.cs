using Cloveshed.Core.Planning;

namespace Cloveshed.Web.Tests.Plan;

/// <summary>A solver that waits at a gate before each program, so that a test can look at a plan while it is being made.</summary>
internal sealed class GatedSolver(ILinearSolver solver) : ILinearSolver, IDisposable
{
    private readonly SemaphoreSlim gate = new(0);
    private readonly TaskCompletionSource reached = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private volatile bool open;

    /// <summary>Completes when the planner stands at the gate for the first time.</summary>
    public Task Reached => reached.Task;

    /// <summary>Lets one program through: after the first, the planner has told a value and a bound when it stands here again.</summary>
    public void LetOne() => gate.Release();

    public void Open()
    {
        open = true;
        gate.Release();
    }

    public void Dispose() => gate.Dispose();

    public ILinearProgram NewProgram()
    {
        reached.TrySetResult();
        if (!open)
        {
            gate.Wait();
        }

        return solver.NewProgram();
    }
}

/// <summary>A solver that does not come to be.</summary>
internal sealed class BrokenSolver : ILinearSolver
{
    public ILinearProgram NewProgram() => throw new InvalidOperationException("The solver's library is not there.");
}
