using System.Text.Json;
using Cloveshed.Ledger;

namespace Cloveshed.Web.Plan.Week;

/// <summary>A search for a week's order as the ledger has it.</summary>
/// <param name="Fact">The fact week.asked.</param>
/// <param name="Key">As <see cref="WeekSight.Key"/>: the plan, the week, and what set-ups and shifts said.</param>
/// <param name="Found">The fact week.found that ended it; null while it goes on.</param>
internal sealed record WeekAsk(Guid Fact, string Key, Guid Plan, string Monday, double Seconds, long Basis, DateTimeOffset At, Fact? Found);

/// <summary>All searches by what the ledger says, read on from where it was read last.</summary>
internal sealed class WeekAsks(ShedLedger ledger)
{
    private readonly Lock reading = new();
    private readonly List<WeekAsk> asks = [];
    private long read;

    /// <summary>In the order in which they were asked for.</summary>
    public IReadOnlyList<WeekAsk> All()
    {
        lock (reading)
        {
            // First where it ends, so that no fact that comes meanwhile is passed over.
            long head = ledger.Head().Seq;
            if (head > read)
            {
                asks.AddRange(ledger.Read(read, FactKinds.WeekAsked).Where(fact => fact.Seq <= head).Select(Asked));
                foreach (Fact found in ledger.Read(read, FactKinds.WeekFound).Where(fact => fact.Seq <= head))
                {
                    // The first end counts: of two processes that searched for the same one only wasted its time.
                    if (asks.FindIndex(ask => ask.Fact == found.Body.GetProperty("asked").GetGuid()) is >= 0 and var at && asks[at].Found is null)
                    {
                        asks[at] = asks[at] with { Found = found };
                    }
                }

                read = head;
            }

            return [.. asks];
        }
    }

    /// <summary>The last search for a week; null where there was none.</summary>
    public WeekAsk? Last(string key) => All().LastOrDefault(ask => ask.Key == key);

    private static WeekAsk Asked(Fact fact)
    {
        JsonElement body = fact.Body;
        (Guid plan, string monday) = (body.GetProperty("plan").GetGuid(), body.GetProperty("week").GetString()!);
        return new WeekAsk(fact.Id, WeekSight.KeyOf(plan, monday, body.GetProperty("digest").GetString()!), plan, monday, body.GetProperty("seconds").GetDouble(), body.GetProperty("basis").GetInt64(), fact.HappenedAt, null);
    }
}
