using Cloveshed.Core.Planning;

namespace Cloveshed.Solver.Highs;

/// <summary>Linear and mixed-integer programs by HiGHS. Each program is used by one thread at a time; several may run side by side.</summary>
public sealed class HighsSolver(int threads = 1) : ILinearSolver
{
    public ILinearProgram NewProgram() => new HighsProgram(threads);
}
