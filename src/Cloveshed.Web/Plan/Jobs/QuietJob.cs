using System.Runtime.ExceptionServices;

namespace Cloveshed.Web.Plan.Jobs;

/// <summary>A long piece of work on a quiet thread: how far it is, whether a hand has stopped it, and what came of it. Read by any page.</summary>
public abstract class QuietJob<TFound>
    where TFound : class
{
    private volatile bool stopped;
    private volatile TFound? found;
    private volatile ExceptionDispatchInfo? failed;
    private int done;

    /// <summary>Parts that are done, of all that there are.</summary>
    public int Done => Volatile.Read(ref done);

    /// <summary>Null until all is done. What failed on the way is thrown here, for the page that asks.</summary>
    public TFound? Found
    {
        get
        {
            failed?.Throw();
            return found;
        }
    }

    /// <summary>Stopped by a hand: nothing was found.</summary>
    public bool Stopped => stopped && found is null;

    public bool Ended => found is not null || failed is not null || stopped;

    /// <summary>Ends the work at its next step.</summary>
    public void Stop() => stopped = true;

    /// <summary>All of it; to step as it goes.</summary>
    protected abstract TFound Make();

    /// <summary>So many parts more are done; thrown out of the work where a hand has stopped it.</summary>
    protected void Step(int by)
    {
        Interlocked.Add(ref done, by);
        if (stopped)
        {
            throw new OperationCanceledException();
        }
    }

    internal void Run()
    {
        try
        {
            Step(0);
            found = Make();
        }
        catch (OperationCanceledException)
        {
            // It was stopped, and says so.
        }
#pragma warning disable CA1031 // whatever it is, it is thrown again where it can be told: to the page
        catch (Exception problem)
        {
            failed = ExceptionDispatchInfo.Capture(problem);
        }
#pragma warning restore CA1031
    }
}
