using System.Diagnostics;

namespace Cloveshed.Ledger.Tests.Outside;

/// <summary>The built program as a process of its own.</summary>
internal static class CloveshedProcess
{
    private static readonly string Program = Path.Combine(AppContext.BaseDirectory, "cloveshed.dll");

    public static Process Start(params IEnumerable<string> arguments) => Start("dotnet", [Program, .. arguments]);

    /// <summary>Through a shell that first sets something for it, such as a limit. "$@" is the program.</summary>
    public static Process StartIn(string script, params IEnumerable<string> arguments) => Start("bash", ["-c", script, "bash", "dotnet", Program, .. arguments]);

    /// <summary>Waits for the end: exit code, standard output, standard error.</summary>
    public static (int Code, string Output, string Error) Ended(Process process)
    {
        using (process)
        {
            Task<string> error = process.StandardError.ReadToEndAsync();
            string output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return (process.ExitCode, output, error.Result);
        }
    }

    private static Process Start(string program, IEnumerable<string> arguments)
    {
        ProcessStartInfo start = new(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        start.Environment["LC_ALL"] = "C.UTF-8";
        start.Environment["DOTNET_gcServer"] = "0";
        return Process.Start(start)!;
    }
}
