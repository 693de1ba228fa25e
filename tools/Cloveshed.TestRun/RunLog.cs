namespace Cloveshed.TestRun;

/// <summary>What a test project printed, in a file and its last lines at hand. Both of its outputs write here, each from its own thread.</summary>
internal sealed class RunLog(string file) : IDisposable
{
    private const int Kept = 40;

    private readonly Lock gate = new();
    private readonly StreamWriter writer = new(file);
    private readonly Queue<string> last = new();
    private bool closed;

    public void Add(string? line)
    {
        lock (gate)
        {
            if (line is null || closed) { return; }
            writer.WriteLine(line);
            last.Enqueue(line);
            if (last.Count > Kept) { last.Dequeue(); }
        }
    }

    /// <summary>The last lines: where a crash says what it was.</summary>
    public IReadOnlyList<string> Tail()
    {
        lock (gate) { return [.. last]; }
    }

    public void Dispose()
    {
        lock (gate)
        {
            if (closed) { return; }
            closed = true;
            writer.Dispose();
        }
    }
}
