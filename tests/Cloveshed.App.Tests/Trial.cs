using System.Diagnostics;
using Cloveshed.App.CommandLine;
using Cloveshed.Solver.Highs;

namespace Cloveshed.App.Tests;

/// <summary>What a command said and ended with.</summary>
public sealed record Ended(int Code, string Output, string Error);

/// <summary>Runs the program in this process, in a folder of its own, with what it writes captured.</summary>
public sealed class Trial : IDisposable
{
    private readonly string root = Directory.CreateTempSubdirectory("cloveshed-app-").FullName;
    private readonly Dictionary<string, string> variables = [];

    public bool Terminal { get; set; }

    /// <summary>Called whenever the program reads its clock: something that happens meanwhile.</summary>
    public Action? Meanwhile { get; set; }

    /// <summary>Someone presses Ctrl-C as soon as that can be heard.</summary>
    public bool StoppedAtOnce { get; set; }

    public Trial With(string variable, string value)
    {
        variables[variable] = value;
        return this;
    }

    /// <summary>A path in the trial's folder.</summary>
    public string At(params string[] parts) => Path.Combine([root, .. parts]);

    public Ended Run(params string[] arguments)
    {
        using StringWriter output = new(), error = new();
        var clock = Stopwatch.StartNew();
        World world = new(
            output, TextWriter.Synchronized(error), Terminal,
            () =>
            {
                Meanwhile?.Invoke();
                return clock.Elapsed.TotalSeconds;
            },
            variables.GetValueOrDefault,
            stop =>
            {
                if (StoppedAtOnce)
                {
                    stop();
                }

                return new StringReader("");
            },
            new HighsSolver());
        int code = Entry.Run(arguments, world);
        return new(code, output.ToString(), error.ToString());
    }

    public void Dispose() => Directory.Delete(root, recursive: true);
}
