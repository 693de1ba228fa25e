using System.Diagnostics;

namespace Cloveshed.TestRun;

/// <summary>Runs one built test project as its own process and reads the report that it writes.</summary>
internal static class ProjectRun
{
    public static ProjectReport Of(string folder, string results, TimeSpan limit)
    {
        string name = Path.GetFileName(folder);
        string program = Path.Combine(folder, "bin", "Release", "net10.0", name + ".dll");
        string report = Path.Combine(results, name + ".json");
        string log = Path.Combine(results, name + ".log");
        File.Delete(report);
        File.Delete(log);
        if (!Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories).Any(file => !Generated(folder, file)))
        {
            return ProjectReport.NotBegun(name);
        }

        if (!File.Exists(program))
        {
            return ProjectReport.Broken(name, "was not built", []);
        }

        var start = new ProcessStartInfo("dotnet", [program, "-noColor", "-result-ctrf", report])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        };
        var clock = Stopwatch.StartNew();
        using Process process = Process.Start(start) ?? throw new InvalidOperationException($"dotnet did not start for {name}");
        process.StandardInput.Close();
        using var output = new RunLog(log);
        process.OutputDataReceived += (_, line) => output.Add(line.Data);
        process.ErrorDataReceived += (_, line) => output.Add(line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        bool ended = process.WaitForExit(limit);
        if (!ended) { process.Kill(entireProcessTree: true); }
        // A browser that a test left behind keeps the output open: its last lines are worth a moment, not for ever.
        bool closed = Task.Run(process.WaitForExit).Wait(TimeSpan.FromSeconds(10));
        output.Dispose();
        return (ended, closed) switch
        {
            (false, _) => ProjectReport.Broken(name, $"was stopped after {limit.TotalMinutes:0} minutes", output.Tail()),
            (true, false) => ProjectReport.Read(name, report, process.ExitCode, clock.Elapsed, output) with { Trouble = "left a process running" },
            _ => ProjectReport.Read(name, report, process.ExitCode, clock.Elapsed, output),
        };
    }

    private static bool Generated(string folder, string file) =>
        Path.GetRelativePath(folder, file).Split(Path.DirectorySeparatorChar)[0] is "bin" or "obj";
}
