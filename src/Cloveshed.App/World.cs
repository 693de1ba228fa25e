using System.Diagnostics;
using System.Runtime.InteropServices;
using Cloveshed.Core.Planning;
using Cloveshed.Core.Shift;
using Cloveshed.Solver.Highs;
using Cloveshed.Solver.Shift;

namespace Cloveshed.App;

/// <summary>
/// What a command has around it, besides files: where it writes, its clock, its environment, how a person stops it, and the solver.
/// </summary>
/// <param name="ErrorIsTerminal">Whether progress may be drawn: one line, rewritten in place.</param>
/// <param name="Elapsed">Seconds on a clock that never goes back.</param>
/// <param name="Variable">An environment variable, or null.</param>
/// <param name="OnStop">Calls back on the first request to stop (Ctrl-C, a polite kill); the second ends the process as usual.</param>
public sealed record World(
    TextWriter Output, TextWriter Error, bool ErrorIsTerminal, Func<double> Elapsed, Func<string, string?> Variable,
    Func<Action, IDisposable> OnStop, ILinearSolver Solver)
{
    /// <summary>The time of day and the time zone.</summary>
    public TimeProvider Clock { get; init; } = TimeProvider.System;

    /// <summary>What puts a week's runs in order.</summary>
    public IShiftScheduler Shifts { get; init; } = new CpShiftScheduler();

    /// <summary>The running process.</summary>
    public static World OfThisProcess()
    {
        var clock = Stopwatch.StartNew();
        bool terminal = !Console.IsErrorRedirected && Environment.GetEnvironmentVariable("TERM") != "dumb";
        return new(
            Console.Out, Console.Error, terminal, () => clock.Elapsed.TotalSeconds, Environment.GetEnvironmentVariable,
            stop => new StopRequests(stop), new HighsSolver());
    }

    private sealed class StopRequests : IDisposable
    {
        private readonly PosixSignalRegistration[] registrations;
        private readonly Action stop;
        private int asked;

        public StopRequests(Action stop)
        {
            this.stop = stop;
            registrations = [PosixSignalRegistration.Create(PosixSignal.SIGINT, Asked), PosixSignalRegistration.Create(PosixSignal.SIGTERM, Asked)];
        }

        private void Asked(PosixSignalContext context)
        {
            if (Interlocked.Increment(ref asked) > 1)
            {
                return; // not cancelled: the process ends
            }

            context.Cancel = true;
            stop();
        }

        public void Dispose()
        {
            foreach (PosixSignalRegistration registration in registrations)
            {
                registration.Dispose();
            }
        }
    }
}
