using System.Diagnostics;
using System.Diagnostics.Metrics;
using Cloveshed.Ledger;
using Cloveshed.SeasonFiles.Faults;

namespace Cloveshed.Web.Shared;

/// <summary>
/// What the program tells about itself as traces and metrics: how often and how long, never who or what. It is sent somewhere
/// only when the standard variables of OpenTelemetry name a place.
/// </summary>
public sealed class ShedSignals
{
    /// <summary>The name of the source of traces and of the meter.</summary>
    public const string Name = "Cloveshed";

    private static readonly ActivitySource Source = new(Name);

    private readonly Counter<long> facts;
    private readonly Counter<long> imports;
    private readonly Counter<long> plans;
    private readonly Histogram<double> appendSeconds;
    private readonly Histogram<double> importSeconds;
    private readonly Histogram<double> planSeconds;

    public ShedSignals(IMeterFactory meters)
    {
        Meter meter = meters.Create(Name);
        facts = meter.CreateCounter<long>("cloveshed.facts", "{fact}", "Facts handed to the ledger, by outcome: accepted, again, refused.");
        imports = meter.CreateCounter<long>("cloveshed.imports", "{import}", "Season imports, by outcome.");
        plans = meter.CreateCounter<long>("cloveshed.plans", "{plan}", "Plans asked for, by outcome: made, refused, stopped.");
        appendSeconds = meter.CreateHistogram<double>("cloveshed.append.duration", "s", "Time of an append until it is durable.");
        importSeconds = meter.CreateHistogram<double>("cloveshed.import.duration", "s", "Time of a season's import.");
        planSeconds = meter.CreateHistogram<double>("cloveshed.plan.duration", "s", "Time of a plan, its check included.");
    }

    /// <summary>Appends, counted and timed.</summary>
    public Appended Append(ShedLedger ledger, IReadOnlyList<NewFact> batch, TextLanguage language = TextLanguage.English, IReadOnlyDictionary<string, byte[]>? documents = null)
    {
        using Activity? activity = Source.StartActivity("append");
        long begun = Stopwatch.GetTimestamp();
        Appended appended = ledger.Append(batch, documents, language);
        string outcome = appended switch { Appended.Accepted { Again: true } => "again", Appended.Accepted => "accepted", _ => "refused" };
        KeyValuePair<string, object?> tag = new("outcome", outcome);
        facts.Add(batch.Count, tag);
        appendSeconds.Record(Stopwatch.GetElapsedTime(begun).TotalSeconds, tag);
        activity?.SetTag("cloveshed.facts", batch.Count).SetTag("cloveshed.outcome", outcome);
        return appended;
    }

    /// <summary>Times an import; the outcome is a short fixed word ("accepted", "again", "refused").</summary>
    public T Import<T>(Func<T> import, Func<T, string> outcome) => Timed("import", imports, importSeconds, import, outcome);

    /// <summary>Times the making of a plan; the outcome is "made", "refused" or "stopped".</summary>
    public T Plan<T>(Func<T> plan, Func<T, string> outcome) => Timed("plan", plans, planSeconds, plan, outcome);

    private static T Timed<T>(string what, Counter<long> counter, Histogram<double> seconds, Func<T> work, Func<T, string> outcome)
    {
        using Activity? activity = Source.StartActivity(what);
        long begun = Stopwatch.GetTimestamp();
        T answer = work();
        KeyValuePair<string, object?> tag = new("outcome", outcome(answer));
        counter.Add(1, tag);
        seconds.Record(Stopwatch.GetElapsedTime(begun).TotalSeconds, tag);
        activity?.SetTag("cloveshed.outcome", tag.Value);
        return answer;
    }
}
