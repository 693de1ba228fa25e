using Cloveshed.Web.Shared;

namespace Cloveshed.Web.Setup;

/// <summary>The arrivals that wait for a yes. They are not facts: whoever does not say yes, or restarts the program, sends them again.</summary>
public sealed class Arrivals(TimeProvider clock) : IDisposable
{
    /// <summary>Each may be of 200 MB on the disk.</summary>
    private const int Room = 4;

    private readonly Lock holding = new();
    private readonly List<Arrival> waiting = [];
    private string? root;
    private bool disposed;

    /// <summary>A new one, empty. Where there are too many the oldest is thrown away.</summary>
    public Arrival Open()
    {
        lock (holding)
        {
            ObjectDisposedException.ThrowIf(disposed, this);
            root ??= Directory.CreateTempSubdirectory("cloveshed-arrivals-").FullName;
            Arrival arrival = new(Path.Combine(root, Guid.NewGuid().ToString("N")), clock.GetUtcNow());
            waiting.Add(arrival);
            while (waiting.Count > Room)
            {
                waiting[0].Remove();
                waiting.RemoveAt(0);
            }

            return arrival;
        }
    }

    public Arrival? Find(string token)
    {
        lock (holding)
        {
            return waiting.Find(arrival => arrival.Token == token);
        }
    }

    /// <summary>Throws one away.</summary>
    public void Leave(Arrival arrival)
    {
        lock (holding)
        {
            if (waiting.Remove(arrival))
            {
                arrival.Remove();
            }
        }
    }

    public void Dispose()
    {
        lock (holding)
        {
            disposed = true;
            waiting.Clear();
            if (root is not null && Directory.Exists(root))
            {
                Directory.Delete(root, recursive: true);
            }
        }
    }
}
