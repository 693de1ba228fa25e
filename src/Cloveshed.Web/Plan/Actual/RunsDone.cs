using System.Text.Json;
using Cloveshed.Core;
using Cloveshed.Core.Quantities;
using Cloveshed.Core.Seasons;
using Cloveshed.Ledger;
using NodaTime;
using NodaTime.Text;

namespace Cloveshed.Web.Plan.Actual;

/// <summary>What really ran, as it was last told.</summary>
/// <param name="Fact">The fact that says so: what a correction names.</param>
/// <param name="Mass">In <paramref name="Unit"/>; 0: it did not run.</param>
public sealed record DoneRun(Guid Fact, LotId Lot, LineId Line, LocalDate Day, bool Sorted, double Bins, double Mass, MassUnit Unit, string? Note)
{
    /// <summary>In another unit. 453.59237 g are a pound (NIST SP 811, 2008, appendix B.8).</summary>
    public double MassIn(MassUnit unit) => unit == Unit ? Mass : unit == MassUnit.Pound ? Mass / Core.Quantities.Mass.KilogramsPerPound : Mass * Core.Quantities.Mass.KilogramsPerPound;
}

/// <summary>All runs that were told as done, read on from where they were read last.</summary>
public sealed class DoneShelf(ShedLedger ledger)
{
    private readonly Lock reading = new();
    private readonly Dictionary<Guid, Guid> roots = [];
    private readonly Dictionary<Guid, DoneRun> runs = [];
    private long read;

    /// <param name="upto">Only facts up to this number: a past day is looked at.</param>
    public IReadOnlyList<DoneRun> All(long upto)
    {
        lock (reading)
        {
            if (upto < read)
            {
                // Looking back is rare: it is read from the beginning, apart.
                return new DoneShelf(ledger).All(upto);
            }

            foreach (Fact fact in ledger.Read(read, FactKinds.RunDone).TakeWhile(fact => fact.Seq <= upto))
            {
                Guid root = fact.Corrects is { } before && roots.TryGetValue(before, out Guid first) ? first : fact.Id;
                roots[fact.Id] = root;
                runs[root] = Of(fact);
            }

            read = upto;
            return [.. runs.Values];
        }
    }

    private static DoneRun Of(Fact fact)
    {
        JsonElement body = fact.Body;
        return new DoneRun(
            fact.Id, new LotId(body.GetProperty("lot").GetString()!), new LineId(body.GetProperty("line").GetString()!), LocalDatePattern.Iso.Parse(body.GetProperty("day").GetString()!).Value,
            body.TryGetProperty("sorted", out JsonElement sorted) && sorted.ValueKind == JsonValueKind.True, body.GetProperty("bins").GetDouble(), body.GetProperty("mass").GetDouble(),
            body.TryGetProperty("unit", out JsonElement unit) && unit.GetString() == "kg" ? MassUnit.Kilogram : MassUnit.Pound,
            body.TryGetProperty("note", out JsonElement note) && note.ValueKind == JsonValueKind.String ? note.GetString() : null);
    }
}
