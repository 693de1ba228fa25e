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
        using (var output = new StreamWriter(log))
        {
            object gate = new();
            void Keep(object sender, DataReceivedEventArgs line)
            {
                lock (gate)
                {
                    if (line.Data is not null) { output.WriteLine(line.Data); }
                }
            }

            process.OutputDataReceived += Keep;
            process.ErrorDataReceived += Keep;
            process.BeginOutputReadLine();
            process.BeginErrorReadLine();
            bool ended = process.WaitForExit(limit);
            if (!ended) { process.Kill(entireProcessTree: true); }
            process.WaitForExit();
            if (!ended)
            {
                lock (gate) { output.Flush(); }
                return ProjectReport.Broken(name, $"was stopped after {limit.TotalMinutes:0} minutes", Tail(log));
            }
        }

        return ProjectReport.Read(name, report, process.ExitCode, clock.Elapsed, () => Tail(log));
    }

    private static bool Generated(string folder, string file) =>
        Path.GetRelativePath(folder, file).Split(Path.DirectorySeparatorChar)[0] is "bin" or "obj";

    /// <summary>The last lines of a log: where a crash says what it was.</summary>
    private static string[] Tail(string log)
    {
        using var stream = new FileStream(log, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        using var reader = new StreamReader(stream);
        return reader.ReadToEnd().Split('\n').TakeLast(40).ToArray();
    }
}
