using System.Runtime.InteropServices;

namespace Cloveshed.Web.Plan.Jobs;

/// <summary>A thread whose work gives way to everything else, so that pages answer at once while a plan is made.</summary>
internal static class QuietThread
{
    /// <summary>Of 19: the scheduler gives it about a tenth of a busy core against a thread of ordinary weight (nice levels of sched(7)).</summary>
    private const int Niceness = 10;

    /// <summary>PRIO_PROCESS of setpriority(2), which on Linux sets a thread's own niceness.</summary>
    private const int OfThread = 0;

    public static Thread Start(string name, Action work)
    {
        Thread thread = new(() =>
        {
            // The runtime leaves priorities alone on Linux. Threads that the solver starts from here inherit it.
            if (OperatingSystem.IsLinux())
            {
                _ = SetPriority(OfThread, 0, Niceness);
            }

            work();
        })
        {
            Name = name, IsBackground = true, Priority = ThreadPriority.BelowNormal,
        };
        thread.Start();
        return thread;
    }

#pragma warning disable SYSLIB1054 // three integers need no generated marshalling, which would ask for unsafe code in all of the assembly
    [DllImport("libc", EntryPoint = "setpriority"), DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int SetPriority(int which, int who, int niceness);
#pragma warning restore SYSLIB1054
}
