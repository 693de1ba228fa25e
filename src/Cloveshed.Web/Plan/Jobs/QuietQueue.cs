using System.Threading.Channels;

namespace Cloveshed.Web.Plan.Jobs;

/// <summary>
/// Pieces of work, one after the other on a thread that gives way to the pages. Ended, it takes no more; what is worked on then goes on beside the
/// host's leaving, and nothing that the thread still reads is disposed of under it.
/// </summary>
/// <param name="waitedFor">Somebody sits before it and the work takes seconds: its thread then gives way to nobody.</param>
internal sealed class QuietQueue<T>(string name, Action<T> work, bool waitedFor = false)
{
    private readonly Channel<T> waiting = Channel.CreateUnbounded<T>(new UnboundedChannelOptions { SingleReader = true });

    public void Start()
    {
        if (waitedFor)
        {
            new Thread(Run) { Name = name, IsBackground = true }.Start();
        }
        else
        {
            QuietThread.Start(name, Run);
        }
    }

    /// <summary>Throws where the queue has ended.</summary>
    public void Add(T piece)
    {
        if (!waiting.Writer.TryWrite(piece))
        {
            throw new InvalidOperationException($"{name}: the program is leaving.");
        }
    }

    private void Run()
    {
        foreach (T piece in waiting.Reader.ReadAllAsync().ToBlockingEnumerable())
        {
            work(piece);
        }
    }

    public void End() => waiting.Writer.TryComplete();
}
